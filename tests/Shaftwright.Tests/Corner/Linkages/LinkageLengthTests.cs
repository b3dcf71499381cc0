using CsCheck;
using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Geometry;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using static Shaftwright.Tests.Corner.Linkages.LinkageJobs;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>A length from pivots, through the whole workflow. Source of the paper cars: own derivation, ../shared/reference/kinematics.md
/// 1 to 3, mark D, in Published/kinematics.json.</summary>
public sealed class LinkageLengthTests
{
    private const double Degree = Math.PI / 180;
    private static readonly PublishedFile File = PublishedFile.Load("kinematics");

    public static TheoryData<string> Ids() => PublishedFile.Ids("kinematics");

    private static Job Published(PublishedCase c, double? chosen = null) =>
        Job(
            Paper(c.Id),
            c.Input<Distance>("plunge").Value,
            c.Input<Angle>("innerLimit").Value / Degree,
            c.Input<Angle>("outerLimit").Value / Degree,
            c.Input<Distance>("margin").Value,
            chosen
        );

    [Theory]
    [MemberData(nameof(Ids))]
    public void Window_FromPivots_IsThePublishedOne(string id)
    {
        var c = File[id];
        var result = Workflow.Evaluate(Published(c)).Length!;
        c.Agrees("shortest", result.Shortest!.Length);
        c.Agrees("longest", result.Longest!.Length);
        if (c.Expects("balanced"))
            c.Agrees("balanced", result.Make!.Value);
        if (c.Expects("missing"))
            c.Agrees("missing", result.Missing);
        Assert.Equal(!c.Expects("missing"), result.HasWindow);
        if (c.Expects("forbids"))
            Assert.Equal(Forbids.InnerAngle, result.Shortest.Forbids);
    }

    [Theory]
    [InlineData("trailing-arm", 11.608941)]
    [InlineData("parallel-wishbones", 12.122352)]
    [InlineData("swing-arm", 5.661135)]
    public void Sweep_AtTheCentredLength_IsAsPrinted(string id, double outerAngle)
    {
        var c = File[id];
        var result = Workflow.Evaluate(Published(c, c.Expected("centred"))).Length!;
        Assert.Equal(3, result.Sweep.Count);
        foreach (var end in new[] { result.Sweep[0], result.Sweep[2] })
        {
            c.Agrees("distanceAtEnd", end.Distance!.Value);
            c.Agrees("plungeAtEndCentred", end.Plunge!.Value);
            c.Agrees("innerAngleAtEndCentred", end.InnerAngle!.Value / Degree);
            Assert.Equal(outerAngle, end.OuterAngle!.Value / Degree, 0.5e-6);
        }
        Assert.Equal(c.Expected("centred"), result.Sweep[1].Distance!.Value, 1e-9);
    }

    /// <summary>kinematics.md, case 3: errors u of each coordinate of both joints give the centred length u√2, and the pivots of the
    /// arm nothing. Here the long end of the window, which is the centred length and the plunge.</summary>
    [Fact]
    public void Uncertainty_OfTheSwingArm_IsRootTwo()
    {
        var result = Workflow.Evaluate(Job(Paper("swing-arm", Math.Sqrt(3)), 15, 23, 25, 1));
        Assert.Equal(0, result.Length!.Longest!.Travel, 1e-6);
        // The nudge is of first order; the length bends by u²/300 over it.
        Assert.Equal(Math.Sqrt(2), result.Length.Longest.StandardUncertainty, 1e-3);
    }

    private static LinkageInput Placed(
        Func<Vec3, Vec3> move,
        double rackLeft,
        double rackRight,
        Vec3[] off,
        double rack
    )
    {
        var names = Steered.Keys.ToArray();
        return new()
        {
            Kind = LinkageKind.DoubleWishbone,
            Points =
            [
                .. names.Select(
                    (n, i) =>
                    {
                        var p = move(Steered[n] + off[i]);
                        return At(n, p.X, p.Y, p.Z);
                    }
                ),
            ],
            RackLeft = Mm(rackLeft),
            RackRight = Mm(rackRight),
            Positions =
            [
                .. from t in new[] { -60.0, 0, 25, 60 }
                from r in new[] { -rack, 0, rack }
                select new PositionInput { Travel = Mm(t), Rack = Mm(r) },
            ],
        };
    }

    private static readonly Gen<Vec3[]> s_off = Gen.Select(
        Gen.Int[-10, 10],
        Gen.Int[-10, 10],
        Gen.Int[-10, 10],
        (x, y, z) => new Vec3(x, y, z)
    ).Array[13];

    [Fact]
    public void Car_MirroredOrShifted_AgreesToAPicometreInAThousand() =>
        s_off.Sample(
            off =>
            {
                SweptLength[] Sweep(Func<Vec3, Vec3> move, double rack) =>
                    [
                        .. Workflow
                            .Evaluate(Job(Placed(move, 30, 30, off, rack), chosen: 410))
                            .Length!.Sweep,
                    ];
                var plain = Sweep(p => p, 30);
                var shifted = Sweep(p => p + new Vec3(120, -31, 44), 30);
                // Mirrored, the rack to the left is the rack to the right.
                var mirrored = Sweep(p => p with { Y = -p.Y }, -30);
                for (var i = 0; i < plain.Length; i++)
                {
                    foreach (var other in new[] { shifted[i], mirrored[i] })
                    {
                        Assert.Equal(plain[i].Distance!.Value, other.Distance!.Value, 1e-9);
                        Assert.Equal(plain[i].Plunge!.Value, other.Plunge!.Value, 1e-9);
                        Assert.Equal(plain[i].InnerAngle!.Value, other.InnerAngle!.Value, 1e-9);
                        Assert.Equal(plain[i].OuterAngle!.Value, other.OuterAngle!.Value, 1e-9);
                    }
                }
            },
            iter: 60
        );

    /// <summary>Turned a quarter, so that typed coordinates stay exact: the rack, given by no direction here, stays centred.</summary>
    [Fact]
    public void Car_TurnedAQuarter_Agrees() =>
        s_off.Sample(
            off =>
            {
                SweptLength[] Sweep(Func<Vec3, Vec3> move) =>
                    [
                        .. Workflow
                            .Evaluate(Job(Placed(move, 0, 0, off, 0), chosen: 410))
                            .Length!.Sweep,
                    ];
                var plain = Sweep(p => p);
                var turned = Sweep(p => new(-p.Y, p.X, p.Z));
                for (var i = 0; i < plain.Length; i++)
                {
                    Assert.Equal(plain[i].Distance!.Value, turned[i].Distance!.Value, 1e-9);
                    Assert.Equal(plain[i].Plunge!.Value, turned[i].Plunge!.Value, 1e-9);
                    Assert.Equal(plain[i].OuterAngle!.Value, turned[i].OuterAngle!.Value, 1e-9);
                }
            },
            iter: 60
        );

    [Fact]
    public void Ranges_WithoutAList_GoAllAlongTheTravel()
    {
        var listed = Job(Paper("swing-arm"), 15, 23, 25, 1);
        var ranged = Job(
            Paper("swing-arm") with
            {
                Positions = [],
                Droop = Mm(140),
                Bump = Mm(140),
            },
            15,
            23,
            25,
            1
        );
        var (a, b) = (Workflow.Evaluate(listed).Length!, Workflow.Evaluate(ranged).Length!);
        Assert.Equal(a.Make!.Value, b.Make!.Value, 1e-9);
        Assert.Equal(a.Shortest!.Length, b.Shortest!.Length, 1e-9);
    }

    [Fact]
    public void Never_CutsTheWindowWhereItBound()
    {
        // Without the outer 40 mm of bump and droop the swing arm stops at 100: D² = 400² + 100² − 80000·cos θ, sin θ = 100/500.
        var input = Paper("swing-arm") with
        {
            Positions = [],
            Droop = Mm(140),
            Bump = Mm(140),
            Never = [new() { TravelFrom = Mm(100) }, new() { TravelTo = Mm(-100) }],
        };
        var result = Workflow.Evaluate(Job(input, 15, 40, 40, 1)).Length!;
        Assert.Equal(100, Math.Abs(result.Shortest!.Travel), 1e-6);
        var cos = Math.Sqrt(0.96);
        var across = 400 * 0.2;
        var axial = 400 * cos - 100;
        Assert.Equal(double.Hypot(axial - 14, across), result.Shortest.Length, 1e-9);
    }

    [Fact]
    public void Bushes_TakeTheirShareOffBothEnds()
    {
        var plain = Workflow.Evaluate(Job(Paper("trailing-arm"), 15, 20, 25, 1)).Length!;
        var soft = Workflow
            .Evaluate(Job(Paper("trailing-arm") with { Bushes = Mm(2) }, 15, 20, 25, 1))
            .Length!;
        Assert.Equal(plain.Longest!.Length - 2, soft.Longest!.Length, 1e-9);
        Assert.Equal(double.Hypot(438, Math.Sqrt(8200)), soft.Shortest!.Length, 1e-9);
    }

    [Fact]
    public void PowerUnit_MovedAndRolled_TakesTheInnerJointWithIt()
    {
        // A roll of 10° about a line along y through (0, *, 180), 100 below the inner joint, and 3 up: closed form.
        var input = Paper("trailing-arm") with
        {
            Points =
            [
                .. Paper("trailing-arm").Points,
                At(LinkagePoint.RollOne, 0, 0, 180),
                At(LinkagePoint.RollTwo, 0, 100, 180),
            ],
            Driving = new() { Z = Mm(3), Roll = Deg(10) },
            Overrun = new() { Y = Mm(-5) },
            Positions =
            [
                new() { Travel = Mm(0) },
                new() { Travel = Mm(0), PowerUnit = PowerUnitState.Driving },
                new() { Travel = Mm(0), PowerUnit = PowerUnitState.Overrun },
            ],
        };
        var sweep = Workflow.Evaluate(Job(input, chosen: 450)).Length!.Sweep;
        Assert.Equal(450, sweep[0].Distance!.Value, 1e-9);
        var (sin, cos) = Math.SinCos(10 * Degree);
        var r = double.Hypot(100 * sin, 100 * cos - 100 + 3);
        Assert.Equal(double.Hypot(450, r), sweep[1].Distance!.Value, 1e-9);
        Assert.Equal(450, sweep[1].Axial!.Value, 1e-9);
        Assert.Equal(455, sweep[2].Distance!.Value, 1e-9);
    }

    [Fact]
    public void IntermediateShaft_BearingOnTheBody_SwingsAboutIt()
    {
        // Output 300 inboard of the bearing, joint 100 outboard of it; the output rises 30: the joint drops with the shaft's line.
        var input = Paper("trailing-arm") with
        {
            Points =
            [
                .. Paper("trailing-arm").Points,
                At(LinkagePoint.Output, 0, -200, 280),
                At(LinkagePoint.Bearing, 0, 100, 280),
            ],
            Driving = new() { Z = Mm(30) },
            IntermediateBearing = BearingCarrier.Body,
            Positions = [new() { Travel = Mm(0), PowerUnit = PowerUnitState.Driving }],
        };
        var p = Workflow.Evaluate(Job(input, chosen: 450)).Length!.Sweep[0];
        var line = double.Hypot(300, 30);
        var inner = new Vec3(0, 100 + 100 * 300 / line, 280 - 100 * 30 / line);
        var axis = new Vec3(0, 300 / line, -30 / line);
        var d = new Vec3(0, 650, 280) - inner;
        Assert.Equal(d.Length, p.Distance!.Value, 1e-9);
        Assert.Equal(d.Dot(axis), p.Axial!.Value, 1e-9);
    }

    private static IReadOnlyList<Finding> Said(LinkageInput input) =>
        [.. Workflow.Evaluate(Job(input)).Findings.Where(f => f.Severity == Severity.Stop)];

    [Fact]
    public void Travel_BeyondALock_IsNamedWithItsTravel()
    {
        var input = Paper("parallel-wishbones") with { Positions = Positions(-84, 0, 350) };
        var result = Workflow.Evaluate(Job(input)).Length!;
        var lockUp = Assert.Single(Said(input), f => f.Code == "linkage-locks");
        Assert.Contains("300.0", lockUp.Text.In(Display.Metric), StringComparison.Ordinal);
        Assert.False(result.Sweep[2].Reached);
        Assert.Null(result.Sweep[2].Distance);
        // What it can do is still said.
        Assert.Equal(3, result.Sweep.Count);
        Assert.Equal(400, result.Sweep[1].Distance!.Value, 1e-9);
    }

    [Fact]
    public void PointsMixedUp_CannotBeAssembled()
    {
        var paper = Paper("swing-arm");
        var input = paper with
        {
            Points =
            [
                .. paper.Points.Select(p =>
                    p.Point == LinkagePoint.PivotTwo ? At(LinkagePoint.PivotTwo, 300, 100, 280) : p
                ),
            ],
        };
        var said = Assert.Single(Said(input), f => f.Code == "linkage-not-assembled");
        Assert.Contains("are one point", said.Text.In(Display.Metric), StringComparison.Ordinal);
        Assert.Null(Workflow.Evaluate(Job(input)).Length!.Make);
    }

    [Fact]
    public void WheelOnTheArmsAxis_CannotBeAssembled()
    {
        var paper = Paper("swing-arm");
        var input = paper with
        {
            Points =
            [
                .. paper.Points.Select(p =>
                    p.Point == LinkagePoint.WheelCentre ? At(p.Point, 100, 100, 280) : p
                ),
            ],
        };
        Assert.Single(Said(input), f => f.Code == "linkage-not-assembled");
    }

    [Fact]
    public void MissingCoordinate_IsNamed()
    {
        var paper = Paper("parallel-wishbones");
        var input = paper with
        {
            Points =
            [
                .. paper
                    .Points.Select(p => p.Point == LinkagePoint.LowerBall ? p with { Z = null } : p)
                    .Where(p => p.Point != LinkagePoint.UpperRear),
            ],
        };
        var said = Assert
            .Single(Said(input), f => f.Code == "linkage-incomplete")
            .Text.In(Display.Metric);
        Assert.Contains("lower ball, height", said, StringComparison.Ordinal);
        Assert.Contains("upper arm's rear pivot", said, StringComparison.Ordinal);
    }

    [Fact]
    public void PositionWithoutTravel_IsNotSkippedSilently() =>
        Assert.Single(
            Said(Paper("swing-arm") with { Positions = [.. Positions(-140, 0, 140), new()] }),
            f => f.Code == "position-missing"
        );
}
