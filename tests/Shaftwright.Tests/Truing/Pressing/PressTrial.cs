using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Truing.Pressing;

/// <summary>One stroke: what was planned, what it truly moved, and whether it left the shaft bent the other way by more than
/// the limit.</summary>
internal sealed record Stroke(PressPlan? Plan, double Moved, bool TooFar);

/// <summary>How one shaft went.</summary>
/// <param name="Strokes">Strokes made.</param>
/// <param name="Reached">True when it was left alone with its true run-out inside the limit.</param>
/// <param name="Strain">Largest strain that its surface ever saw.</param>
/// <param name="Case">Largest share of its yield that a hard case ever saw.</param>
/// <param name="LeftAt">True run-out when it was left, mm.</param>
/// <param name="Why">What was said last.</param>
internal sealed record Outcome(
    IReadOnlyList<Stroke> Strokes,
    bool Reached,
    double Strain,
    double Case,
    double LeftAt,
    string Why
)
{
    public bool TooFar => Strokes.Any(s => s.TooFar);
}

/// <summary>One random shaft taken from a bend to its limit on the simulated press: by the program's advice, or by the plain rule.</summary>
internal sealed class PressTrial
{
    public const double From = 1.6;
    public const double Limit = 0.10;
    private const double Length = 560;
    private const int Most = 40;

    private readonly Truth _truth;
    private readonly double _runOut;
    private readonly double _direction;
    private readonly int _seed;
    private readonly Job _job;
    private readonly double _station;

    public PressTrial(int seed, double from = From)
    {
        var random = new Random(seed);
        (_seed, _runOut, _direction) = (seed, from, random.NextDouble() * 2 * Math.PI);
        double Between(double a, double b) => a + (b - a) * random.NextDouble();
        double Ratio(double a, double b) => a * Math.Pow(b / a, random.NextDouble());
        var inner = Math.Round(Between(23, 30), 1);
        var outer = Math.Round(inner - Between(0, 1.2), 1);
        var steel = random.Next(3) switch
        {
            0 => SteelClass.MediumCarbon,
            1 => SteelClass.QuenchedTemperedAlloy,
            _ => SteelClass.Unknown,
        };
        var hard = random.Next(2) == 0;
        // One in twenty lies outside what the book says of it.
        var (low, high) = steel switch
        {
            SteelClass.MediumCarbon => (280.0, 420.0),
            SteelClass.QuenchedTemperedAlloy => (415.0, 655.0),
            _ => (280.0, 655.0),
        };
        var soft = Ratio(low, high) * (random.Next(20) == 0 ? Between(0.9, 1.1) : 1);
        _job = new Job
        {
            Donors = new()
            {
                InnerEnd = Donor(inner, hard, steel),
                OuterEnd = Donor(outer, hard, steel),
            },
            Cut = new()
            {
                OverallLength = Mm(Length),
                InnerCutAt = Mm(Math.Round(Between(240, 300))),
                HeatBand = Mm(20),
            },
            Press = new() { Tempered = true },
            Truing = new(),
        };
        var made = Workflow.Evaluate(_job).Cut!.Made!;
        _station = Math.Round(made.WeldAt + Between(-40, 40));
        _truth = new Truth(
            inner,
            outer,
            made.Overall,
            made.WeldAt,
            Between(14, 28),
            soft,
            soft * Between(1.0, 1.5),
            hard ? Between(1300, 1700) : 0,
            Between(1.5, 4),
            Between(0.02, 0.2),
            Between(0, 0.02),
            Between(200000, 210000),
            Between(0, 4e-5),
            Between(0.05, 0.25),
            0.03,
            4 * Math.PI / 180
        );
    }

    /// <summary>As the program advises.</summary>
    public Outcome Advised()
    {
        var press = new SimulatedPress(_truth, _runOut, _direction, _seed);
        var job = Turned(_job, press, 0);
        var made = new List<Stroke>();
        for (var n = 0; n <= Most; n++)
        {
            var answer = Workflow.Evaluate(job).Press!;
            if (answer.Step != PressStep.Press || n == Most)
                return End(press, made, answer.Step != PressStep.Press, answer.Words.ToString());
            var plan = answer.Plan!;
            var old = press.Offset(_station);
            var (depth, _) = press.Press(
                plan.FirstBlockAt,
                plan.SecondBlockAt,
                plan.RamAt,
                plan.Up,
                plan.Depth
            );
            var now = press.Offset(_station);
            var moved = (old.Y - now.Y) * Math.Cos(plan.Up) + (old.Z - now.Z) * Math.Sin(plan.Up);
            made.Add(new(plan, moved, IsTooFar(press, plan.Up)));
            var stroke = new PressStroke
            {
                Id = $"p{n}",
                Moment = Moment.ButtWelded,
                RamAt = Mm(Math.Round(plan.RamAt, 1)),
                FirstBlockAt = Mm(Math.Round(plan.FirstBlockAt, 1)),
                SecondBlockAt = Mm(Math.Round(plan.SecondBlockAt, 1)),
                Up = Measured<Angle>.Of(Math.Round(plan.Up * 180 / Math.PI), Angle.Degree),
                Depth = Mm(Math.Max(0.05, depth)),
                Turn = $"t{n}",
            };
            job = Turned(
                job with
                {
                    Press = job.Press! with { Strokes = [.. job.Press.Strokes, stroke] },
                },
                press,
                n + 1
            );
        }
        throw new InvalidOperationException("The loop above returns.");
    }

    /// <summary>The plain rule: begin where the program does, and go deeper by the same step each time until the dial says that it
    /// is inside; gone too far, turn half round and begin again at three fifths of the first depth.</summary>
    public Outcome Plain(double step)
    {
        var press = new SimulatedPress(_truth, _runOut, _direction, _seed);
        var job = Turned(_job, press, 0);
        var answer = Workflow.Evaluate(job).Press!;
        var plan = answer.Plan!;
        var (depth, up) = (plan.Depth, plan.Up);
        var made = new List<Stroke>();
        for (var n = 0; n <= Most; n++)
        {
            var turn = Workflow.Evaluate(job).Truing!.Turns[^1];
            // It stops where the program would: run-out or its bend inside the limit, what the dial cannot tell taken off.
            var inside =
                turn.Verdict == RunOutVerdict.Inside
                || 2 * turn.Offset + turn.RunOutUncertainty <= Limit;
            if (inside || n == Most)
                return End(press, made, inside, "");
            var high = turn.HighPoint ?? up;
            if (Math.Cos(high - up) < 0)
                depth = 0.6 * plan.Depth;
            up = high;
            press.Press(plan.FirstBlockAt, plan.SecondBlockAt, plan.RamAt, up, depth);
            made.Add(new(null, 0, IsTooFar(press, up)));
            depth += step;
            job = Turned(_job, press, n + 1);
        }
        throw new InvalidOperationException("The loop above returns.");
    }

    private Outcome End(SimulatedPress press, List<Stroke> made, bool left, string why)
    {
        var at = press.RunOut(_station);
        return new(made, left && at <= Limit, press.LargestStrain, press.LargestCase, at, why);
    }

    private bool IsTooFar(SimulatedPress press, double up)
    {
        var (y, z) = press.Offset(_station);
        return y * Math.Cos(up) + z * Math.Sin(up) < -Limit / 2;
    }

    private Job Turned(Job job, SimulatedPress press, int number) =>
        job with
        {
            Truing = new()
            {
                Turns =
                [
                    .. job.Truing!.Turns,
                    new DialTurn
                    {
                        Id = $"t{number}",
                        Moment = Moment.ButtWelded,
                        Support = Support.Centres,
                        Station = Mm(_station),
                        Limit = Mm(Limit),
                        Readings =
                        [
                            .. press
                                .Turn(_station)
                                .Select(r => new DialReading
                                {
                                    Angle = Measured<Angle>.Of(r.Degrees, Angle.Degree),
                                    Dial = Measured<Distance>.Of(
                                        Math.Round(r.Dial, 2),
                                        Distance.Mm
                                    ),
                                }),
                        ],
                    },
                ],
            },
        };

    private static DonorShaft Donor(double diameter, bool hard, SteelClass steel) =>
        new()
        {
            Steel = steel,
            Zones =
            [
                Zone(ZoneKind.Spline, 35, 27, root: 25),
                Zone(ZoneKind.Groove, 38, 24),
                Zone(ZoneKind.Plain, 80, diameter),
                Zone(ZoneKind.BootSeat, 95, diameter - 1),
                Zone(ZoneKind.Plain, 420, diameter),
            ],
            Hardened = hard ? [Hard(0, 420, 2.5)] : [],
        };
}
