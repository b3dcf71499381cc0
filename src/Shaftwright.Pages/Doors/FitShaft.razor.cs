using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>The shaft goes into the car: one step at a time, in order, each noted with what was found at it.</summary>
public sealed partial class FitShaft
{
    /// <summary>Its place in the address.</summary>
    public const string Place = "fit";

    private const char Bar = '|';

    private static readonly Option[] YesNo =
    [
        new("yes", "Yes"),
        new("no", "No"),
        new("", "Not tried"),
    ];

    private static readonly Option[] YesNoUnknown =
    [
        new("yes", "Yes"),
        new("no", "No"),
        new("", "Don't know"),
    ];

    /// <summary>The boxes of an entry, in the order in which the draft writes them down.</summary>
    private static readonly string[] Boxes =
    [
        "lineDiameter",
        "lineOffset",
        "proofSet",
        "pull",
        "pullHeld",
        "hubNut",
        "leftIn",
        "leftOut",
        "atDroop",
        "atLock",
        "leaks",
        "noise",
    ];

    private string? _trouble;

    /// <summary>The device's clock.</summary>
    [Microsoft.AspNetCore.Components.Inject]
    public required BenchClock Beat { get; set; }

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "Fit the shaft";

    /// <inheritdoc/>
    public override string Screen => "step";

    /// <inheritdoc/>
    public override bool IsRecord => true;

    /// <inheritdoc/>
    public override bool ActsItself => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [.. Enum.GetValues<FitStep>().Select(s => new Step(SlugOf(s), TitleOf(s)))];

    private FitStep Current => (FitStep)Math.Min(Index, Steps.Count - 1);

    private FitResult Fitted => Result.Fit!;

    private FitStepResult Stands => Fitted.Steps.First(s => s.Step == Current);

    private IReadOnlyList<FitDone> Standing => Entries.Standing(Job.Fit!.Done);

    private IEnumerable<Finding> Found => Fitted.Findings;

    /// <inheritdoc/>
    public override Answer? Answer =>
        Fitted.Steps.FirstOrDefault(s => s.State is FitStepState.Stopped or FitStepState.Next)
            is { State: FitStepState.Next } next
            ? new($"Next: {next.Title}.", null, null)
            : new(Fitted.Next, null, null);

    /// <summary>What was found that belongs to a step; the list of all steps shows everything.</summary>
    private IEnumerable<Finding> FoundAt(FitStep step)
    {
        string[] codes = step switch
        {
            FitStep.PaintLine => ["line-"],
            FitStep.ProofTwist => ["proof-", "twisted"],
            FitStep.PullCheck => ["pull-", "pulled-"],
            FitStep.BearingClamp => ["clamp-", "hub-nut-", "rolled-"],
            FitStep.TrialEnds => ["no-plunge-", "margin-", "not-as-"],
            FitStep.FreeTurn => ["does-not-turn-"],
            FitStep.FirstRun => ["line-", "twisted", "noise-", "leak-"],
            _ => [],
        };
        return Found.Where(f =>
            f.Severity == Severity.Stop
            || Array.Exists(codes, c => f.Code.StartsWith(c, StringComparison.Ordinal))
        );
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var old = basis.Fit ?? new FitInput();
        var fit = old with
        {
            StubClampsBearing = Said(Draft["clamps"]),
            HubNutByMaker = Draft.Take("nutByMaker", FitFields.HubNutByMaker),
            PullByMaker = Draft.Take("pullByMaker", FitFields.PullByMaker),
            ProofTorque = Draft.Take("proofTorque", FitFields.ProofTorque),
            Done = [.. old.Done, .. NewEntries(old)],
        };
        return
            Keeping
            && basis.Fit is null
            && fit == new FitInput { Done = fit.Done }
            && fit.Done.Count == 0
            ? basis
            : basis with
            {
                Fit = fit,
            };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Fit is not { } fit)
            return;
        if (fit.StubClampsBearing is { } clamps)
            answers["clamps"] = clamps ? "yes" : "no";
        Draft.Lay(answers, "nutByMaker", fit.HubNutByMaker);
        Draft.Lay(answers, "pullByMaker", fit.PullByMaker);
        Draft.Lay(answers, "proofTorque", fit.ProofTorque);
        foreach (var done in Entries.Standing(fit.Done))
            answers[Key(done.Id)] = Text(done);
    }

    /// <summary>What the draft holds and the record does not: new entries, corrections, and what was taken back.</summary>
    private IEnumerable<FitDone> NewEntries(FitInput old)
    {
        var known = old.Done.Select(d => d.Id).ToHashSet(StringComparer.Ordinal);
        List<FitDone> added =
        [
            .. Draft
                .Keys(Key(""))
                .Select(k => k[Key("").Length..])
                .Where(id => !known.Contains(id))
                .Order(StringComparer.Ordinal)
                .Select(id => Entry(id, Draft[Key(id)]))
                .OfType<FitDone>(),
        ];
        foreach (var gone in Entries.Standing(old.Done))
        {
            if (!Draft.Has(Key(gone.Id)) && !added.Exists(a => a.Corrects == gone.Id))
                yield return gone with
                {
                    Id = Guid.NewGuid().ToString("N"),
                    Corrects = gone.Id,
                    Withdrawn = true,
                };
        }
        foreach (var entry in added)
            yield return entry;
    }

    private static string Text(FitDone d) =>
        string.Join(
            Bar,
            d.Step,
            WeldToTest.Write(d.At),
            d.Corrects,
            d.LineDiameter?.Typed,
            d.LineOffset?.Typed,
            d.ProofSet?.Typed,
            d.Pull?.Typed,
            Told(d.PullHeld),
            d.HubNut?.Typed,
            d.LeftIn?.Typed,
            d.LeftOut?.Typed,
            Told(d.FreeAtDroop),
            Told(d.FreeAtLock),
            Told(d.Leaks),
            Told(d.Noise),
            d.Note
        );

    private static FitDone? Entry(string id, string text)
    {
        var parts = text.Split(Bar, 4 + Boxes.Length);
        string Part(string box) =>
            Array.IndexOf(Boxes, box) + 3 is var i && i < parts.Length ? parts[i] : "";
        Measured<T>? Read<T>(string box, Field<T> field)
            where T : IDimension<T> =>
            Part(box) is { Length: > 0 } typed ? field.Read(typed).Measure : null;
        if (
            parts.Length < 3
            || !Enum.TryParse<FitStep>(parts[0], out var step)
            || !DateTimeOffset.TryParse(parts[1], CultureInfo.InvariantCulture, out var at)
        )
            return null;
        return new()
        {
            Id = id,
            Step = step,
            At = at,
            Corrects = parts[2],
            LineDiameter = Read("lineDiameter", FitFields.LineDiameter),
            LineOffset = Read("lineOffset", FitFields.LineOffset),
            ProofSet = Read("proofSet", FitFields.ProofSet),
            Pull = Read("pull", FitFields.Pull),
            PullHeld = Said(Part("pullHeld")),
            HubNut = Read("hubNut", FitFields.HubNut),
            LeftIn = Read("leftIn", FitFields.LeftIn),
            LeftOut = Read("leftOut", FitFields.LeftOut),
            FreeAtDroop = Said(Part("atDroop")),
            FreeAtLock = Said(Part("atLock")),
            Leaks = Said(Part("leaks")),
            Noise = Said(Part("noise")),
            Note = parts.Length > 3 + Boxes.Length ? parts[3 + Boxes.Length] : "",
        };
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        // Opened without a step, it opens at the one that is next.
        if (
            Ready
            && At is null
            && Fitted.Steps.FirstOrDefault(s =>
                s.State is FitStepState.Stopped or FitStepState.Next
            )
                is { } next
        )
            Navigation.NavigateTo(Address((int)next.Step), replace: true);
    }

    /// <inheritdoc/>
    public override string Called(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key switch
        {
            "clamps" => "whether the stub clamps the hub bearing",
            "nutByMaker" => "the maker's torque of the hub nut",
            "pullByMaker" => "the maker's pull",
            "proofTorque" => "the proof torque",
            _ when key.StartsWith(Key(""), StringComparison.Ordinal) => "a step that was done",
            _ => base.Called(key),
        };
    }

    /// <inheritdoc/>
    public override string Worded(string key, string text)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key == "clamps" ? Option.Worded(YesNoUnknown, text)
            : key.StartsWith(Key(""), StringComparison.Ordinal) && Entry("", text) is { } entry
                ? $"{TitleOf(entry.Step)}, {When(entry.At)}"
            : text;
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) => null;

    private FitDone? Last(FitStep step) => Standing.LastOrDefault(d => d.Step == step);

    private void Note()
    {
        var correct = Fixing;
        if (Refused())
        {
            _trouble = "A box cannot be read. Put it right or empty it; don't know is an answer.";
            return;
        }
        _trouble = null;
        var corrects = correct && Last(Current) is { } last ? last.Id : "";
        var at =
            correct && Last(Current) is { } was
                ? WeldToTest.Write(was.At)
                : WeldToTest.Write(Beat.Now);
        var id =
            Beat.Now.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff", CultureInfo.InvariantCulture)
            + "-"
            + Guid.NewGuid().ToString("N")[..8];
        var text = string.Join(
            Bar,
            [
                Current.ToString(),
                at,
                corrects,
                .. Boxes.Select(b => Uses(Current).Contains(b) ? Together(b) : ""),
                "",
            ]
        );
        List<KeyValuePair<string, string>> changes = [new(Key(id), text)];
        foreach (var box in Uses(Current))
        {
            changes.Add(new(box, ""));
            changes.Add(new(box + Draft.PlusMinus, ""));
        }
        if (corrects.Length > 0)
            changes.Add(new(Key(corrects), ""));
        changes.Add(new(FixingKey, ""));
        Draft.SetAll("done", changes);
        if (Stands.State == FitStepState.Stopped)
            return;
        var next = Fitted.Steps.FirstOrDefault(s =>
            s.Step > Current && s.State != FitStepState.NotInThisJob
        );
        Go(next is null ? Steps.Count : (int)next.Step);
    }

    /// <summary>Puts what was noted back into the boxes, to be put right.</summary>
    private void Open(FitDone done)
    {
        var parts = Text(done).Split(Bar);
        Draft.SetAll(
            "open",
            [
                .. Uses(Current)
                    .Select(b => KeyValuePair.Create(b, parts[Array.IndexOf(Boxes, b) + 3])),
                new(FixingKey, done.Id),
            ]
        );
    }

    private void Leave() =>
        Draft.SetAll(
            "leave",
            [
                .. Uses(Current).Select(b => KeyValuePair.Create(b, "")),
                .. Uses(Current).Select(b => KeyValuePair.Create(b + Draft.PlusMinus, "")),
                new(FixingKey, ""),
            ]
        );

    private const string FixingKey = "fixing";

    /// <summary>True while the boxes hold what was noted, to be put right.</summary>
    private bool Fixing => Draft.Has(FixingKey) && Last(Current)?.Id == Draft[FixingKey];

    private void TakeBack(FitDone done) =>
        Draft.SetAll("back", [KeyValuePair.Create(Key(done.Id), "")]);

    private string Together(string box) => Units.Together(Draft[box], Draft[box + Draft.PlusMinus]);

    private bool Refused() =>
        No("lineDiameter", FitFields.LineDiameter)
        || No("lineOffset", FitFields.LineOffset)
        || No("proofSet", FitFields.ProofSet)
        || No("pull", FitFields.Pull)
        || No("hubNut", FitFields.HubNut)
        || No("leftIn", FitFields.LeftIn)
        || No("leftOut", FitFields.LeftOut);

    private bool No<T>(string box, Field<T> field)
        where T : IDimension<T> =>
        Uses(Current).Contains(box) && Draft.Read(box, field) is { Refusal: not null };

    /// <summary>The boxes that a step asks for.</summary>
    private static string[] Uses(FitStep step) =>
        step switch
        {
            FitStep.PaintLine => ["lineDiameter"],
            FitStep.ProofTwist => ["lineOffset", "proofSet"],
            FitStep.PullCheck => ["pull", "pullHeld"],
            FitStep.BearingClamp => ["hubNut"],
            FitStep.TrialEnds => ["leftIn", "leftOut"],
            FitStep.FreeTurn => ["atDroop", "atLock"],
            FitStep.FirstRun => ["lineOffset", "leaks", "noise"],
            _ => [],
        };

    private static string Key(string id) => "f/" + id;

    private static bool? Said(string text) =>
        text switch
        {
            "yes" => true,
            "no" => false,
            _ => null,
        };

    private static string Told(bool? said) =>
        said switch
        {
            true => "yes",
            false => "no",
            _ => "",
        };

    private static string SlugOf(FitStep step) =>
        string.Concat(
            step.ToString()
                .Select(
                    (c, i) =>
                        char.IsUpper(c)
                            ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c)
                            : c.ToString()
                )
        );

    // The stage names its steps; asked of an empty job, whose names are those of every job.
    private static readonly Dictionary<FitStep, string> s_titles = Workflow
        .Evaluate(new() { Fit = new() })
        .Fit!.Steps.ToDictionary(s => s.Step, s => s.Title);

    private static string TitleOf(FitStep step) => s_titles[step];

    private static string When(DateTimeOffset at) =>
        at.ToString("d MMMM, HH:mm", CultureInfo.InvariantCulture);
}
