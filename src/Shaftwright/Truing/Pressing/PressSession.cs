using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>One evaluation: what is known, in the order in which it is asked.</summary>
internal sealed class PressSession
{
    // Farther apart than this two strokes are in two places, mm.
    private const double SamePlace = 15;

    // From this cosine down a stroke counts as pressed back.
    private const double TurnedBack = -0.5;

    private readonly PressInput _press;
    private readonly List<PressStroke> _strokes;
    private readonly List<PressStroke> _noted;
    private readonly bool _crackSign;
    private readonly int _ahead;
    private readonly ShaftRecord _record;
    private readonly PressReadings _readings;
    private readonly Moment _moment;
    private readonly PressAdvice _advice = new();
    private readonly PressedShaft? _shaft;
    private readonly double _length;
    private readonly double? _bend;
    private readonly BendKind? _shape;
    private readonly Dictionary<(int, int, int, DialPlace), PressCurve> _curves = [];
    private PressResult _result;

    public PressSession(
        PressInput press,
        IReadOnlyList<PressStroke> standing,
        TruingInput? truing,
        TruingResult? judged,
        MadeShaft? made,
        DonorsResult? donors,
        ShaftRecord record,
        Moment moment
    )
    {
        (_press, _record, _moment) = (press, record, moment);
        _strokes =
        [
            .. standing.Where(s => s.Moment == moment && !FutureDates.IsAhead(s.At, record.Now)),
        ];
        // One that is dated ahead teaches nothing, but it was made: the dial must come after it all the same.
        _noted = [.. standing.Where(s => s.Moment == moment)];
        _ahead = standing.Count(s => FutureDates.IsAhead(s.At, record.Now));
        _crackSign = standing.Any(s => s.CrackSign);
        _readings = new PressReadings(truing, judged, moment);
        var length = made?.Overall ?? press.Length?.Value ?? truing?.OverallLength?.Value;
        _length = length ?? PressLimits.UnknownLength;
        _bend = press.BendAt?.Value ?? truing?.WeldAt?.Value;
        // A shape read before the last stroke is of another shaft.
        _shape =
            judged?.Shape is { Told: true } shape && shape.Moment == moment && _strokes.Count == 0
                ? shape.Likeliest.Kind
                : null;
        _shaft =
            made is not null && donors is not null
                ? PressedShaft.OfMade(made, donors, press, moment)
                : PressedShaft.OfBar(press, _length, moment);
        _result = new PressResult
        {
            Moment = moment,
            Limit = TruingSolver.UsualLimit(moment),
            NewestTurn = _readings.Newest,
            Length = length,
            Stretches = _shaft?.Drawn ?? [],
            Words = Sentence.Plain("Not known yet."),
            Findings = [],
        };
    }

    public PressResult Answer()
    {
        Since();
        Work();
        return _result with { Findings = _advice.Findings };
    }

    /// <summary>What the last stroke left, when no turn was read since: what an older turn said is of another shaft.</summary>
    private void Since()
    {
        if (_noted.Count == 0 || _readings.IsReadAfter(_noted[^1], _noted.Count))
            return;
        var last = _noted[^1];
        var bow = last.RunOutAfter is null ? null : _readings.After(last, null);
        var verdict = bow is null
            ? RunOutVerdict.NotKnown
            : TruingSolver.Verdict(bow.RunOut, bow.Expanded, bow.Limit);
        if (verdict != RunOutVerdict.Over && FutureDates.IsAhead(last.At, _record.Now))
            verdict = RunOutVerdict.NotKnown;
        _result = _result with
        {
            SinceStroke = verdict,
            SinceWords =
                bow is null || verdict == RunOutVerdict.NotKnown
                    ? PressWords.NotRead(last.Turn.Length == 0 && _readings.Any)
                    : PressWords.Since(bow, verdict),
        };
        if (verdict == RunOutVerdict.Over)
            _advice.OverSince(bow!.RunOut, bow.Limit);
        else if (verdict == RunOutVerdict.TooCloseToCall)
            _advice.TooCloseSince(bow!.RunOut, bow.Expanded, bow.Limit);
    }

    private void Work()
    {
        _result = _result with { Strokes = [.. _strokes.Select(Made)] };
        if (_ahead > 0)
            _advice.Ahead(_ahead);
        if (_crackSign)
        {
            _advice.CrackSign();
            Refuse($"Press no more: a crack or a click was noted. Crack-test it.");
            return;
        }
        if (_record.Stopped)
        {
            _advice.StoppedByATest();
            Refuse($"Do not press it: the crack tests on record stop the job.");
            return;
        }
        if (Now() is not { } bow)
            return;
        _result = _result with
        {
            RunOut = 2 * bow.Offset,
            HighPoint = bow.High,
            DialAt = bow.Place.At,
            Dial = bow.Turn,
            Limit = bow.Limit,
        };
        if (bow.RunOut + bow.Expanded <= bow.Limit)
        {
            _advice.CrackTestAfter();
            _result = _result with { Step = PressStep.Straight, Words = PressWords.Straight(bow) };
            return;
        }
        // An oval widens the scatter about the fit though it does not touch the bend, so once its uncertainty is enough here.
        if (2 * bow.Offset + Math.Max(bow.Expanded, 2 * bow.Uncertainty) <= bow.Limit)
        {
            _advice.NotABend(bow.RunOut, 2 * bow.Offset);
            Refuse(
                $"Leave the press alone: of the {Say.Fine(bow.RunOut)} only {Say.Fine(2 * bow.Offset)} is bend, and that is inside the limit."
            );
            return;
        }
        if (!MayBePressed())
            return;
        if (bow.High is not { } high)
        {
            _advice.NoHigh();
            Wait($"Over the limit, but where it is high cannot be told. Read a full turn.");
            return;
        }
        if (_shaft is null)
        {
            _advice.NoDiameter();
            Wait($"Measure the diameter where it is bent: then the stroke can be reckoned.");
            return;
        }
        Plan(_shaft, bow, high);
    }

    /// <summary>What the dial last said; null, with words, when that is not known.</summary>
    private Bow? Now()
    {
        if (_strokes.Count > 0)
        {
            var last = _strokes[^1];
            var fresh = _readings.Latest(last.Turn);
            if (last.Turn.Length > 0 && fresh.Count > 0 && _readings.AnyAfter(last.Turn))
                return Worst(fresh);
            if (_readings.After(last, null) is { } typed)
                return typed;
            _advice.ReadAfter();
            Wait($"Turn the shaft under the dial: what the last stroke did is not known yet.");
            return null;
        }
        var all = _readings.Latest("");
        if (all.Count == 0)
        {
            _advice.NoTurn();
            Wait($"Turn the shaft under the dial first.");
            return null;
        }
        if (
            _shape == BendKind.SetOff
            || (_shape is null && _shaft?.WeldAt is { } weld && IsSetOff(all, weld))
        )
        {
            _advice.SetOff();
            Refuse(
                $"Do not press it: the two pieces lie beside one axis. Cut it and set it up again."
            );
            return null;
        }
        return Worst(all);
    }

    private static Bow Worst(List<Bow> bows) => bows.MaxBy(b => b.Offset)!;

    /// <summary>High on one side of the weld where it is low on the other, both worth speaking of and read between the supports.</summary>
    private bool IsSetOff(List<Bow> all, double weld)
    {
        Bow? before = null,
            after = null;
        foreach (var b in all)
        {
            var dial = PressPlaces.Dial(b.Place, _length, weld);
            if (
                b.Place.At is not { } at
                || b.High is null
                || b.Offset < Math.Max(b.Limit / 4, 3 * b.Uncertainty)
                || at <= dial.First
                || at >= dial.Second
            )
                continue;
            if (at < weld && (before is null || before.Offset < b.Offset))
                before = b;
            if (at > weld && (after is null || after.Offset < b.Offset))
                after = b;
        }
        return before is { High: { } x } && after is { High: { } y } && Math.Cos(x - y) < -0.5;
    }

    private bool MayBePressed()
    {
        switch (_moment)
        {
            case Moment.Tacked:
                _advice.Tacked();
                Refuse($"Do not press tacks: break them and set up again.");
                return false;
            case Moment.AfterFirstRun:
                _advice.AfterRun();
                Refuse($"Do not press it: find out first what gave on the car.");
                return false;
            case Moment.ButtWelded or Moment.Sleeved when _record.WeldedSinceTempered:
                _advice.Tempered(known: true);
                Refuse(
                    $"Do not press it yet: it was welded after the last tempering on record. Temper it and let it cool first, and note it."
                );
                return false;
            case Moment.BeforeWelding when _record.Welded && _press.Tempered is not true:
            case Moment.ButtWelded or Moment.Sleeved when _press.Tempered is not true:
                _advice.Tempered(_press.Tempered is not null);
                Refuse(
                    _press.Tempered is null
                        ? (Sentence)
                            $"Do not press it yet: say first whether the weld was tempered and has cooled."
                        : $"Do not press it yet: temper the weld and let it cool first."
                );
                return false;
        }
        if (_press.FileSkates is true)
        {
            _advice.FileSkates();
            Refuse($"Do not press there: a file skates, so it is hard.");
            return false;
        }
        if (_strokes.Count >= PressLimits.Strokes)
        {
            _advice.TooMany(_strokes.Count, false);
            Refuse($"Stop: {_strokes.Count} strokes, and it is not straight.");
            return false;
        }
        var silent = 0;
        foreach (var s in _result.Strokes.Reverse())
        {
            if (s.Seen is not { } seen || seen > 0.01 + 2 * s.SeenUncertainty)
                break;
            silent++;
        }
        // The first ones may well leave nothing: how hard it is was not known. Later ones were reckoned to.
        if (silent >= PressLimits.StrokesWithoutResponse)
        {
            _advice.NoResponse(silent);
            Refuse($"Stop: the last {silent} strokes left nothing.");
            return false;
        }
        return true;
    }

    private void Plan(PressedShaft shaft, Bow bow, double high)
    {
        var bend =
            _bend
            ?? (_moment == Moment.BeforeWelding || _shape == BendKind.Sweep ? null : shaft.WeldAt)
            ?? bow.Place.At
            ?? shaft.Length / 2;
        bend = Math.Clamp(bend, 0, shaft.Length);
        if (PressPlaces.Ram(shaft, bend, bow.Place.At ?? shaft.Length / 2) is not { } ram)
        {
            var off = shaft.RamOff.FirstOrDefault(o => bend >= o.From && bend <= o.To);
            _advice.NoRam(bend, off.Words ?? "something");
            Refuse($"Do not press it: there is no sound place for the ram near the bend.");
            return;
        }
        var diameter = shaft.Stretches.First(s => ram >= s.From && ram <= s.To).Diameter;
        var shortest = Math.Max(
            _press.ShortestSpan?.Value ?? PressLimits.UsualShortest,
            PressLimits.SpanInDiameters * diameter
        );
        var longest = _press.LongestSpan?.Value ?? PressLimits.UsualLongest;

        // Blocks that stood well stay where they are: what was learned on them holds for them.
        if (
            _strokes.Count > 0
            && _strokes[^1]
                is {
                    RamAt: { } lastRam,
                    FirstBlockAt: { } lastFirst,
                    SecondBlockAt: { } lastSecond
                }
            && Math.Abs(lastRam.Value - ram) < 2
            && PressPlaces.Standing(shaft, lastRam.Value, lastFirst.Value, lastSecond.Value)
                is { } same
            && same.Second - same.First >= shortest - 2
            && same.Second - same.First <= longest + 2
            && Try(shaft, bow, high, same, bend) <= PressLimits.CaseShare
        )
            return;
        // Blocks nearer together take load off a hard case farther out, so shorter spans are tried where one is in the way.
        var most = 0.0;
        for (var span = longest; ; span = Math.Max(shortest, 0.8 * span))
        {
            if (PressPlaces.Blocks(shaft, ram, shortest, span) is not { } place)
            {
                if (most > 0)
                    break;
                _advice.NoBlocks(ram, shortest, longest);
                Refuse($"No place was found for the blocks.");
                return;
            }
            var share = Try(shaft, bow, high, place, bend);
            if (share <= PressLimits.CaseShare)
                return;
            most = most > 0 ? Math.Min(most, share) : share;
            if (span <= shortest)
                break;
        }
        _advice.CaseStressed(most);
        Refuse($"Do not press it: the hard case between the blocks would see too much.");
    }

    /// <summary>Plans a stroke on given blocks. Returns the share of its yield that a case between them sees; when that is too
    /// much nothing was said yet.</summary>
    private double Try(PressedShaft shaft, Bow bow, double high, PressPlace place, double bend)
    {
        var zone = shaft.FirstToYield(place.First, place.Second, place.Ram);
        var middle = PressedStretch.Middle(zone.Yield);
        var range = new Band(zone.Yield.Low / middle, zone.Yield.High / middle);
        var dial = PressPlaces.Dial(bow.Place, _length, place.Ram);
        var curve = Curve(shaft, place.Ram, place.First, place.Second, dial);

        // No case is stressed by more than the load at which the bar under the ram has given all that is asked of it.
        var load = range.High * curve.Beam.LoadForStrain(PressLimits.Strain);
        var strokes = Believed(shaft, place, out var pressed);
        var belief = PressBelief.After(range, strokes);
        double? cosine =
            pressed is { } was && Math.Abs(was.Ram - place.Ram) <= SamePlace
                ? Math.Cos(was.Up - high)
                : null;
        var next = new NextStroke(
            curve,
            Reading(),
            cosine,
            pressed is { } at ? at.Curve.Arm / curve.Arm : 1
        );
        var back = cosine < TurnedBack;
        var learned = new PressLearned(
            zone.Yield,
            belief.Yield * middle,
            strokes.Count(s => s.Seen is not null)
        );

        if (Math.Abs(PressBeam.UnitMoment(place.Ram, dial.First, dial.Second, dial.At)) < 10)
        {
            _advice.DialBlind();
            Wait($"Read the dial nearer to the bend: where it stood this bend hardly shows.");
            return 0;
        }
        var hard = shaft.CaseShare(place.First, place.Second, place.Ram, 1) > 0;
        var room = Math.Max(0.2 * bow.Limit, (bow.Limit - bow.Expanded) / 2);
        if (
            StrokeChoice.Depth(belief, next, bow.Offset, room, out var strainRules) is not { } depth
        )
        {
            _advice.Strained(PressLimits.Strain);
            Refuse($"Do not press it: no stroke short enough was found.");
            return 0;
        }
        var (seen, loads, set, strain) = belief.Foresee(next, depth);
        var share = shaft.CaseShare(
            place.First,
            place.Second,
            place.Ram,
            Math.Min(load, loads.High)
        );
        if (share > PressLimits.CaseShare)
            return share;
        if (hard && _strokes.Count >= PressLimits.StrokesOnCase)
        {
            _advice.TooMany(_strokes.Count, true);
            Refuse($"Stop: {_strokes.Count} strokes beside a hard case are enough.");
            return 0;
        }
        if (StrainKept(curve) is var kept && kept > PressLimits.StrainKept)
        {
            _advice.Strained(kept);
            Refuse($"Stop: the bar has been bent back and forth enough.");
            return 0;
        }

        if (back)
            _advice.Overshot();
        if (hard)
            _advice.CaseBetween(share);
        if (place.Bridge)
            _advice.Bridge();
        if (Math.Abs(place.Ram - bend) >= 5)
            _advice.Beside(bend, place.Ram);
        if (_shape == BendKind.KinkAndSetOff)
            _advice.PartSetOff();
        if (strainRules)
            _advice.StrainRules();
        if (_press.MostLoad is { } press && loads.High > press.Value)
            _advice.TooWeak(loads.High, press.Value);
        if (_result.Length is null)
            _advice.LengthUnknown(_length);
        if (
            bow.Place.Support == Support.Unknown
            && (bow.Place.First is null || bow.Place.Second is null)
        )
            _advice.SupportsUnknown(_length);
        if (zone.Yield.High > 1.3 * zone.Yield.Low && learned.Strokes == 0)
            _advice.SteelUnknown(zone.Yield.Low, zone.Yield.High);
        if (shaft.Plain)
            _advice.PlainBar();
        _advice.CrackTestAfter();
        _advice.Promise();
        var plan = new PressPlan(
            place.Ram,
            place.First,
            place.Second,
            Across.Turn(high),
            depth,
            loads,
            bow.Offset,
            seen,
            Math.Max(0, depth - set),
            belief.ChanceOver(next, depth, bow.Offset + room),
            strain,
            back,
            place.Bridge
        );
        _result = _result with
        {
            Step = PressStep.Press,
            Plan = plan,
            Learned = learned,
            Words = PressWords.Of(plan),
        };
        return share;
    }

    /// <summary>The strokes as the belief takes them, and the place of the last.</summary>
    private List<BeliefStroke> Believed(
        PressedShaft shaft,
        PressPlace planned,
        out LastPressed? last
    )
    {
        var list = new List<BeliefStroke>();
        last = null;
        for (var i = 0; i < _strokes.Count; i++)
        {
            var s = _strokes[i];
            if (s.Depth is null && s.Load is null)
                continue;
            var before = _readings.Before(s);
            var ram = s.RamAt?.Value ?? planned.Ram;
            var (first, second) = (
                s.FirstBlockAt?.Value ?? planned.First,
                s.SecondBlockAt?.Value ?? planned.Second
            );
            if (first > second)
                (first, second) = (second, first);
            first = Math.Max(0, first);
            second = Math.Min(shaft.Length, second);
            if (!(first < ram - 5 && ram + 5 < second))
                continue;
            var dial = PressPlaces.Dial(
                before?.Place ?? new(Support.Unknown, null, null, null),
                _length,
                ram
            );
            var up = s.Up?.Value ?? before?.High ?? last?.Up ?? 0;
            var (seen, other, u) = Moved(i);
            double? cosine =
                last is { } was && Math.Abs(was.Ram - ram) <= SamePlace
                    ? Math.Cos(was.Up - up)
                    : null;
            var curve = Curve(shaft, ram, first, second, dial);
            var lever = last is { } earlier ? earlier.Curve.Arm / curve.Arm : 1;
            list.Add(
                new(
                    curve,
                    s.Depth?.Value,
                    s.Depth is { } depth ? NextStroke.Of(Reading(depth), depth.Value, cosine) : 0,
                    s.Load?.Value,
                    s.Load is { } load
                        ? Math.Sqrt(
                            Math.Pow(PressFields.Load.StandardUncertainty(load), 2)
                                + Math.Pow(0.03 * load.Value, 2)
                        )
                        : 1,
                    seen,
                    other,
                    u,
                    cosine,
                    lever
                )
            );
            last = new(ram, up, curve);
        }
        return list;
    }

    /// <summary>Where and which way it was last pressed, and on what beam.</summary>
    private readonly record struct LastPressed(double Ram, double Up, PressCurve Curve);

    private StrokeResult Made(PressStroke stroke, int index)
    {
        var (seen, other, u) = Moved(index);
        var after = After(index);
        var up = stroke.Up?.Value ?? _readings.Before(stroke)?.High;
        var tooFar =
            other is null
            && after is not null
            && up is { } angle
            && after.Along(angle) is { } along
            && along < -(0.01 + 2 * after.Uncertainty);
        return new(stroke.Id, stroke.Depth?.Value, stroke.Load?.Value, seen, u, tooFar);
    }

    private Bow? After(int index) =>
        _readings.After(
            _strokes[index],
            index + 1 < _strokes.Count && _strokes[index + 1].Turn != _strokes[index].Turn
                ? _strokes[index + 1].Turn
                : null
        );

    /// <summary>What a stroke moved at the dial in the direction of pressing; a second number when the side of the reading after
    /// it is not known; and their standard uncertainty, mm.</summary>
    private (double? Seen, double? Other, double Uncertainty) Moved(int index)
    {
        var stroke = _strokes[index];
        if (_readings.Before(stroke) is not { } before || After(index) is not { } after)
            return (null, null, 0);
        var up = stroke.Up?.Value ?? before.High;
        var was = up is { } a ? before.Along(a) ?? before.Offset : before.Offset;
        var u = Math.Sqrt(
            before.Uncertainty * before.Uncertainty + after.Uncertainty * after.Uncertainty
        );
        if (up is { } angle && after.Along(angle) is { } along)
            return (was - along, null, u);
        // Too straight to have a side: either way it is the same within the dial.
        return after.Offset < 2 * after.Uncertainty
            ? (was, null, Math.Max(u, after.Offset))
            : (was - after.Offset, was + after.Offset, u);
    }

    /// <summary>Strain that the strokes have left at the surface, counted forth and back alike.</summary>
    private double StrainKept(PressCurve curve)
    {
        // Set and strain left go together nearly in proportion; a stroke of one hundredth of strain says how.
        var load = curve.Beam.LoadForStrain(0.01);
        var seen = Math.Abs(curve.Seen(load));
        var elastic = curve.Strain(curve.Beam.YieldLoad) * load / curve.Beam.YieldLoad;
        var each = seen > 1e-9 ? Math.Max(0, 0.01 - elastic) / seen : 0;
        return each * _result.Strokes.Sum(s => Math.Abs(s.Seen ?? 0));
    }

    private PressCurve Curve(
        PressedShaft shaft,
        double ram,
        double first,
        double second,
        DialPlace dial
    )
    {
        var key = ((int)Math.Round(ram), (int)Math.Round(first), (int)Math.Round(second), dial);
        if (!_curves.TryGetValue(key, out var curve))
            _curves[key] = curve = new PressCurve(
                new PressBeam(shaft.Sections(), first, second, ram, dial)
            );
        return curve;
    }

    /// <summary>Standard uncertainty of depth and contact, mm; of the next stroke as of the last.</summary>
    private double Reading() => Reading(_strokes.Count > 0 ? _strokes[^1].Depth : null);

    private static double Reading(Measured<Distance>? depth)
    {
        var u = depth is null
            ? PressFields.Depth.UsualPlusMinus / Math.Sqrt(3)
            : PressFields.Depth.StandardUncertainty(depth);
        return Math.Sqrt(u * u + PressLimits.Contact * PressLimits.Contact);
    }

    private void Refuse(Sentence words) =>
        _result = _result with { Step = PressStep.DoNotPress, Words = words };

    private void Wait(Sentence words) =>
        _result = _result with { Step = PressStep.NotKnown, Words = words };
}
