using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>How something measured on a seam stands to the level that is asked.</summary>
public enum SeamVerdict
{
    /// <summary>Inside, with what the reading can be off.</summary>
    Inside,

    /// <summary>Nearer to the limit than the reading can tell.</summary>
    TooClose,

    /// <summary>Over it.</summary>
    Over,

    /// <summary>The limit depends on something that is not known.</summary>
    NotKnown,
}

/// <summary>One thing measured on a seam, judged.</summary>
/// <param name="Item">What.</param>
/// <param name="Value">As read, mm.</param>
/// <param name="PlusMinus">What it can be off, mm.</param>
/// <param name="Limit">Most that the level asked for accepts, mm; null when not known.</param>
/// <param name="Level">The strictest level that surely takes it; null when none does or it is not known.</param>
/// <param name="Verdict">How it stands to the level asked for.</param>
/// <param name="Words">In a sentence.</param>
public sealed record SeamItemResult(
    SeamItem Item,
    double Value,
    double PlusMinus,
    double? Limit,
    SeamLevel? Level,
    SeamVerdict Verdict,
    Sentence Words
);

/// <summary>One seam, judged by what was measured on it.</summary>
/// <param name="Place">Which seam.</param>
/// <param name="Cracked">True when a crack was seen.</param>
/// <param name="Depth">Depth of the weld that was taken, mm; null when not known.</param>
/// <param name="Level">The strictest level that takes all that was measured; null when none does, or something is not known.</param>
/// <param name="Items">What was measured.</param>
/// <param name="Missing">What was not, in words.</param>
/// <param name="Words">The answer in a sentence.</param>
/// <param name="Findings">What to know, and what to do.</param>
public sealed record SeamResult(
    SeamPlace Place,
    bool Cracked,
    double? Depth,
    SeamLevel? Level,
    IReadOnlyList<SeamItemResult> Items,
    IReadOnlyList<string> Missing,
    Sentence Words,
    IReadOnlyList<Finding> Findings
);
