using System.Globalization;
using Microsoft.AspNetCore.Components;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Pages.Doors;

/// <summary>A shaft under the dial: how far out is it, and where is it high?</summary>
public sealed partial class UnderTheDial
{
    /// <summary>Its place in the address.</summary>
    public const string Place = "under-the-dial";

    /// <summary>Most readings of a turn that the page takes.</summary>
    private const int Most = 36;

    private static readonly Option[] Moments =
    [
        new(nameof(Moment.BeforeWelding), "Not welded yet"),
        new(nameof(Moment.Tacked), "Tacked"),
        new(nameof(Moment.ButtWelded), "Butt welded and cold"),
        new(nameof(Moment.Sleeved), "Sleeved and cold"),
        new(nameof(Moment.AfterFirstRun), "After its first run"),
    ];

    private static readonly Option[] Supports =
    [
        new(nameof(Support.Centres), "between centres"),
        new(nameof(Support.Vees), "on two vees"),
        new(nameof(Support.Unknown), "don't know any more"),
    ];

    private static readonly Option[] Counts =
    [
        new("4", "4"),
        new("6", "6"),
        new("8", "8"),
        new("12", "12"),
        new("0", "My own"),
    ];

    private int _current;

    /// <summary>Which turn of the job it is; null for one without a job.</summary>
    [SupplyParameterFromQuery(Name = "turn")]
    public string? Turn { get; set; }

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "A shaft under the dial";

    /// <inheritdoc/>
    public override string DraftKey => Turn is null ? base.DraftKey : base.DraftKey + " " + Turn;

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new("moment", "When is this?", "Then the limit for a butt weld is taken."),
        new(
            "supports",
            "What carries the shaft while it turns?",
            "Readings on other supports cannot be compared with these."
        ),
        new(
            "station",
            "Where does the dial stand?",
            "The run-out is the same; only the next reading there cannot be compared."
        ),
        new("readings", "Turn the shaft, read the dial."),
        new(
            "limit",
            "How much run-out do you accept?",
            "Then the usual limit for the moment counts."
        ),
    ];

    /// <inheritdoc/>
    public override Answer? Answer
    {
        get
        {
            if (Mine is not { RunOut: { } runOut } turn)
                return null;
            Sentence after = turn.HighPoint is { } high
                ? $", high at {Say.Bearing(high)} from the mark."
                : (Sentence)$", and no one side of it is high.";
            return new(
                turn.Verdict switch
                {
                    RunOutVerdict.Inside => $"Good as it is: it runs out",
                    RunOutVerdict.TooCloseToCall => $"Too close to call: it runs out",
                    RunOutVerdict.Over => $"Over the limit: it runs out",
                    _ => (Sentence)$"It runs out",
                },
                $"{Say.Fine(runOut)}",
                after,
                runOut
            );
        }
    }

    /// <summary>The turn's id.</summary>
    private string TurnId => Turn ?? "this";

    private TurnResult? Mine => Result.Truing?.Turns.FirstOrDefault(t => t.TurnId == TurnId);

    /// <summary>Readings at even angles; 0 where the angles are typed.</summary>
    private int Count =>
        int.TryParse(Draft["count"], CultureInfo.InvariantCulture, out var count) ? count : 8;

    private int Shown => Count > 0 ? Count : Math.Min(Most, Taken_() + 1);

    private int Current => Math.Min(_current, Shown - 1);

    private string DialLabel =>
        Count > 0
            ? $"Reading {Current + 1} of {Count}: turn to {AngleOf(Current)!.Value.ToString("0.#", CultureInfo.InvariantCulture)}°"
            : $"Reading {Current + 1}";

    private IReadOnlyList<string> Taken
    {
        get
        {
            var lines = new List<string>
            {
                "The dial grows when its plunger is pushed in.",
                "Angles counted from the painted mark, the way the shaft is numbered.",
            };
            if (
                Mine is { } mine
                && Job.Truing?.Turns.FirstOrDefault(t => t.Id == TurnId)?.Limit is null
            )
                lines.Add(
                    $"A limit of {Say.Fine(mine.Limit).In(Preferences.Display)} for this moment (common practice, no source)."
                );
            return lines;
        }
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var readings = new List<DialReading>();
        for (var i = 0; i < (Count > 0 ? Count : Most); i++)
        {
            if (Draft.Take($"r/{i}/dial", TruingFields.Dial) is not { } dial)
                continue;
            var angle =
                Count > 0
                    ? Measured<Angle>.Of(360.0 * i / Count, Angle.Degree)
                    : Draft.Take($"r/{i}/angle", TruingFields.ShaftAngle);
            readings.Add(new() { Angle = angle, Dial = dial });
        }
        var turns = basis.Truing?.Turns ?? [];
        var old = turns.FirstOrDefault(t => t.Id == TurnId);
        if (readings.Count == 0 && old is null)
            return basis;
        var turn = (old ?? new()) with
        {
            Id = TurnId,
            Moment = Enum.TryParse<Moment>(Draft["moment"], out var moment)
                ? moment
                : Moment.ButtWelded,
            Support = Enum.TryParse<Support>(Draft["support"], out var support)
                ? support
                : Support.Unknown,
            Station = Draft.Take("station", TruingFields.Station),
            FirstSupportAt = Draft.Take("first", TruingFields.FirstSupportAt),
            SecondSupportAt = Draft.Take("second", TruingFields.SecondSupportAt),
            Limit = Draft.Take("limit", TruingFields.Limit),
            Readings = readings,
        };
        return basis with
        {
            Truing = new()
            {
                Turns = old is null
                    ? [.. turns, turn]
                    : [.. turns.Select(t => t.Id == TurnId ? turn : t)],
            },
        };
    }

    /// <inheritdoc/>
    public override Job Handed(Job basis, string id)
    {
        var laid = Lay(basis);
        return laid.Truing is not { } truing
            ? laid
            : laid with
            {
                Truing = new()
                {
                    Turns = [.. truing.Turns.Select(t => t.Id == TurnId ? t with { Id = id } : t)],
                },
            };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Truing?.Turns.FirstOrDefault(t => t.Id == TurnId) is not { } turn)
            return;
        answers["moment"] = turn.Moment.ToString();
        answers["support"] = turn.Support.ToString();
        Draft.Lay(answers, "station", turn.Station);
        Draft.Lay(answers, "first", turn.FirstSupportAt);
        Draft.Lay(answers, "second", turn.SecondSupportAt);
        Draft.Lay(answers, "limit", turn.Limit);
        var n = turn.Readings.Count;
        var even =
            Array.Exists(Counts, c => c.Value == n.ToString(CultureInfo.InvariantCulture))
            && n > 0
            && turn.Readings.Select((r, i) => (r, i))
                .All(p =>
                    p.r.Angle is { PlusMinus: null } a
                    && Math.Abs(a.Value - 2 * Math.PI * p.i / n) < 1e-6
                );
        answers["count"] = even ? n.ToString(CultureInfo.InvariantCulture) : "0";
        for (var i = 0; i < n; i++)
        {
            Draft.Lay(answers, $"r/{i}/dial", turn.Readings[i].Dial);
            if (!even)
                Draft.Lay(answers, $"r/{i}/angle", turn.Readings[i].Angle);
        }
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.004
            ? null
            : Say.Fine(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " more than before" : " less than before");

    /// <inheritdoc/>
    public override string Address(int index) =>
        base.Address(index) + (Turn is null ? "" : "?turn=" + Uri.EscapeDataString(Turn));

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        // A job holds many turns; a new one gets its id before its first reading, so that a reload finds it again.
        if (JobId is not null && Turn is null)
        {
            Turn = Guid.NewGuid().ToString("N");
            Navigation.NavigateTo(Address(Index), replace: true);
        }
    }

    private double? AngleOf(int i) =>
        Count > 0 ? 360.0 * i / Count
        : Draft.Take($"r/{i}/angle", TruingFields.ShaftAngle) is { } a ? a.Value * 180 / Math.PI
        : null;

    private int Taken_()
    {
        var n = 0;
        while (n < Most && Draft.Has($"r/{n}/dial"))
            n++;
        return n;
    }

    private string Line(int i)
    {
        var angle = AngleOf(i) is { } a
            ? a.ToString("0.#", CultureInfo.InvariantCulture) + "°"
            : "?";
        var dial = Draft[$"r/{i}/dial"];
        return dial.Length > 0 ? $"{angle}: {dial}" : $"{angle}: –";
    }

    private async Task Take(int i)
    {
        Draft.Settle();
        _current = i;
        StateHasChanged();
        await Task.Yield();
        await Device.FocusOn(
            Count == 0 && !Draft.Has($"r/{i}/angle") ? $"q-r-{i}-angle" : $"q-r-{i}-dial"
        );
    }

    private async Task NextReading()
    {
        if (Current + 1 >= Shown && Count > 0)
            Go(Index + 1);
        else
            await Take(Math.Min(Current + 1, Shown - 1));
    }

    /// <inheritdoc/>
    public override bool Handles()
    {
        if (Index != 3 || !Draft.Has($"r/{Current}/dial") || Current + 1 >= Shown)
            return false;
        _ = NextReading();
        return true;
    }
}
