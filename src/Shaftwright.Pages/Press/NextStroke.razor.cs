using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Pages.Doors;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Pages.Press;

/// <summary>A shaft at the press: how deep does the next stroke go? Opened from the route card only.</summary>
public sealed partial class NextStroke
{
    /// <summary>Its place in the address, after the job's.</summary>
    public const string Place = "next-stroke";

    private static readonly Option[] YesNo =
    [
        new("yes", "Yes"),
        new("no", "No"),
        new("unknown", "Don't know"),
    ];

    private static readonly Option[] Steels =
    [
        new(nameof(SteelClass.Unknown), "Don't know"),
        new(nameof(SteelClass.MediumCarbon), "Medium carbon", "most driveshafts"),
        new(nameof(SteelClass.QuenchedTemperedAlloy), "Quenched and tempered alloy"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "The next stroke";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new(
            "tempered",
            "Was the weld tempered?",
            "Then it counts as not tempered, and is not pressed."
        ),
        new(
            "file",
            "Does a file skate where the ram would stand?",
            "Then the donors' hardened stretches count."
        ),
        new("press", "What can your press do?", "Then a span up to 400 mm is taken."),
        new("bar", "What is known of the bar?", "Then the range of what it may be is taken."),
    ];

    /// <inheritdoc/>
    public override Answer? Answer =>
        Result.Press is not { } press ? null
        : press.Plan is { } plan
            ? new(
                plan.Turned ? $"Turn it to the new high point and press" : (Sentence)$"Press",
                $"{Say.Fine(plan.Depth)}",
                (Sentence)$"past contact.",
                plan.Depth
            )
            {
                Unsettled = $"the stroke would go",
            }
        : new(press.Words, null, null, null);

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        // Strokes are records: they are added by the button below them, never by what stands in a box.
        return basis with
        {
            Press = (basis.Press ?? new()) with
            {
                Tempered = Said("tempered"),
                FileSkates = Said("file"),
                ShortestSpan = Draft.Take("shortest", PressFields.ShortestSpan),
                LongestSpan = Draft.Take("longest", PressFields.LongestSpan),
                MostLoad = Draft.Take("most", PressFields.MostLoad),
                Diameter = Draft.Take("diameter", PressFields.Diameter),
                Length = Draft.Take("length", PressFields.Length),
                BendAt = Draft.Take("bend", PressFields.BendAt),
                Yield = Draft.Take("yield", PressFields.Yield),
                Steel = Enum.TryParse<SteelClass>(Draft["steel"], out var steel)
                    ? steel
                    : SteelClass.Unknown,
            },
        };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Press is not { } press)
            return;
        if (press.Tempered is { } tempered)
            answers["tempered"] = tempered ? "yes" : "no";
        if (press.FileSkates is { } skates)
            answers["file"] = skates ? "yes" : "no";
        Draft.Lay(answers, "shortest", press.ShortestSpan);
        Draft.Lay(answers, "longest", press.LongestSpan);
        Draft.Lay(answers, "most", press.MostLoad);
        Draft.Lay(answers, "diameter", press.Diameter);
        Draft.Lay(answers, "length", press.Length);
        Draft.Lay(answers, "bend", press.BendAt);
        Draft.Lay(answers, "yield", press.Yield);
        if (press.Steel != SteelClass.Unknown)
            answers["steel"] = press.Steel.ToString();
    }

    /// <inheritdoc/>
    protected override bool Same(string key, string typed, string taken) =>
        base.Same(key, typed, taken) || (taken.Length == 0 && typed is "unknown" or "Unknown");

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.01
            ? null
            : Say.Fine(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " more than before" : " less than before");

    /// <summary>What the stroke did is noted below the answer, by its own button.</summary>
    protected override bool Bears(string key) => !key.StartsWith("now/", StringComparison.Ordinal);

    /// <inheritdoc/>
    public override string Called(string key) =>
        key switch
        {
            "tempered" => "whether the weld was tempered",
            "file" => "whether a file skates",
            "shortest" => "the nearest the blocks can stand",
            "longest" => "the farthest the blocks can stand",
            "most" => "the most the press can push",
            "diameter" => "the diameter",
            "length" => "the length",
            "steel" => "the steel",
            "bend" => "where it is bent",
            "yield" => "the yield",
            "now/depth" => "how deep you went",
            "now/load" => "the load",
            "now/after" => "the run-out after",
            "now/high" => "the high point after",
            _ => base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        key switch
        {
            "tempered" or "file" => Option.Worded(YesNo, text),
            "steel" => Option.Worded(Steels, text),
            _ => text,
        };

    private bool? Said(string key) =>
        Draft[key] switch
        {
            "yes" => true,
            "no" => false,
            _ => null,
        };
}
