using Shaftwright.Cut;

namespace Shaftwright.JobFile;

/// <summary>The rules at a cut in the order a reader wants them.</summary>
public static class CutRules
{
    /// <summary>Those that fail first, the heavy before the light; then by how little room is left.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="cut"/> is null.</exception>
    public static IReadOnlyList<CutCheck> Tightest(this CutResult cut)
    {
        ArgumentNullException.ThrowIfNull(cut);
        return
        [
            .. cut
                .Checks.OrderBy(c => c.Holds)
                .ThenByDescending(c => c.Heavy && !c.Holds)
                .ThenBy(c => c.Has - c.Needs),
        ];
    }
}
