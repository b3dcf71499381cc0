using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.Joints;
using Shaftwright.Kept;
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
    private readonly Once<ShelfResult> _shelf;
    private readonly Once<CutResult> _cut;
    private readonly Once<StrengthResult> _strength;
    private readonly Once<WeldResult> _weld;
    private readonly Once<BeadPlan> _beads;
    private readonly Once<TruingResult> _truing;
    private readonly Once<PressResult> _press;
    private readonly Dictionary<Moment, TruingResult> _truingAt = [];
    private readonly Once<StrengthInput> _knownOfWeld;
    private readonly Once<CrackTestResult> _crackTest;
    private readonly Once<FitResult> _fit;

    internal JobResult(Job job, DateTimeOffset? now)
    {
        (Job, Now) = (job, now);
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
                    Car?.ThisCar?.Governing,
                    Corner?.Linkage
                )
                : null
        );
        _donors = new(() => job.Donors is { } donors ? DonorsSolver.Solve(donors) : null);
        _shelf = new(() => job.Shelf is { } shelf ? ShelfSearch.Solve(Request(shelf)) : null);
        _cut = new(() =>
            Donors is { } donors
                ? CutSolver.Solve(
                    donors,
                    job.Cut ?? new CutInput(),
                    Length?.Overall,
                    SampleReadings.Of(DatedSample)?.Heat
                )
                : null
        );
        _strength = new(() =>
            Cut?.Made is { } made && Donors is { } donors
                ? StrengthSolver.Solve(made, donors, Car, KnownOfWeld ?? new StrengthInput())
                : null
        );
        _weld = new(() =>
            job.Weld is not null || Cut?.Made is not null
                ? WeldSolver.Solve(
                    job.Weld ?? new WeldInput(),
                    new WeldAround(Cut, job.Cut, Donors, KnownOfWeld)
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
        _knownOfWeld = new(BorneOut);
        _crackTest = new(() => AskedForTests ? Tests([]) : null);
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

    /// <summary>What time it was when it was asked; null when nobody said.</summary>
    public DateTimeOffset? Now { get; }

    /// <summary>Torque into the shaft.</summary>
    public CarResult? Car => _car.Value;

    /// <summary>The fitted readings.</summary>
    public CornerResult? Corner => _corner.Value;

    /// <summary>The joints' offsets.</summary>
    public JointsResult? Joints => _joints.Value;

    /// <summary>The length to make.</summary>
    public LengthResult? Length => _length.Value;

    /// <summary>Cars drawn within the doubt of everything measured, to judge <see cref="Length"/> on; null when there is no length to
    /// judge. They are run in slices by who asks.</summary>
    /// <param name="seed">The same seed draws the same cars.</param>
    public LengthCars? CarsDrawn(ulong seed) =>
        Job.Corner is { } corner && Length is { } length
            ? LengthCars.Of(corner, Job.Joints, Job.Length ?? new LengthInput(), length, seed)
            : null;

    /// <summary>The donors in plain numbers.</summary>
    public DonorsResult? Donors => _donors.Value;

    /// <summary>Which two of the shelf, and where to cut them.</summary>
    public ShelfResult? Shelf => _shelf.Value;

    /// <summary>What the shelf is searched for. A sample belongs to the offcuts it was welded from, so none of it counts here.</summary>
    internal ShelfRequest Request(ShelfInput shelf)
    {
        var weld = (Job.Strength ?? new StrengthInput()) with
        {
            Sample = null,
            FusionFromSample = false,
        };
        return new()
        {
            Shelf = shelf,
            Cut = Job.Cut ?? new CutInput(),
            Joints = Job.Joints,
            Side = Job.Side,
            SeatToSeat = Length?.Make - Joints?.InnerSeatToCentre - Joints?.OuterSeatToCentre,
            Torque = Car?.ThisCar?.Governing.High,
            Metal = new(
                (steel, _) => ShearYield.Softened(steel).Low,
                (yield, diameter) => RoundSection.YieldTorque(yield, diameter),
                (yield, diameter) =>
                    RoundSection.FusedRingYieldTorque(
                        yield,
                        diameter,
                        FusionDepths.Of(weld, diameter / 2, diameter / 2).Low
                    )
            ),
        };
    }

    /// <summary>Where to cut.</summary>
    public CutResult? Cut => _cut.Value;

    /// <summary>What it carries.</summary>
    public StrengthResult? Strength => _strength.Value;

    /// <summary>A block with a vee for each piece, both on one axis; null when the diameters at the weld are not known.</summary>
    public AlignmentJig? Jig => AlignmentJig.For(Cut, Job.Weld?.VeeAngle?.Value);

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
        return more.Count == 0 ? CrackTest : Tests(more);
    }

    /// <summary>What is known of the weld's strength, as far as dates and crack tests bear it out.</summary>
    public StrengthInput? KnownOfWeld => _knownOfWeld.Value;

    // Apart from the rest, because the cut goes by it and the crack tests go by the cut.
    private WeldSample? DatedSample =>
        Job.Strength?.Sample is { } sample && FutureDates.IsAhead(sample.At, Now)
            ? sample with
            {
                IsAhead = true,
            }
            : Job.Strength?.Sample;

    /// <summary>A sample that is still to come proves nothing, nor does a sleeve's clean test that the tests on record do not show.</summary>
    private StrengthInput? BorneOut()
    {
        if (Job.Strength is not { } strength)
            return null;
        strength = strength with { Sample = DatedSample };
        if (strength.Sleeve is not { Tested: true } sleeve)
            return strength;
        if (SeamCracked)
            return strength with { Sleeve = sleeve with { Tested = false } };
        if (CrackTest is not { } tests)
            return strength;
        bool Is(Shaftwright.CrackTest.Place place, SiteState state) =>
            tests.Sites.Any(s => s.Place == place && s.State == state);
        var against =
            tests.Sites.Any(s =>
                s.State is SiteState.Stopped or SiteState.ToRetest or SiteState.Indication
            )
            // A test that is asked for and missing: what was clean before the work is not shown clean after it.
            || tests.Demands.Any(d =>
                d is { AnsweredBy: null, Kind: not DemandKind.AfterFirstEvent }
            )
            // Where tests are kept, what they do not show clean is not taken on a word.
            || tests.Runs.Count > 0
                && !(
                    Is(Shaftwright.CrackTest.Place.SleeveInnerEnd, SiteState.Clean)
                    && Is(Shaftwright.CrackTest.Place.SleeveOuterEnd, SiteState.Clean)
                );
        return against ? strength with { Sleeve = sleeve with { Tested = false } } : strength;
    }

    /// <summary>Whether a crack was seen in a seam by eye; a later look that does not say takes nothing back.</summary>
    private bool SeamCracked =>
        Job
            .Weld?.Seams.GroupBy(s => s.Place)
            .Any(g => g.Select(s => s.Cracked).LastOrDefault(c => c is not null) == true)
            is true;

    /// <summary>What the crack tests and the work on record say of the shaft that comes under the press.</summary>
    private ShaftRecord Recorded()
    {
        if (Noted([]) is not { } tests)
            return default(ShaftRecord) with { Stopped = SeamCracked, Now = Now };
        // What the press did before is no work that forbids pressing again, so strokes are left out here.
        var work = WorkLog.Of(tests, new TestAround());
        var welded = work.LastOrDefault(w => WorkLog.IsWeld(w.Kind));
        var tempered = work.LastOrDefault(w =>
            w.Kind == WorkKind.Tempered && !FutureDates.IsAhead(w.At, Now)
        );
        return new(
            SeamCracked || CrackTest?.Sites.Any(s => s.State == SiteState.Stopped) is true,
            welded is not null,
            tempered is not null && welded?.At > tempered.At,
            Now
        );
    }

    private CrackTestResult Tests(IReadOnlyList<WorkDone> more) =>
        CrackTestSolver.Solve(
            Noted(more) ?? new(),
            new()
            {
                Now = Now,
                Made = Cut?.Made,
                TemperAsked = IsTemperAsked,
                Strokes = Job.Press?.Standing() ?? [],
            }
        );

    /// <summary>Whether there is anything to test for.</summary>
    private bool AskedForTests =>
        Noted([]) is not null
        || Job.Press?.Standing().Any(s => s.Moment >= Moment.ButtWelded) is true;

    /// <summary>Whether the butt must be tempered: when either end can harden beside a weld. Nothing known means that it can.</summary>
    private bool IsTemperAsked =>
        (Job.Weld is not null || Cut?.Made is not null)
        && (
            SteelGuesses.Of(Job.Weld?.InnerSteel, Donors?.InnerEnd?.Steel).Hardens
            || SteelGuesses.Of(Job.Weld?.OuterSteel, Donors?.OuterEnd?.Steel).Hardens
        );

    /// <summary>The tests as written down with what fitting adds and with work from elsewhere, and with what the weld is known to be
    /// filled with: magnetic particles say nothing in an austenitic one. Null when there is nothing.</summary>
    private CrackTestInput? Noted(IReadOnlyList<WorkDone> more)
    {
        var tests = FitWork.In(Job);
        if (more.Count > 0)
            tests = (tests ?? new()) with { Work = [.. tests?.Work ?? [], .. more] };
        return Job.Weld?.Filler?.Kind switch
        {
            FillerKind.Austenitic when tests is not null => tests with { AusteniticFiller = true },
            FillerKind.Ferritic when tests is { AusteniticFiller: null } => tests with
            {
                AusteniticFiller = false,
            },
            _ => tests,
        };
    }

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
                    n.HighPoint!.Value,
                    n.Beads
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
