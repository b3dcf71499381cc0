using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Strength;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using Shaftwright.Weld;

namespace Shaftwright;

/// <summary>Every stage of a job, each evaluated when it is first asked for. A stage is null when the job holds nothing for it.</summary>
public sealed class JobResult
{
    private readonly Once<CarResult> _car;
    private readonly Once<CornerResult> _corner;
    private readonly Once<JointsResult> _joints;
    private readonly Once<LengthResult> _length;
    private readonly Once<DonorsResult> _donors;
    private readonly Once<CutResult> _cut;
    private readonly Once<StrengthResult> _strength;
    private readonly Once<WeldResult> _weld;
    private readonly Once<BeadPlan> _beads;
    private readonly Once<TruingResult> _truing;
    private readonly Once<PressResult> _press;
    private readonly Dictionary<Moment, TruingResult> _truingAt = [];
    private readonly Once<CrackTestResult> _crackTest;
    private readonly Once<FitResult> _fit;

    internal JobResult(Job job)
    {
        Job = job;
        _car = new(() =>
            job is { Car: null, DonorCars: null } ? null : CarSolver.Solve(job.Car, job.DonorCars)
        );
        _joints = new(() => job.Joints is { } joints ? JointsSolver.Solve(joints) : null);
        _corner = new(() => job.Corner is { } corner ? CornerSolver.Solve(corner) : null);
        _length = new(() =>
            job.Corner is { } corner
                ? LengthSolver.Solve(
                    corner,
                    job.Joints,
                    Joints,
                    job.Length ?? new LengthInput(),
                    Car?.ThisCar?.Governing
                )
                : null
        );
        _donors = new(() => job.Donors is { } donors ? DonorsSolver.Solve(donors) : null);
        _cut = new(() =>
            Donors is { } donors
                ? CutSolver.Solve(donors, job.Cut ?? new CutInput(), Length?.Overall)
                : null
        );
        _strength = new(() =>
            Cut?.Made is { } made && Donors is { } donors
                ? StrengthSolver.Solve(made, donors, Car, BorneOut() ?? new StrengthInput())
                : null
        );
        _weld = new(() =>
            job.Weld is not null || Cut?.Made is not null
                ? WeldSolver.Solve(
                    job.Weld ?? new WeldInput(),
                    new WeldAround(Cut, job.Cut, Donors, BorneOut())
                )
                : null
        );
        _beads = new(() =>
            Weld is { } weld
                ? BeadSolver.Solve(BetweenLayers(job.Weld?.Layers ?? [], Truing), weld.Preparation)
                : null
        );
        _truing = new(() =>
            job.Truing is { } truing ? TruingSolver.Solve(truing, PlacesFor(truing)) : null
        );
        _press = new(() =>
            job.Press is { } press
                ? PressSolver.Solve(press, job.Truing, Truing, Cut, Donors, Recorded())
                : null
        );
        _crackTest = new(() =>
            TestsOf(job) is { } tests ? CrackTestSolver.Solve(tests, Cut?.Made) : null
        );
        _fit = new(() =>
            job.Fit is { } fit
                ? FitSolver.Solve(
                    fit,
                    new()
                    {
                        Joints = job.Joints,
                        Length = Length,
                        Margin = job.Length?.Margin?.Value ?? LengthFields.UsualMargin,
                        Made = Cut?.Made,
                        Sleeve = job.Cut?.SleeveLength is not null,
                        Donors = Donors,
                        Strength = Strength,
                    }
                )
                : null
        );
    }

    /// <summary>Where the ends, the weld and the joint centres of the shaft are, as far as it is known.</summary>
    private ShaftPlaces PlacesFor(TruingInput truing)
    {
        var made = Cut?.Made;
        var overall = truing.OverallLength?.Value ?? made?.Overall ?? Length?.Overall;
        return new()
        {
            Overall = overall,
            WeldAt = made?.WeldAt,
            InnerCentre = Joints?.InnerSeatToEnd - Joints?.InnerSeatToCentre,
            OuterCentre = overall - (Joints?.OuterSeatToEnd - Joints?.OuterSeatToCentre),
        };
    }

    /// <summary>The job it answers.</summary>
    public Job Job { get; }

    /// <summary>Torque into the shaft.</summary>
    public CarResult? Car => _car.Value;

    /// <summary>The fitted readings.</summary>
    public CornerResult? Corner => _corner.Value;

    /// <summary>The joints' offsets.</summary>
    public JointsResult? Joints => _joints.Value;

    /// <summary>The length to make.</summary>
    public LengthResult? Length => _length.Value;

    /// <summary>The donors in plain numbers.</summary>
    public DonorsResult? Donors => _donors.Value;

    /// <summary>Where to cut.</summary>
    public CutResult? Cut => _cut.Value;

    /// <summary>What it carries.</summary>
    public StrengthResult? Strength => _strength.Value;

    /// <summary>Set-up, groove and heat of the weld.</summary>
    public WeldResult? Weld => _weld.Value;

    /// <summary>The order of the beads. It also takes the turn under the dial after tacking.</summary>
    public BeadPlan? Beads => _beads.Value;

    /// <summary>Run-out.</summary>
    public TruingResult? Truing => _truing.Value;

    /// <summary>The next stroke of the press.</summary>
    public PressResult? Press => _press.Value;

    /// <summary>The same at a moment; null when nothing is known of the press, or nothing was read or pressed at that moment.</summary>
    /// <param name="moment">The moment.</param>
    public PressResult? PressAt(Moment moment) =>
        Job.Press is { } press
        && (
            press.Strokes.Any(s => s.Moment == moment)
            || Job.Truing?.Turns.Any(t => t.Moment == moment) is true
        )
            ? PressSolver.Solve(press, Job.Truing, Truing, Cut, Donors, Recorded(), moment)
            : null;

    /// <summary>Run-out and bow by the turns that count at a moment, at each station the last; null when there is none.</summary>
    /// <param name="moment">The moment.</param>
    public TruingResult? TruingAt(Moment moment)
    {
        if (Job.Truing is not { } truing || truing.Turns.All(t => t.Moment != moment))
            return null;
        if (!_truingAt.TryGetValue(moment, out var at))
            _truingAt[moment] = at = TruingSolver.Solve(
                TruingSolver.At(truing, moment),
                PlacesFor(truing)
            );
        return at;
    }

    /// <summary>Whether it is cracked.</summary>
    public CrackTestResult? CrackTest => _crackTest.Value;

    /// <summary>The same, with work that is known from elsewhere, such as what was signed for.</summary>
    /// <param name="work">The work.</param>
    public CrackTestResult? CrackTestWith(IEnumerable<WorkDone> work)
    {
        List<WorkDone> more = [.. work];
        if (more.Count == 0)
            return CrackTest;
        var tests = TestsOf(Job) ?? new();
        return CrackTestSolver.Solve(tests with { Work = [.. tests.Work, .. more] }, Cut?.Made);
    }

    /// <summary>What is known of the weld, less a sleeve's clean test that the crack tests on record do not bear out.</summary>
    private StrengthInput? BorneOut()
    {
        if (Job.Strength is not { Sleeve: { Tested: true } sleeve } strength)
            return Job.Strength;
        if (CrackTest is not { } tests)
            return strength;
        var against =
            tests.Sites.Any(s =>
                s.State is SiteState.Stopped or SiteState.ToRetest or SiteState.Indication
            )
            || tests.Demands.Any(d =>
                d is { Kind: DemandKind.ButtBeforeSleeve, Hidden: true, AnsweredBy: null }
            );
        return against ? strength with { Sleeve = sleeve with { Tested = false } } : strength;
    }

    /// <summary>What the crack tests and the work on record say of the shaft that comes under the press.</summary>
    private ShaftRecord Recorded()
    {
        if (TestsOf(Job) is not { } tests)
            return default;
        var work = WorkLog.Of(tests);
        var welded = work.LastOrDefault(w => WorkLog.IsHeat(w.Kind) && w.Kind != WorkKind.Tempered);
        var tempered = work.LastOrDefault(w => w.Kind == WorkKind.Tempered);
        return new(
            CrackTest!.Sites.Any(s => s.State == SiteState.Stopped),
            welded is not null,
            tempered is not null && welded?.At > tempered.At
        );
    }

    /// <summary>The tests, with what the weld is known to be filled with: magnetic particles say nothing there.</summary>
    private static CrackTestInput? TestsOf(Job job) =>
        FitWork.In(job) is { } tests && job.Weld?.Filler?.Kind == FillerKind.Austenitic
            ? tests with
            {
                AusteniticFiller = true,
            }
            : FitWork.In(job);

    /// <summary>How it goes onto the car.</summary>
    public FitResult? Fit => _fit.Value;

    /// <summary>Every finding of every stage, in the order of the job. Reading it evaluates all stages.</summary>
    public IEnumerable<Finding> Findings =>
        new[]
        {
            Car?.Findings,
            Corner?.Findings,
            Joints?.Findings,
            Length?.Findings,
            Donors?.Findings,
            Cut?.Findings,
            Strength?.Findings,
            Weld?.Findings,
            Beads?.Findings,
            Truing?.Findings,
            Press?.Findings,
            CrackTest?.Findings,
            Fit?.Findings,
        }.SelectMany(f => f ?? []);

    /// <summary>What the dial said after tacking and between layers: noted at the weld, else from the turns under the dial at
    /// the one station that was read after most layers.</summary>
    private static List<AxisReading> BetweenLayers(
        IReadOnlyList<LayerNote> notes,
        TruingResult? truing
    )
    {
        var read = new List<AxisReading>();
        var station = (truing?.Turns ?? [])
            .Where(t => t is { Moment: Moment.Tacked, Offset: not null })
            .GroupBy(t => t.Station is { } at ? Math.Round(at / 5) : double.NaN)
            .OrderByDescending(g => g.Select(t => t.Layer).Distinct().Count())
            .ThenByDescending(g => g.Max(t => t.Offset))
            .FirstOrDefault();
        foreach (var turn in station ?? Enumerable.Empty<TurnResult>())
            read.Add(
                new(
                    turn.Layer ?? 0,
                    notes.LastOrDefault(n => n.Layers == turn.Layer)?.BegunAt?.Value,
                    turn.Offset!.Value,
                    turn.OffsetUncertainty,
                    turn.HighPoint ?? 0
                )
            );
        // A note at the weld goes before a turn after as many layers: it comes later in the list.
        read.AddRange(
            notes
                .Where(n => n is { RunOut: not null, HighPoint: not null })
                .Select(n => new AxisReading(
                    n.Layers,
                    n.BegunAt?.Value,
                    n.RunOut!.Value / 2,
                    DialNoteFields.RunOut.StandardUncertainty(n.RunOut) / 2,
                    n.HighPoint!.Value
                ))
        );
        return read;
    }

    /// <summary>A value made when first read. The framework's own asks for reflection that trimming forbids; one thread needs no locks.</summary>
    private sealed class Once<T>(Func<T?> make)
        where T : class
    {
        private Func<T?>? _make = make;
        private T? _value;

        public T? Value
        {
            get
            {
                if (_make is { } make)
                {
                    _value = make();
                    _make = null;
                }
                return _value;
            }
        }
    }
}
