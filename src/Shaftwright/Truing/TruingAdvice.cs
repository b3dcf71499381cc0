using System.Globalization;
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
    private const string Likelihood =
        "likelihood of the readings; thresholds in the handbook, Truing";
    private const string VeeSource = "own derivation: a lobed section in a vee";
    private const string Gum = "JCGM 100:2008 (GUM), 5.1.2";

    // Nearer to a support than this a bend hardly shows, mm. Common practice, no source.
    private const double BesideSupport = 20;

    private readonly List<Finding> _findings = [];
    private readonly List<(DialTurn Turn, string Name, double RunOut, double Limit)> _over = [];
    private DialTurn _turn = new();
    private string _name = "";

    public IReadOnlyList<Finding> Findings => _findings;

    public void Begin(int index, DialTurn turn)
    {
        _turn = turn;
        _name = turns > 1 ? $"Turn {index + 1} ({Words(turn)}): " : "";
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
                $"At four places a quarter turn apart an oval can hide: its highs and lows may all lie in between; and three lobes look like a bend.",
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

    /// <summary>What the harmonics and the readings that stand alone say of the surface.</summary>
    public void Form(TurnResult result, TurnFit found, IReadOnlyList<Point> points)
    {
        foreach (var blip in result.Blips)
            Add(
                Severity.Note,
                "lone-reading",
                $"The reading at {Say.Bearing(blip.Angle)} stands alone, {Say.Fine(Math.Abs(blip.Off))} {(blip.Off > 0 ? "above" : "below")} what the others make of it: like {(blip.Off > 0 ? "spatter or a burr" : "a nick or a grinding mark")}. It hardly counts in the fit, and stays in the run-out as read.",
                blip.Off > 0
                    ? (Sentence)$"Wipe it, dress the spatter off, and read there again."
                    : $"Look there; read again a little to one side of the mark along the shaft.",
                Likelihood
            );
        if (found.Else is { } other)
            Add(
                Severity.Note,
                "blip-or-lobe",
                $"{points.Count} readings cannot tell whether {(found.Fit.Order > 1 ? "the section is oval or lobed" : "a reading stands alone")} or {(other.LeftOut == 0 ? "the section is oval or lobed" : other.LeftOut == 1 ? "one reading stands alone" : $"{other.LeftOut.ToString(CultureInfo.InvariantCulture)} readings stand alone")}.",
                $"Read places between, twelve in all, before anything is bent or dressed.",
                Likelihood
            );
        else if (points.Count is 4 or 5 && found.Scatter > (points.Count == 4 ? 6.63 : 4.61))
            Add(
                Severity.Note,
                "too-few-to-tell",
                $"The readings do not lie on a round, bent section as closely as the dial should, and {points.Count} cannot tell an oval from a speck or a misread number.",
                $"Read eight places or twelve, and the first again at the end.",
                Likelihood
            );
        var limit = result.Limit;
        // Shape within the dial's own uncertainty is nobody's business.
        if (result.Form > result.RunOutUncertainty)
        {
            var stays = result.Form + result.RunOutUncertainty > limit;
            var biggest = result.Harmonics.Skip(1).MaxBy(h => h.Amplitude)!;
            Add(
                stays && result.Verdict != RunOutVerdict.Inside ? Severity.Caution : Severity.Note,
                "not-a-bend",
                $"The bend alone makes {Say.Fine(2 * (result.Offset ?? 0))}. {Say.Fine(result.Form)} is shape, mostly {Lobes(biggest.Order)}: no straightening takes that out{(stays ? $", so the limit of {Say.Fine(limit)} cannot be reached and shown here" : (Sentence)$"")}.",
                stays
                    ? (Sentence)
                        $"Read beside it on a clean, turned surface before anything is bent."
                    : $"Read on a clean, round stretch if there is one.",
                Geometry
            );
            Vees(result, biggest);
        }
        else if (found.Scatter > 4 && result.Blips.Count == 0 && points.Count > 5)
            Add(
                Severity.Note,
                "rough",
                $"The readings scatter more than the dial should: the surface is rough, or the dial or the shaft does not sit still. The uncertainties are widened to it.",
                $"Clean a ring round the shaft, see that the stand is tight, and read again.",
                Gum
            );
    }

    /// <summary>The bar's own lobes, where readings over both vees tell them from what leaks in.</summary>
    public void OwnLobes(TurnResult result)
    {
        if (
            result.Harmonics.Where(h => h.Own is not null).MaxBy(h => h.Amplitude)
            is not { Own: { } own } seen
        )
            return;
        Add(
            Severity.Note,
            "vee-lobes",
            $"The dial was put over both vees too, so what they leak in can be taken off: {Lobes(seen.Order)}, {Say.Fine(own.Amplitude)} each way, are the bar's own here, give or take {Say.Fine(2 * own.Uncertainty)}, of {Say.Fine(seen.Amplitude)} read.",
            $"Judge the shape by that; the bend is told apart from it either way.",
            VeeSource
        );
    }

    /// <summary>What vees make of lobes.</summary>
    private void Vees(TurnResult result, Harmonic biggest)
    {
        if (_turn.Support != Support.Vees)
            return;
        if (_turn.VeeAngle is not { } vee)
        {
            Add(
                Severity.Note,
                "vee-angle-missing",
                $"On vees an oval or lobes read larger or smaller than they are, by the vees' angle, which is not noted.",
                $"Measure the angle between the faces and note it.",
                VeeSource
            );
            return;
        }
        var factor = Math.Abs(biggest.VeeFactor ?? 1);
        if (Math.Abs(factor - 1) < 0.1)
            return;
        Add(
            Severity.Note,
            "vee-factor",
            factor < 0.05
                ? (Sentence)
                    $"Vees of {Say.Bearing(vee.Value)} do not show {Lobes(biggest.Order)} of a bar that is alike all along; what shows here is then the dial's place alone."
                : $"If the bar is as {Lobes(biggest.Order)} in the vees as here, vees of {Say.Bearing(vee.Value)} show {Say.Factor(factor)} times what there is: {Say.Fine(biggest.Amplitude / factor)} each way, not {Say.Fine(biggest.Amplitude)}.",
            $"Read between centres if the shape matters, or turn it in vees of another angle.",
            VeeSource
        );
    }

    private static string Lobes(int order) =>
        order == 2 ? "oval" : order.ToString(CultureInfo.InvariantCulture) + "-lobed";

    /// <summary>What the stations together say.</summary>
    public void Shape(ShaftShape shape, IReadOnlyList<TurnResult> all)
    {
        _name = "";
        if (shape.Likeliest.Kind != BendKind.Straight && shape.WeldAt is null)
            Add(
                Severity.Note,
                "weld-not-placed",
                $"Where the weld is has not been noted, so a kink at it cannot be told from a sweep.",
                $"Measure from the inner end to the middle of the weld and note it.",
                Bow
            );
        else if (!shape.Told)
            Add(
                Severity.Note,
                "bend-not-told",
                $"{shape.Words}",
                shape.Stations.Count < 3
                || shape.Stations.All(s => s.Station < shape.WeldAt)
                || shape.Stations.All(s => s.Station > shape.WeldAt)
                    ? (Sentence)
                        $"Read more stations: beside the weld on both sides, and one on each side midway to the support."
                    : $"Read another station near the weld, and one near each end.",
                Likelihood
            );
        if (shape.Likeliest.SetOff.Size > 0 && shape.Told)
            Add(
                2 * shape.Likeliest.SetOff.Size > shape.Limit ? Severity.Caution : Severity.Note,
                "set-off",
                $"The two pieces lie {Say.Fine(shape.Likeliest.SetOff.Size)} beside each other at the weld. Pressing cannot take that out: a bend at the weld tilts one against the other and leaves the step.",
                $"Before the butt is whole, break the tacks and set up again. After, judge the run-out that is left by the limit.",
                Geometry
            );
        if (
            shape.Lines.FirstOrDefault(l => l.Line == TurningLine.JointCentres) is { } car
            && car.Verdict == RunOutVerdict.Over
            && shape.Stations.All(s =>
                all.First(t => t.TurnId == s.TurnId).Verdict == RunOutVerdict.Inside
            )
        )
            Add(
                Severity.Caution,
                "over-on-the-car",
                $"Inside the limit where it was read, but about the joint centres the same bow runs out {Say.Fine(car.RunOut)}, {Say.Fine(car.Low)} at least, against {Say.Fine(shape.Limit)}.",
                $"Straighten by what it does between the joint centres, and read it on supports near its ends.",
                Bow
            );
    }

    /// <summary>Says why there is no bow along the shaft, when several turns were meant for one.</summary>
    public void NoShape(
        IReadOnlyList<DialTurn> all,
        IReadOnlyList<ReadStation> read,
        ShaftPlaces places
    )
    {
        _name = "";
        if (all.Count > 1 && read.All(r => !r.Whole))
            Add(
                Severity.Note,
                "no-shape",
                $"The stations cannot be joined to the bow of the whole shaft: {(all.Any(t => t.Support == Support.Centres) && places.Overall is null ? "the overall length is not known" : "the places of dial and supports are missing")}.",
                $"Note for each turn where the dial and both supports stood, from the inner end.",
                Bow
            );
    }

    public void OverByBlips(double judged, double clean, double limit, bool latest) =>
        Add(
            latest ? Severity.Caution : Severity.Note,
            "over-by-a-speck",
            $"Run-out {Say.Fine(judged)} is over {Say.Fine(limit)} only by readings that stand alone; without them it is {Say.Fine(clean)}.",
            $"Do not press on account of a speck: clean it off and read again. Until then it counts as over.",
            Likelihood
        );

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
        _over.Add((_turn, _name, runOut, limit));
    }

    /// <summary>Says once what is over at a moment, however many stations show it.</summary>
    public void OverAll()
    {
        foreach (var at in _over.GroupBy(o => (o.Turn.Moment, o.Limit)))
        {
            var worst = at.MaxBy(o => o.RunOut);
            (_turn, _name) = (worst.Turn, at.Count() == 1 ? worst.Name : "");
            Stop(worst.RunOut, worst.Limit, at.Count());
        }
    }

    private void Stop(double runOut, double limit, int stations)
    {
        Sentence where =
            _turn.Station is { } station && stations > 1
                ? $", {Say.Length(station.Value)} from the inner end"
                : (Sentence)$"";
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
            stations == 1
                ? (Sentence)$"Run-out {Say.Fine(runOut)} is over the limit of {Say.Fine(limit)}."
                : $"Run-out is over the limit of {Say.Fine(limit)} at {stations} stations; the worst is {Say.Fine(runOut)}{where}.",
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

    private static string Words(DialTurn turn)
    {
        var words = Words(turn.Moment);
        if (turn.Layer is { } layer)
            words += ", layer " + layer.ToString(CultureInfo.InvariantCulture);
        if (turn.AfterStroke is { } stroke)
            words += ", stroke " + stroke.ToString(CultureInfo.InvariantCulture);
        return words;
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
