using Shaftwright.Corner;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Weld;

namespace Shaftwright.App.Tests.Drawings;

/// <summary>Results made by hand, and the example jobs, for the drawings to draw.</summary>
internal static class Samples
{
    public static readonly SteelKnown UnknownSteel = new(SteelClass.Unknown, null, null);

    public static readonly IReadOnlyList<Stretch> Stretches =
    [
        new(ZoneKind.Spline, 0, 32, 27.9, 27.9, 25.1),
        new(ZoneKind.Groove, 32, 35, 24, 24),
        new(ZoneKind.Plain, 35, 60, 26, 26),
        new(ZoneKind.BootSeat, 60, 82, 27, 27),
        new(ZoneKind.Plain, 82, 228, 24.8, 24.8),
        new(ZoneKind.Plain, 228, 330, 23.7, 23.7),
        new(ZoneKind.Taper, 330, 360, 23.7, 27),
        new(ZoneKind.BootSeat, 360, 385, 27, 27),
        new(ZoneKind.Step, 385, 392, 31, 31),
        new(ZoneKind.Plain, 392, 425, 26, 26),
        new(ZoneKind.Spline, 425, 461.5, 27.4, 27.4, 25),
    ];

    public static readonly MadeShaft Made = new(
        461.5,
        Stretches,
        [new(0, 90, Band.Exactly(3)), new(350, 461.5, null)],
        228,
        20,
        188,
        268,
        34
    );

    public static readonly DonorProfile Donor = new(
        "the blue van's left",
        [.. Stretches.Take(4), Stretches[4] with { To = 410 }],
        [new(0, 380, null)],
        UnknownSteel
    );

    public static readonly DonorProfile OtherDonor = new(
        "the <estate>'s \"right\" & proper",
        [
            new(ZoneKind.Spline, 0, 36, 27.4, 27.4, 25),
            new(ZoneKind.Plain, 36, 70, 26, 26),
            new(ZoneKind.Step, 70, 77, 31, 31),
            new(ZoneKind.BootSeat, 77, 102, 27, 27),
            new(ZoneKind.Taper, 102, 132, 27, 23.7),
            new(ZoneKind.Plain, 132, 330, 23.7, 23.7),
        ],
        [],
        UnknownSteel
    );

    /// <summary>Readings of in and out with a window.</summary>
    public static LengthResult WithWindow { get; } =
        LengthOf(
            null,
            InOut("-70", "21", "17"),
            InOut("-35", "24", "15"),
            InOut("0", "27", "13"),
            InOut("35", "26", "14"),
            InOut("70", "22", "19")
        );

    /// <summary>Readings that no length satisfies.</summary>
    public static LengthResult WithoutWindow { get; } =
        LengthOf(
            null,
            InOut("-70", "2", "25"),
            InOut("-35", "8", "12"),
            InOut("0", "14", "2"),
            InOut("35", "7", "13"),
            InOut("70", "-3", "19")
        );

    /// <summary>A steered wheel: three positions of the steering.</summary>
    public static LengthResult Steered { get; } =
        LengthOf(
            null,
            [
                .. new[] { Steering.Straight, Steering.FullLeft, Steering.FullRight }.SelectMany(
                    s =>
                        new[]
                        {
                            InOut("-70", "21", "17", s),
                            InOut("0", "27", "13", s),
                            InOut("70", "22", "19", s),
                        }
                ),
            ]
        );

    public static readonly JointsInput Tripod = new()
    {
        Inner = new JointInput
        {
            Kind = JointKind.PlungingTripod,
            AngleLimit = A("23"),
            PlungeIn = D("24"),
            PlungeOut = D("24"),
            RollerRadius = D("20"),
        },
    };

    /// <summary>Distance and angle: plunge is known.</summary>
    public static LengthResult WithPlunge { get; } =
        LengthOf(
            Tripod,
            DistanceAndAngle("-90", "459", "11.3"),
            DistanceAndAngle("-45", "452.4", "5.9"),
            DistanceAndAngle("0", "450", "1.3"),
            DistanceAndAngle("45", "452.4", "5.9"),
            DistanceAndAngle("90", "459", "11.3")
        );

    public static readonly WeldResult Shims = new()
    {
        ShimUnder = ShaftEnd.Outer,
        Shim = 0.55,
        Packs = new(new([0.5, 0.05]), new([0.4, 0.15]), 0, null),
        Findings = [],
    };

    public static readonly double[] Dial =
    [
        .59,
        .63,
        .61,
        .55,
        .49,
        .45,
        .44,
        .43,
        .42,
        .42,
        .45,
        .52,
    ];

    public static readonly DialTurn Turn = new()
    {
        Id = "turn",
        Moment = Moment.ButtWelded,
        Readings =
        [
            .. Dial.Select(
                (v, i) =>
                    new DialReading
                    {
                        Angle = Measured<Angle>.Of(30 * i, Angle.Degree),
                        Dial = Measured<Distance>.Of(v, Distance.Mm),
                    }
            ),
        ],
    };

    public static readonly TurnResult Judged = new(
        "turn",
        Moment.ButtWelded,
        0.21,
        0.015,
        0.1008,
        0.003,
        40.67 * Math.PI / 180,
        0.1,
        0.02,
        0.15,
        RunOutVerdict.Over,
        Sentence.Plain("Run-out 0.21 mm.")
    );

    /// <summary>Four stations of a bent shaft, one with a reading that stands alone.</summary>
    public static TruingResult Dunlin => Workflow.Evaluate(Example(HillClimb).Job).Truing!;

    public static DialTurn DunlinTurn => Example(HillClimb).Job.Truing!.Turns[2];

    private static readonly Bend s_bend = new(
        BendKind.KinkAndSweep,
        Across.Of(0.004, 0.5),
        Across.Of(1.5e-5, 2.2),
        default,
        1e-4,
        1e-6,
        0,
        2,
        4
    )
    {
        WeldAt = 228,
    };

    /// <summary>A kink one way and a sweep the other.</summary>
    public static ShaftShape Twisted { get; } =
        new()
        {
            Moment = Moment.ButtWelded,
            Likeliest = s_bend,
            Possible = [s_bend],
            WeldAt = 228,
            Overall = 470,
            HighPoint = 1.2,
            Stations =
            [
                new("a", 140, 60, 410, new(0.2, 0.2), 0.005, s_bend.OffsetAt(140, 60, 410)),
                new("b", 300, 60, 410, new(0.2, 0.3), 0.005, s_bend.OffsetAt(300, 60, 410)),
            ],
            Lines = [new(TurningLine.AsRead, 60, 410, 0.9, 0.8, 1, 228, 1.2, RunOutVerdict.Over)],
            Words = Sentence.Plain("It is a kink at the weld and a sweep."),
        };

    public static ShaftShape Straight { get; } =
        Twisted with
        {
            Likeliest = s_bend with { Kind = BendKind.Straight, Kink = default, Sweep = default },
            HighPoint = null,
            WeldAt = null,
            Overall = null,
            Stations = [new("a", 140, 60, 410, new(0.004, 0.002), 0.005, default)],
        };

    /// <summary>One of the example jobs.</summary>
    public static JobDocument Example(string name) =>
        JobJson
            .Read(File.ReadAllText(Path.Combine(Repository, "examples", name + ".swjob.json")))
            .Document!;

    public const string GrassTrack = "grass-track-left-rear";

    public const string HillClimb = "hill-climb-right-rear";

    public const string Pickup = "electric-pickup-right-front";

    /// <summary>Marks of a test: at the weld, close by, on the far side, and one without a position.</summary>
    public static IReadOnlyList<CrackTest.MarkResult> Marks { get; } =
        CrackTest
            .CrackTestSolver.Solve(
                new()
                {
                    Tests =
                    [
                        new()
                        {
                            Id = "t",
                            Indications =
                            [
                                MarkAt("m1", CrackTest.Place.ButtWeld, Made.WeldAt, 20, 3),
                                MarkAt("m2", CrackTest.Place.Bar, Made.WeldAt + 30, -50, 4),
                                MarkAt("m3", CrackTest.Place.Bar, Made.WeldAt + 42, 170, 2),
                                new() { Id = "m4", Place = CrackTest.Place.OuterSpline },
                            ],
                        },
                    ],
                },
                new() { Made = Made }
            )
            .Marks;

    private static CrackTest.Indication MarkAt(
        string id,
        CrackTest.Place place,
        double position,
        double degrees,
        double length
    ) =>
        new()
        {
            Id = id,
            Place = place,
            Position = Measured<Distance>.Of(position, Distance.Mm),
            Angle = Measured<Angle>.Of(degrees, Angle.Degree),
            Length = Measured<Distance>.Of(length, Distance.Mm),
            Width = Measured<Distance>.Of(length, Distance.Mm),
        };

    /// <summary>Where the repository is.</summary>
    public static string Repository { get; } = FindRepository();

    /// <summary>Every kind of drawing, in both displays, and the odd ones out.</summary>
    public static IEnumerable<(string Name, Drawing Drawing)> Drawings(double width)
    {
        foreach (var d in new[] { Display.Metric, Display.Inch })
        {
            var named = new (string, Drawing?)[]
            {
                ("shaft", ShaftDrawing.Of(Made, d, width)),
                ("shaft with marks", ShaftDrawing.Of(Made, d, width, Marks)),
                (
                    "shaft without sleeve",
                    ShaftDrawing.Of(
                        Made with
                        {
                            SleeveFrom = null,
                            SleeveTo = null,
                            SleeveOutside = null,
                        },
                        d,
                        width
                    )
                ),
                ("donor cut", DonorDrawing.Of(Donor, 228, d, width)),
                ("donor walked", DonorDrawing.Of(Donor, null, d, width)),
                (
                    "donor begun",
                    DonorDrawing.Of(new("", [Stretches[0]], [], UnknownSteel), null, d, width)
                ),
                ("donor empty", DonorDrawing.Of(new("", [], [], UnknownSteel), null, d, width)),
                (
                    "two donors",
                    DonorDrawing.TwoDonors(
                        new()
                        {
                            InnerEnd = Donor,
                            OuterEnd = OtherDonor,
                            Findings = [],
                        },
                        new()
                        {
                            InnerAt = 228,
                            OuterAt = 235,
                            Findings = [],
                        },
                        d,
                        width
                    )
                ),
                ("no donors", DonorDrawing.TwoDonors(new() { Findings = [] }, null, d, width)),
                ("lengths", PlungeDrawing.Of(WithWindow, null, d, width)),
                ("no length", PlungeDrawing.Of(WithoutWindow, null, d, width)),
                ("steered", PlungeDrawing.Of(Steered, null, d, width)),
                ("lengths of plunge", PlungeDrawing.Lengths(WithPlunge, d, width)),
                ("plunge and angle", PlungeDrawing.Of(WithPlunge, Tripod, d, width)),
                ("vee", VeeDrawing.Of(Shims, 24.8, 23.7, null, d, width)),
                ("steep vee", VeeDrawing.Of(Shims, 24.8, 23.7, 0.9, d, width)),
                ("flat vee, alike", VeeDrawing.Of(new() { Findings = [] }, 24, 24, 2.2, d, width)),
                ("groove", GrooveDrawing.Of(Welded(8, 1.5), d, width)),
                ("groove to a point", GrooveDrawing.Of(Welded(0, 0), d, width)),
                ("beads", BeadDrawing.Of(Weld.BeadSolver.Solve([], null), d, width)),
                (
                    "beads from the dial",
                    BeadDrawing.Of(
                        Weld.BeadSolver.Solve(
                            [new(0, null, 0.2, 0.004, 2.2), new(1, null, 0.1, 0.004, 2.0)],
                            Welded(8, 1.5)
                        ),
                        d,
                        width,
                        now: 2
                    )
                ),
                ("dial", DialDrawing.Of(Judged, Turn, d, width)),
                (
                    "dial, no high point",
                    DialDrawing.Of(Judged with { HighPoint = null }, Turn, d, width)
                ),
                ("dial with a speck", DialDrawing.Of(Dunlin.Turns[2], DunlinTurn, d, width)),
                ("bow", BowDrawing.Of(Dunlin.Shape, Dunlin.Turns, d, width)),
                ("bow both ways", BowDrawing.Of(Twisted, [], d, width)),
                ("straight", BowDrawing.Of(Straight, [], d, width)),
            };
            foreach (var (name, drawing) in named)
                yield return (
                    name + (d == Display.Inch ? ", inch" : ""),
                    drawing ?? throw new InvalidOperationException(name + " drew nothing.")
                );
        }
    }

    /// <summary>The groove of two ends of 26 mm.</summary>
    private static Weld.PreparationNumbers Welded(double flat, double cap) =>
        Weld
            .WeldSolver.Solve(
                new()
                {
                    InnerDiameter = Measured<Distance>.Of(26, Distance.Mm),
                    OuterDiameter = Measured<Distance>.Of(26, Distance.Mm),
                    Preparation = new()
                    {
                        Flat = Measured<Distance>.Of(flat, Distance.Mm),
                        Cap = Measured<Distance>.Of(cap, Distance.Mm),
                    },
                }
            )
            .Preparation!;

    public static Measured<Distance> D(string text) =>
        Measured<Distance>.Read(text, "sample").Required;

    public static Measured<Angle> A(string text) => Measured<Angle>.Read(text, "sample").Required;

    public static TrialReading InOut(
        string travel,
        string goesIn,
        string comesOut,
        Steering steering = Steering.Straight
    ) =>
        new()
        {
            Travel = D(travel),
            In = D(goesIn),
            Out = D(comesOut),
            Steering = steering,
        };

    private static TrialReading DistanceAndAngle(string travel, string distance, string angle) =>
        new()
        {
            Travel = D(travel),
            Distance = D(distance),
            InnerAngle = A(angle),
        };

    private static LengthResult LengthOf(JointsInput? joints, params TrialReading[] readings) =>
        Workflow
            .Evaluate(
                new Job
                {
                    Joints = joints,
                    Corner = new CornerInput
                    {
                        TrialLength = D("440"),
                        Readings = readings,
                        Conditions = new() { StubPushedHome = true },
                    },
                }
            )
            .Length!;

    private static string FindRepository()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Shaftwright.slnx")))
            at = at.Parent;
        return at?.FullName
            ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
