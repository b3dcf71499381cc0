using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Acceptance levels of ISO 23277 and ISO 23278. With X, every linear mark is judged by level 1.</summary>
public enum AcceptanceLevel
{
    /// <summary>Level 1.</summary>
    One,

    /// <summary>Level 2.</summary>
    Two,

    /// <summary>Level 2X.</summary>
    TwoX,

    /// <summary>Level 3.</summary>
    Three,

    /// <summary>Level 3X.</summary>
    ThreeX,
}

/// <summary>Work after which something must be tested.</summary>
public enum WorkKind
{
    /// <summary>Butt weld finished.</summary>
    ButtWelded,

    /// <summary>Tempered, or heated otherwise.</summary>
    Tempered,

    /// <summary>A session at the press ended.</summary>
    Pressed,

    /// <summary>Sleeve welded on: the butt cannot be seen any more.</summary>
    SleeveWelded,

    /// <summary>A weld was repaired.</summary>
    WeldRepaired,

    /// <summary>Twisted on the bench to a proof torque.</summary>
    ProofTwisted,

    /// <summary>First run on the car.</summary>
    FirstRun,

    /// <summary>First event ended.</summary>
    FirstEvent,

    /// <summary>Any run or event after the first event.</summary>
    LaterRun,
}

/// <summary>What is done about a mark.</summary>
public enum MarkDecision
{
    /// <summary>Dressed out within the surface, to be tested again.</summary>
    Dressed,

    /// <summary>Taken for dirt or a drip: cleaned, to be tested again.</summary>
    CleanedAgain,

    /// <summary>Ground out and welded again, to be tested again. Not for a crack.</summary>
    WeldedAgain,

    /// <summary>Scrapped.</summary>
    Scrapped,
}

/// <summary>What was decided about marks at a place.</summary>
public sealed record Decision : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>Id of the mark.</summary>
    public string Indication { get; init; } = "";

    /// <summary>What was done.</summary>
    public MarkDecision What { get; init; }

    /// <summary>When it was done.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>Why, and by whom.</summary>
    public string Note { get; init; } = "";

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>Work done on the shaft, and when.</summary>
public sealed record WorkDone : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>What work.</summary>
    public WorkKind Kind { get; init; }

    /// <summary>When it ended.</summary>
    public DateTimeOffset At { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>All crack tests of a shaft, and the work they follow.</summary>
public sealed record CrackTestInput
{
    /// <summary>Level that marks on plain bar are judged by. The floor stands above it: see <see cref="CrackTestSolver"/>.</summary>
    public AcceptanceLevel Level { get; init; } = AcceptanceLevel.TwoX;

    /// <summary>Whether austenitic filler was used; null when not known.</summary>
    public bool? AusteniticFiller { get; init; }

    /// <summary>Work done, in the order written down.</summary>
    public IReadOnlyList<WorkDone> Work { get; init; } = [];

    /// <summary>The tests.</summary>
    public IReadOnlyList<TestRun> Tests { get; init; } = [];

    /// <summary>Decisions about marks, in the order written down.</summary>
    public IReadOnlyList<Decision> Decisions { get; init; } = [];

    /// <summary>Collects what is out of range, and ids that are not the only ones of their kind in the stage.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        var ids = new EntryIds(check);
        ids.Of(Work, $"{path}.work");
        ids.Of(Tests, $"{path}.tests");
        for (var i = 0; i < Tests.Count; i++)
        {
            var at = $"{path}.tests[{i}]";
            ids.Of(Tests[i].Notes, at + ".notes");
            ids.Of(Tests[i].Steps, at + ".steps");
            ids.Of(Tests[i].Indications, at + ".indications");
            ids.Of(Tests[i].Photos, at + ".photos");
            Tests[i].Check(check, at);
        }
        ids.Of(Decisions, $"{path}.decisions");
    }
}
