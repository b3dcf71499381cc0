namespace Shaftwright.Measures;

/// <summary>A kind of quantity. It is a type, so that a torque put where a distance belongs does not compile.</summary>
/// <typeparam name="TSelf">The dimension itself.</typeparam>
public interface IDimension<TSelf>
    where TSelf : IDimension<TSelf>
{
    /// <summary>The word for it in a sentence: <c>length</c>, <c>angle</c>.</summary>
    static abstract string Word { get; }

    /// <summary>Accepted units; the first is the default, taken for a bare number.</summary>
    static abstract IReadOnlyList<Unit> Units { get; }

    /// <summary>Spellings that two trades read differently. Each is refused with both readings.</summary>
    static abstract IReadOnlyList<Ambiguity> Ambiguities { get; }

    /// <summary>Ways of writing it, for a refusal.</summary>
    static abstract string Examples { get; }
}

/// <summary>A unit spelling with two readings.</summary>
/// <param name="Spelling">As typed, without separators.</param>
/// <param name="First">One reading.</param>
/// <param name="Second">The other.</param>
public sealed record Ambiguity(string Spelling, string First, string Second);
