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

    private const string ByNeedle = "Needle";
    private const string ByIndicator = "Indicator";

    /// <summary>How readings can be entered.</summary>
    private static readonly string[] Ways = ["Keypad", ByNeedle, ByIndicator];

    private string _way = Ways[0];
    private string? _part;
    private bool _busy;
    private string? _trouble;

    // The place in hand; how often one was taken; and the question it was looked for at.
    private string? _current;
    private int _taken;
    private string? _at;

    // How many places were asked for before the hand's running change; null once that is somebody else's doing.
    private int? _asked;
    private TurnReadings? _read;

    /// <summary>Which turn of the job it is; null for one without a job.</summary>
    [SupplyParameterFromQuery(Name = "turn")]
    public string? Turn { get; set; }

    /// <summary>The moment that a new turn is asked for at; null where any.</summary>
    [SupplyParameterFromQuery(Name = "moment")]
    public string? AskedMoment { get; set; }

    /// <summary>The turn that a new one is like: another station of the same state; null for none.</summary>
    [SupplyParameterFromQuery(Name = "like")]
    public string? Like { get; set; }

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
                    RunOutVerdict.ReadAgain =>
                        $"Clean it and read again: with a speck on it, it runs out",
                    RunOutVerdict.Over => $"Over the limit: it runs out",
                    _ => (Sentence)$"It runs out",
                },
                $"{Say.Fine(runOut)}",
                after,
                runOut
            )
            {
                Unsettled = $"it runs out",
            };
        }
    }

    /// <summary>The turn's id.</summary>
    private string TurnId => _part ?? Turn ?? "this";

    private TurnResult? Mine => Result.Truing?.Turns.FirstOrDefault(t => t.TurnId == TurnId);

    private TurnReadings Read => _read ??= new(Draft);

    private IReadOnlyList<DialPlace> Places => Read.Places(_current);

    /// <summary>The place in hand; null when all were read and none has been touched since.</summary>
    private DialPlace? InHand =>
        _current is null ? null : Places.FirstOrDefault(p => p.Key == _current);

    private string DialLabel(DialPlace here)
    {
        var places = Places;
        var number = places.TakeWhile(p => p != here).Count() + 1;
        return here.Typed
            ? $"Reading {number}"
            : $"Reading {number} of {places.Count}: turn to {Said(here.Degrees)}";
    }

    /// <summary>Whether something was read at a place that is not asked for.</summary>
    private bool ReadElsewhere => Read.Count > 0 && Read.Places(null).Count > Read.Count;

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
                    $"{(Draft.WhyNot("limit") is null ? "" : "Because what was typed was refused: ")}A limit of {Say.Fine(mine.Limit).In(Preferences.Display)} for this moment (common practice, no source)."
                );
            return lines;
        }
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var turns = basis.Truing?.Turns ?? [];
        var old = turns.FirstOrDefault(t => t.Id == TurnId);
        var readings = Read.Laid(old?.Readings ?? [], Keeping, Keeping && JobId is not null);
        if (readings.Count == 0 && old is null)
            return basis;
        var turn = (old ?? new()) with
        {
            Id = TurnId,
            Moment = Enum.TryParse<Moment>(Draft["moment"], out var moment)
                ? moment
                : Moment.ButtWelded,
            Layer = Counted("layer", 1, TruingFields.MostLayers),
            AfterStroke = Counted("strokes", 0, TruingFields.MostStrokes),
            Support = Enum.TryParse<Support>(Draft["support"], out var support)
                ? support
                : Support.Unknown,
            Station = Draft.Take("station", TruingFields.Station, old?.Station),
            FirstSupportAt = Draft.Take("first", TruingFields.FirstSupportAt, old?.FirstSupportAt),
            SecondSupportAt = Draft.Take(
                "second",
                TruingFields.SecondSupportAt,
                old?.SecondSupportAt
            ),
            VeeAngle = Draft.Take("vee", TruingFields.VeeAngle, old?.VeeAngle),
            Limit = Draft.Take("limit", TruingFields.Limit, old?.Limit),
            Readings = readings,
        };
        return basis with
        {
            Truing = (basis.Truing ?? new()) with
            {
                Turns = old is null
                    ? [.. turns, turn]
                    : [.. turns.Select(t => t.Id == TurnId ? turn : t)],
                WeldAt = Draft.Take("weld", TruingFields.WeldAt, basis.Truing?.WeldAt),
                OverallLength = Draft.Take(
                    "overall",
                    TruingFields.OverallLength,
                    basis.Truing?.OverallLength
                ),
            },
        };
    }

    private int? Counted(string key, int least, int most) =>
        int.TryParse(Draft[key], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n >= least
        && n <= most
            ? n
            : null;

    /// <inheritdoc/>
    protected override string KeyOn(string id, string part) => base.KeyOn(id, part) + " " + part;

    /// <inheritdoc/>
    protected override Dictionary<string, string> TakenHanded(Job job, string part)
    {
        _part = part;
        try
        {
            return base.TakenHanded(job, part);
        }
        finally
        {
            _part = null;
        }
    }

    /// <inheritdoc/>
    protected override void Moves(Job basis, bool opens)
    {
        if (opens)
            Read.Free();
        _asked = null;
    }

    /// <inheritdoc/>
    protected override void Settling()
    {
        // How many there are to be cannot be seen from the first few, so that it is kept as if it had been picked.
        if (!Draft.Has("count") && Draft.Keys("r/").Any())
            Give("count", TurnReadings.Usual.ToString(CultureInfo.InvariantCulture));
    }

    /// <inheritdoc/>
    public override string Called(string key) =>
        key switch
        {
            "moment" => "how far along the work is",
            "support" => "what carries the shaft",
            "first" => "the first support",
            "second" => "the second support",
            "station" => "where the dial stands",
            "limit" => "the largest run-out",
            "layer" => "the layers of weld",
            "strokes" => "the strokes of the press",
            "vee" => "the angle of the vees",
            "weld" => "the middle of the weld",
            "overall" => "the overall length",
            "count" => "the number of readings",
            _ => TurnReadings.Called(key) ?? base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        key switch
        {
            "moment" => Option.Worded(Moments, text),
            "support" => Option.Worded(Supports, text),
            "count" => Option.Worded(Counts, text),
            _ => text,
        };

    /// <inheritdoc/>
    protected override Job Handed(Job basis, string part)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var laid = Lay(basis);
        return laid.Truing is not { } truing
            ? laid
            : laid with
            {
                Truing = truing with
                {
                    Turns =
                    [
                        .. truing.Turns.Select(t => t.Id == TurnId ? t with { Id = part } : t),
                    ],
                    // A box left empty here says nothing of the shaft, and takes nothing out of the job.
                    WeldAt = truing.WeldAt ?? basis.Truing?.WeldAt,
                    OverallLength = truing.OverallLength ?? basis.Truing?.OverallLength,
                },
            };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        Draft.Lay(answers, "weld", job.Truing?.WeldAt);
        Draft.Lay(answers, "overall", job.Truing?.OverallLength);
        if (job.Truing?.Turns.FirstOrDefault(t => t.Id == TurnId) is not { } turn)
        {
            LikeAnother(job, answers);
            return;
        }
        answers["moment"] = turn.Moment.ToString();
        answers["support"] = turn.Support.ToString();
        LayState(turn, answers);
        Draft.Lay(answers, "station", turn.Station);
        LaySupports(turn, answers);
        Draft.Lay(answers, "limit", turn.Limit);
        Read.Unlay(turn.Readings, answers, JobId is not null);
    }

    /// <summary>A new turn stands on the same supports as the one before it; one more station of the same state shares its
    /// moment too. Strokes are never taken over otherwise: that would call a pressed shaft the unpressed one.</summary>
    private void LikeAnother(Job job, IDictionary<string, string> answers)
    {
        if (Enum.TryParse<Moment>(AskedMoment, out var asked))
            answers["moment"] = asked.ToString();
        var turns = job.Truing?.Turns ?? [];
        var like = turns.FirstOrDefault(t => t.Id == Like);
        if (like is not null)
        {
            answers["moment"] = like.Moment.ToString();
            LayState(like, answers);
            Draft.Lay(answers, "limit", like.Limit);
        }
        else if (turns.Count > 0)
            like = turns[^1];
        if (like is null)
            return;
        answers["support"] = like.Support.ToString();
        LaySupports(like, answers);
    }

    private static void LayState(DialTurn turn, IDictionary<string, string> answers)
    {
        if (turn.Layer is { } layer)
            answers["layer"] = layer.ToString(CultureInfo.InvariantCulture);
        if (turn.AfterStroke is { } strokes)
            answers["strokes"] = strokes.ToString(CultureInfo.InvariantCulture);
    }

    private static void LaySupports(DialTurn turn, IDictionary<string, string> answers)
    {
        Draft.Lay(answers, "first", turn.FirstSupportAt);
        Draft.Lay(answers, "second", turn.SecondSupportAt);
        Draft.Lay(answers, "vee", turn.VeeAngle);
    }

    private Task AnotherStation() =>
        GoOn(
            (job, turn) =>
                $"job/{job}/{Slug}/station?turn={Guid.NewGuid():N}&like={Uri.EscapeDataString(turn)}"
        );

    private Task PressIt() => GoOn((job, _) => $"job/{job}/{Press.NextStroke.Place}");

    /// <summary>What is kept without being asked for a name.</summary>
    private string Untitled =>
        "Under the dial, "
        + Wall.GetLocalNow().ToString("d MMMM, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Goes where several records are kept together. Without a job what was read becomes one, and nobody is asked for a
    /// name: it is among the route cards, from which it can be put away.</summary>
    private async Task GoOn(Func<string, string, string> to)
    {
        if (JobId is { } at)
        {
            Navigation.NavigateTo(to(at, TurnId));
            return;
        }
        _busy = true;
        Draft.Settle();
        await Kept;
        var (id, part) = (Guid.NewGuid().ToString("N"), Guid.NewGuid().ToString("N"));
        _trouble = await Shelf.Keep(
            id,
            job => Hand(job with { Name = Untitled }, part),
            job => LeftOf(job, id, part)
        );
        if (_trouble is null)
        {
            Close();
            Navigation.NavigateTo(to(id, part));
            return;
        }
        _busy = false;
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.004
            ? null
            : Say.Fine(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " more than before" : " less than before");

    /// <inheritdoc/>
    public override string Address(int index) =>
        base.Address(index)
        + (Turn is null ? "" : "?turn=" + Uri.EscapeDataString(Turn))
        + (
            Turn is null || AskedMoment is null
                ? ""
                : "&moment=" + Uri.EscapeDataString(AskedMoment)
        )
        + (Turn is null || Like is null ? "" : "&like=" + Uri.EscapeDataString(Like));

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        // A job holds many turns; a new one gets its id before its first reading, so that a reload finds it again.
        if (JobId is not null && Turn is null)
        {
            Turn = Guid.NewGuid().ToString("N");
            Navigation.NavigateTo(Address(Index), replace: true);
        }
        Draft.Begins += () => _asked = Read.Count;
        Draft.Changed += () =>
        {
            if (_asked is { } asked && asked != Read.Count)
                TakeFirstOpen();
        };
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        var at = Address(Index);
        if (_at == at)
            return;
        _at = at;
        TakeFirstOpen();
        // Come to put one right, it is that one which is in hand.
        if (
            Wanted is { } key
            && Places.FirstOrDefault(p => key == p.Dial || key == p.Angle) is { } wanted
        )
            _current = wanted.Key;
    }

    /// <summary>Takes the first place in hand that is not read yet, or whose reading was refused. One that is read is taken by a
    /// touch only, so that a slip of the thumb changes no reading.</summary>
    private void TakeFirstOpen() =>
        (_current, _taken, _asked) = (
            Read.Places(null).FirstOrDefault(p => !Draft.Has(p.Dial) || IsRefused(p))?.Key,
            _taken + 1,
            Read.Count
        );

    private bool IsRefused(DialPlace place) =>
        Draft.Read(place.Dial, TruingFields.Dial) is { Refusal: not null };

    private static string Said(double? degrees) =>
        degrees is { } a ? a.ToString("0.#", CultureInfo.InvariantCulture) + "°" : "?";

    private string Line(DialPlace place)
    {
        var dial = Draft[place.Dial];
        return $"{Said(place.Degrees)}: {(dial.Length > 0 ? dial : "–")}{(place != InHand && IsRefused(place) ? ", refused" : "")}";
    }

    /// <summary>Takes a place in hand that was touched in the list.</summary>
    /// <param name="place">Its key.</param>
    public Task Touch(string place)
    {
        var found = Places.FirstOrDefault(p => p.Key == place);
        return found is null ? Task.CompletedTask : Take(found);
    }

    private async Task Take(DialPlace place)
    {
        Draft.Settle();
        (_current, _taken) = (place.Key, _taken + 1);
        StateHasChanged();
        var askAngle = place.Typed && !Draft.Has(place.Angle);
        // A box in hand brings the phone's own keys up, over the needle.
        if (_way != Ways[0] && !askAngle)
            return;
        await Task.Yield();
        await Device.FocusOn("q-" + (askAngle ? place.Angle : place.Dial).Replace('/', '-'));
    }

    private async Task NextReading()
    {
        if (After(InHand) is { } next)
            await Take(next);
        else if (Read.Count > 0)
            Go(Index + 1);
        else
            await Take(Places[^1]);
    }

    /// <summary>The place after one; null when it is the last.</summary>
    private DialPlace? After(DialPlace? here) =>
        here is null ? null : Places.SkipWhile(p => p != here).Skip(1).FirstOrDefault();

    /// <inheritdoc/>
    public override bool Handles()
    {
        if (Index != 3 || InHand is not { } here || !Draft.Has(here.Dial) || After(here) is null)
            return false;
        _ = NextReading();
        return true;
    }
}
