using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Whether a test counts.</summary>
public enum RunVerdict
{
    /// <summary>Not looked at yet.</summary>
    UnderWay,

    /// <summary>It counts.</summary>
    Counts,

    /// <summary>Looked at, but something that the method asks for is not noted: what it found counts, and a clean look does not, until
    /// it is noted.</summary>
    NotShown,

    /// <summary>Something was outside what the method allows: it is as if it had not been done.</summary>
    DoesNotCount,
}

/// <summary>One test, judged as a procedure. What it showed is judged apart.</summary>
/// <param name="RunId">Its id.</param>
/// <param name="Verdict">Whether it counts.</param>
/// <param name="LookedAt">When it was looked at for good; null while under way.</param>
/// <param name="Dwell">Penetrant: dwell, s; null while not over, and for magnetic particle.</param>
/// <param name="Development">Penetrant: from developer to final look, s; null likewise.</param>
/// <param name="Words">The answer in a sentence.</param>
public sealed record RunResult(
    string RunId,
    RunVerdict Verdict,
    DateTimeOffset? LookedAt,
    double? Dwell,
    double? Development,
    Sentence Words
);

/// <summary>One mark, or several so near that they count as one, judged.</summary>
/// <param name="RunId">The test that showed it.</param>
/// <param name="IndicationIds">The marks in it, in the order written down.</param>
/// <param name="Place">Where it is; of several places the one that weighs most.</param>
/// <param name="Position">Middle, from the inner end, mm; null when not noted.</param>
/// <param name="Angle">Angle of the first of them round the shaft, rad; null when not noted.</param>
/// <param name="Length">Length, the gaps between its marks included, mm; null when not measured.</param>
/// <param name="Width">Width, mm; null when not measured.</param>
/// <param name="Linear">True when it counts as a line.</param>
/// <param name="Crack">True when one of them was recognised as a crack.</param>
/// <param name="Accepted">Whether the level accepts its size; null when it was not measured.</param>
/// <param name="Stops">True when the job stops for it, whatever the level says.</param>
/// <param name="Words">The answer in a sentence.</param>
public sealed record MarkResult(
    string RunId,
    IReadOnlyList<string> IndicationIds,
    Place Place,
    double? Position,
    double? Angle,
    double? Length,
    double? Width,
    bool Linear,
    bool Crack,
    bool? Accepted,
    bool Stops,
    Sentence Words
);

/// <summary>How a place on the shaft stands.</summary>
public enum SiteState
{
    /// <summary>Never looked at in a test that counts.</summary>
    NotTested,

    /// <summary>The last test that counts showed nothing.</summary>
    Clean,

    /// <summary>A mark that is accepted, or one still to be measured or decided on.</summary>
    Indication,

    /// <summary>A mark was worked on since: test again.</summary>
    ToRetest,

    /// <summary>A mark that stops the job.</summary>
    Stopped,

    /// <summary>Under the sleeve: it can never be seen again.</summary>
    Hidden,
}

/// <summary>How one place stands.</summary>
/// <param name="Place">The place.</param>
/// <param name="State">Its state.</param>
/// <param name="RunId">The test that says so; empty when none.</param>
/// <param name="LookedAt">When it was last looked at in a test that counts.</param>
/// <param name="Words">In a sentence, with the next thing to do.</param>
public sealed record SiteResult(
    Place Place,
    SiteState State,
    string RunId,
    DateTimeOffset? LookedAt,
    Sentence Words
);

/// <summary>The answer of the crack-test stage.</summary>
public sealed record CrackTestResult
{
    /// <summary>Every test, in the order noted.</summary>
    public IReadOnlyList<RunResult> Runs { get; init; } = [];

    /// <summary>Every mark, test by test.</summary>
    public IReadOnlyList<MarkResult> Marks { get; init; } = [];

    /// <summary>Places that were tested or have to be.</summary>
    public IReadOnlyList<SiteResult> Sites { get; init; } = [];

    /// <summary>Tests that the work done asks for, in order of time. How each stands at an instant: <see cref="TestDemand.At"/>.</summary>
    public IReadOnlyList<TestDemand> Demands { get; init; } = [];

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
