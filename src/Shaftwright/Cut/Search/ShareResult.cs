using Shaftwright.Findings;

namespace Shaftwright.Cut.Search;

/// <summary>One shaft of the plan.</summary>
/// <param name="Job">The number of the job it is for, in the order asked.</param>
/// <param name="Spare">0 for the shaft itself, 1 for its first spare.</param>
/// <param name="Cut">How it is made; null when the shelf has nothing left for it.</param>
/// <param name="Inner">The shaft that gives its inner end.</param>
/// <param name="Outer">The shaft that gives its outer end.</param>
public sealed record SharedShaft(
    int Job,
    int Spare,
    ShareCut? Cut,
    DonorPick? Inner,
    DonorPick? Outer
);

/// <summary>Several shafts from one shelf.</summary>
public sealed record ShareResult
{
    /// <summary>Every shaft asked for, in order.</summary>
    public required IReadOnlyList<SharedShaft> Shafts { get; init; }

    /// <summary>The weakest of them, N·mm, low end; null when none can be made.</summary>
    public double? Carries { get; init; }

    /// <summary>True when no other choice among the cuts looked at makes more shafts, or as many with a stronger weakest one, or
    /// as strong with less difference of diameters in all; false when the search was given up before that was certain.</summary>
    public bool Proven { get; init; }

    /// <summary>How many choices were looked into.</summary>
    public long Looked { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
