using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>What the truing stage says beside its numbers, turn by turn.</summary>
internal sealed class TruingAdvice(int turns)
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "own derivation, plane geometry of a turning section";
    private const string Bow =
        "own derivation: a parabolic bow seen from supports set in at each end";
    private const string Gum = "JCGM 100:2008 (GUM), 5.1.2";

    // Nearer to a support than this a bend hardly shows, mm. Common practice, no source.
    private const double BesideSupport = 20;

    private readonly List<Finding> _findings = [];
    private DialTurn _turn = new();
    private string _name = "";

    public IReadOnlyList<Finding> Findings => _findings;

    public void Begin(int index, DialTurn turn)
    {
        _turn = turn;
        _name = turns > 1 ? $"Turn {index + 1} ({Words(turn.Moment)}): " : "";
    }

    public void Incomplete(int missing) =>
        Add(
            Severity.Note,
            "readings-incomplete",
            $"{missing} of the readings lack the angle or the dial and are left out.",
            $"Fill them in, or strike them.",
            Practice
        );

    public void Supports()
    {
        if (_turn.Support == Support.Unknown)
        {
            Add(
                Severity.Caution,
                "supports-unknown",
                $"It is not noted what carried the shaft. One and the same bow reads {Say.Fine(0.30)} between centres and {Say.Fine(0.1333)} on vees set in by a sixth of the length at each end, so a limit without its supports means little.",
                $"Note centres or vees and where they stood, and use the same the next time.",
                Bow
            );
            return;
        }
        var (a, b, at) = (
            _turn.FirstSupportAt?.Value,
            _turn.SecondSupportAt?.Value,
            _turn.Station?.Value
        );
        if (at is null || (_turn.Support == Support.Vees && (a is null || b is null)))
            Add(
                Severity.Note,
                "places-missing",
                $"It is not noted where {(at is null ? "the dial" : "both vees")} stood, so this turn cannot be compared with the next.",
                $"Measure from the inner end and note it.",
                Bow
            );
        if (a is { } first && b is { } second && Math.Abs(first - second) < 1)
            Add(
                Severity.Caution,
                "supports-together",
                $"Both supports are noted at the same place, {Say.Length(first)} from the inner end.",
                $"Measure both again from the inner end.",
                Geometry
            );
        else if (
            at is { } dial
            && new[] { a, b }.Any(s => Math.Abs(s - dial ?? 1e9) < BesideSupport)
        )
            Add(
                Severity.Caution,
                "dial-over-support",
                $"The dial stood over a support, where a bend does not show.",
                $"Read at least {Say.Length(BesideSupport)} away, best beside the weld and midway between the supports.",
                Geometry
            );
    }

    public void NotRound(Round round)
    {
        if (round.Places < 3)
            Add(
                Severity.Caution,
                "too-few-readings",
                $"Readings at {round.Places} places: run-out needs three unknowns found, the middle of the dial and a bend in two directions.",
                $"Read at least four places, a quarter turn apart; eight is better, and the first again at the end.",
                Geometry
            );
        else
            Add(
                Severity.Caution,
                "half-turn-unread",
                $"Nothing was read from {Say.Bearing(round.GapFrom)} to {Say.Bearing(round.GapTo)}, half a turn or more. What stands there is not known.",
                $"Turn the shaft on and read there too.",
                Geometry
            );
    }

    public void Spacing(Round round)
    {
        if (round.WidestGap > 121 * Math.PI / 180)
            Add(
                Severity.Caution,
                "gap-in-turn",
                $"Nothing was read from {Say.Bearing(round.GapFrom)} to {Say.Bearing(round.GapTo)}. The run-out there is only inferred.",
                $"Read a place or two in between.",
                Geometry
            );
        if (round.Places == 3)
            Add(
                Severity.Note,
                "nothing-checks",
                $"Three places fix three unknowns, so nothing checks them: an oval shaft or one misread number looks just like a bend.",
                $"Read eight places, and the first again at the end.",
                Geometry
            );
        else if (round is { Places: 4, Even: true })
            Add(
                Severity.Note,
                "oval-may-hide",
                $"At four places a quarter turn apart an oval can hide: its highs and lows may all lie in between.",
                $"Read the four places between them as well.",
                Geometry
            );
    }

    public void Closing(IReadOnlyList<Point> points, double same)
    {
        foreach (var place in Round.Group(points, p => p.Angle, same))
        {
            var (low, high) = (place.Min(p => p.Dial), place.Max(p => p.Dial));
            // Twice the spread of a difference of two readings.
            var usual = Math.Sqrt(
                (Square(TruingFields.Dial.UsualPlusMinus) + Square(TruingFields.Division / 2)) / 3
                    + Square(TruingFields.Repeatability)
            );
            if (high - low > 2 * Math.Sqrt(2) * usual)
                Add(
                    Severity.Caution,
                    "dial-moved",
                    $"At {Say.Bearing(place[0].Angle)} the dial showed {Say.Fine(low)} and {Say.Fine(high)}: {Say.Fine(high - low)} apart at one and the same place.",
                    $"The dial, its stand or the shaft on its supports moved. Clamp it, wipe the supports and read the turn again.",
                    Gum
                );
        }
    }

    public void Shape(
        IReadOnlyList<Point> points,
        FirstHarmonic fit,
        double spread,
        double expanded,
        double limit
    )
    {
        var n = points.Count;
        if (n < 5)
            return;
        var dial = points.Average(p => p.DialUncertainty);
        var rest = Math.Sqrt(fit.SquareSum / n);
        var lone = Lone(points, fit, dial);
        if (lone is { } i)
            Add(
                Severity.Note,
                "lone-reading",
                $"The reading at {Say.Bearing(points[i].Angle)} stands alone, {Say.Fine(Math.Abs(fit.Residuals[i]))} {(fit.Residuals[i] > 0 ? "above" : "below")} what the others make of it.",
                $"Look for spatter, a burr or a nick there, and read it again.",
                Practice
            );
        else if (rest > 2 * dial)
        {
            var bendInside = spread - expanded > limit && 2 * fit.Offset <= limit;
            Add(
                bendInside ? Severity.Caution : Severity.Note,
                "not-a-bend",
                $"The bend alone makes {Say.Fine(2 * fit.Offset)} of the {Say.Fine(spread)}; the rest is shape: oval, lobes or a rough surface.",
                bendInside
                    ? (Sentence)
                        $"Straightening will not take the shape out. Read beside it on a clean, turned surface before anything is bent."
                    : $"Read on a clean, round stretch if there is one.",
                Geometry
            );
        }
    }

    public void Over(double runOut, double limit, bool latest)
    {
        if (!latest)
        {
            Add(
                Severity.Note,
                "was-over",
                $"Run-out was {Say.Fine(runOut)} then, over {Say.Fine(limit)}. The same station was read again since.",
                $"Go by the later reading.",
                Practice
            );
            return;
        }
        Sentence action = _turn.Moment switch
        {
            Moment.BeforeWelding =>
                $"Find out whether the piece is bent or only worn where it is carried. Straighten it first or take another.",
            Moment.Tacked =>
                $"Break the tacks, clean the vee and the packs, set up again and tack again.",
            Moment.ButtWelded =>
                $"Mark the high point and straighten before the sleeve goes on: only with the weld tempered and cold, and never on a hardened stretch. Then read again.",
            Moment.Sleeved =>
                $"Do not fit it. Read beside the sleeve on both sides to see where it went, and straighten with the weld tempered and cold.",
            _ => (Sentence)
                $"Take it off the car. A shaft that went out of true in its first run has yielded somewhere: find where before anything else.",
        };
        Add(
            Severity.Stop,
            "over-limit",
            $"Run-out {Say.Fine(runOut)} is over the limit of {Say.Fine(limit)}.",
            action,
            _turn.Limit is null ? Practice : "your own limit"
        );
    }

    public void TooClose(double runOut, double expanded, double limit, bool latest) =>
        Add(
            latest ? Severity.Caution : Severity.Note,
            "too-close-to-call",
            $"Run-out {Say.Fine(runOut)} ± {Say.Fine(expanded)} cannot be told from the limit of {Say.Fine(limit)}.",
            $"Read again at more places with a finer dial, or treat it as over.",
            Gum
        );

    public void Limits(IReadOnlyList<DialTurn> all)
    {
        if (all.Any(t => t.Limit is null))
            _findings.Add(
                new Finding(
                    Severity.Note,
                    Stage.Truing,
                    "usual-limit",
                    $"Judged by what is usually accepted: {Say.Fine(TruingFields.UsualLimitButt)} up to and after the butt weld, {Say.Fine(TruingFields.UsualLimitSleeved)} with the sleeve on and after the first run.",
                    $"If the rules of your event or the maker of the joints ask for less, type that.",
                    "common practice, no source; no published limit for a spliced half-shaft was found"
                )
            );
    }

    /// <summary>The reading that the others disown, or null: its residual over the scatter found without it, at least the dial's.</summary>
    private static int? Lone(IReadOnlyList<Point> points, FirstHarmonic fit, double dial)
    {
        var n = points.Count;
        if (n < 6)
            return null;
        int? lone = null;
        // Four standard deviations: with thirty-six readings one turn in some hundreds is flagged for nothing.
        var most = 4.0;
        for (var i = 0; i < n; i++)
        {
            var free = 1 - fit.Leverages[i];
            if (free < 1e-6)
                continue;
            var r = fit.Residuals[i];
            var without = Math.Sqrt(Math.Max(0, fit.SquareSum - r * r / free) / (n - 4));
            var times = Math.Abs(r) / (Math.Max(without, dial) * Math.Sqrt(free));
            if (times > most)
                (lone, most) = (i, times);
        }
        return lone;
    }

    private static string Words(Moment moment) =>
        moment switch
        {
            Moment.BeforeWelding => "before welding",
            Moment.Tacked => "tacked",
            Moment.ButtWelded => "butt welded",
            Moment.Sleeved => "sleeved",
            _ => "after the first run",
        };

    private static double Square(double x) => x * x;

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _findings.Add(new Finding(severity, Stage.Truing, code, $"{_name}{text}", action, source));
}
