using Shaftwright.Kept;

namespace Shaftwright.JobFile.Shapes;

/// <summary>Members that entries of a record share.</summary>
internal static class EntryShapes
{
    /// <summary>Id, correction and withdrawal.</summary>
    public static ObjectShape<T> Entry<T>(
        this ObjectShape<T> shape,
        Func<T, IEntry> entry,
        Func<T, string, T> setId,
        Func<T, string, T> setCorrects,
        Func<T, bool, T> setWithdrawn
    ) =>
        shape
            .Value(
                "id",
                "a stable id, unique within the stage",
                new TextShape(64, 1),
                e => entry(e).Id,
                setId,
                required: true
            )
            .Text(
                "corrects",
                "id of the earlier entry that this one puts right",
                64,
                e => entry(e).Corrects,
                setCorrects
            )
            .Flag(
                "withdrawn",
                "true when what it corrects did not happen at all",
                e => entry(e).Withdrawn,
                setWithdrawn
            );

    /// <summary>A word that must be there.</summary>
    public static ObjectShape<T> Word<T, E>(
        this ObjectShape<T> shape,
        string member,
        string about,
        Func<T, E> get,
        Func<T, E, T> set
    )
        where E : struct, Enum =>
        shape.Value(member, about, new ChoiceShape<E>(), get, set, required: true);

    /// <summary>A moment that must be there.</summary>
    public static ObjectShape<T> Moment<T>(
        this ObjectShape<T> shape,
        string member,
        string about,
        Func<T, DateTimeOffset> get,
        Func<T, DateTimeOffset, T> set
    ) => shape.Value(member, about, new MomentShape(), get, set, required: true);
}
