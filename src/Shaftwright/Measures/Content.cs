namespace Shaftwright.Measures;

/// <summary>How much of an element a steel holds, or a sum of such shares. Internal unit: per cent by mass, as steels are listed.</summary>
/// <remarks>Not a <see cref="Ratio"/>: 0.45 on a steel's data sheet is 0.45 %, never 45 %.</remarks>
public sealed class Content : IDimension<Content>
{
    private Content() { }

    /// <summary>Per cent by mass.</summary>
    public static readonly Unit Percent = new("%", 1m, ["wt%", "mass%"]);

    /// <inheritdoc/>
    public static string Word => "content by mass";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Percent];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "0.45 %, 0.42 ± 0.03 %";
}
