using CsCheck;
using MathNet.Numerics.RootFinding;
using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>What holds for every linkage: random wishbones, struts, five links, skew arms and beams.</summary>
public sealed class AnyCarTests
{
    private const double Owed = 1e-9;

    private static readonly Gen<Vec3> s_slack = Gen.Select(
        Gen.Double[-30, 30],
        Gen.Double[-30, 30],
        Gen.Double[-30, 30],
        (x, y, z) => new Vec3(x, y, z)
    );

    private static readonly Gen<Linkage> s_linkage = Gen.Select(
        s_slack.Array[13],
        Gen.Int[0, 4],
        (d, kind) => Car(kind, d)
    );

    private static readonly Gen<Drive> s_drive = Gen.Select(
        Gen.Double[-70, 70],
        Gen.Double[-40, 40],
        Gen.Double[-70, 70],
        (t, r, o) => new Drive(t, r, o)
    );

    private static Linkage Car(int kind, Vec3[] d)
    {
        var wheel = new Vec3(0, 680, 290) + d[0];
        var track = Constraint.TrackRod(
            new Vec3(-120, 300, 260) + d[1],
            new Vec3(-130, 600, 260) + d[2],
            new Vec3(0.02, 1, -0.01).Unit()
        );
        Vec3 lf = new Vec3(150, 320, 200) + d[3],
            lr = new Vec3(-150, 320, 200) + d[4],
            lb = new Vec3(0, 620, 190) + d[5],
            uf = new Vec3(120, 350, 400) + d[6],
            ur = new Vec3(-120, 350, 400) + d[7],
            ub = new Vec3(-10, 600, 420) + d[8];
        return kind switch
        {
            0 => DoubleWishbone.Of(wheel, lf, lr, lb, uf, ur, ub, track),
            1 => Strut.Of(wheel, lf, lr, lb, new Vec3(-20, 520, 800) + d[9], ub, track),
            2 => FiveLink.Of(
                wheel,
                [
                    Constraint.Rod(lf, lb + new Vec3(20, 0, 0)),
                    Constraint.Rod(lr, lb - new Vec3(20, 0, 0)),
                    Constraint.Rod(uf, ub + new Vec3(15, 0, 0)),
                    Constraint.Rod(ur, ub - new Vec3(15, 0, 0)),
                    track,
                ]
            ),
            3 => PivotedArm.Of(
                wheel,
                new Vec3(400, 250, 300) + d[10],
                new Vec3(330, 520, 280) + d[11]
            ),
            _ => Beam.Of(
                wheel,
                wheel with
                {
                    Y = -wheel.Y,
                },
                [
                    Constraint.Rod(new Vec3(500, 420, 300) + d[9], new Vec3(60, 450, 240) + d[10]),
                    Constraint.Rod(
                        new Vec3(500, -420, 300) + d[11],
                        new Vec3(60, -450, 240) + d[12]
                    ),
                    Constraint.Rod(new Vec3(450, 200, 450) + d[3], new Vec3(20, 220, 420) + d[4]),
                    Constraint.Rod(new Vec3(-60, 450, 330) + d[5], new Vec3(-60, -450, 320) + d[6]),
                ]
            ),
        };
    }

    private static CarrierSolver? Reached(Linkage linkage, Drive drive)
    {
        var solver = new CarrierSolver(linkage);
        return solver.MoveTo(drive).End == MoveEnd.Reached ? solver : null;
    }

    [Fact]
    public void EveryHold_KeepsEverywhere_ToANanometre()
    {
        var reached = 0;
        Gen.Select(s_linkage, s_drive)
            .Sample(
                (linkage, drive) =>
                {
                    if (Reached(linkage, drive) is not { } solver)
                        return;
                    Interlocked.Increment(ref reached);
                    foreach (var c in linkage.Constraints)
                        Assert.True(Broken(c, solver, drive) <= Owed, $"{linkage.Name}: {c}");
                },
                iter: 1000
            );
        // The cars are mild and the travel too: nearly all get there, or the test says little.
        Assert.True(reached > 950, $"{reached} of 1000");
    }

    /// <summary>How far a condition is from being kept, mm, written from what it means.</summary>
    private static double Broken(Constraint c, CarrierSolver solver, Drive drive)
    {
        var moved =
            c.Chassis
            + c.Along
                * c.Driver switch
                {
                    Driver.Rack => drive.Rack,
                    Driver.Travel => drive.Travel,
                    Driver.OtherTravel => drive.OtherTravel,
                    _ => 0,
                };
        var point = solver.Point(c.Carrier);
        return Math.Abs(
            c.Hold switch
            {
                Hold.Rod => (point - moved).Length - (c.Carrier - c.Chassis).Length,
                Hold.Plane => c.Normal.Dot(point - moved),
                _ => solver.Direction(c.Normal).Dot(moved - point),
            }
        );
    }

    [Fact]
    public void Path_DoesNotMatter_AndBackIsWhereItBegan() =>
        Gen.Select(s_linkage, s_drive, s_drive)
            .Sample(
                (linkage, drive, by) =>
                {
                    if (Reached(linkage, drive) is not { } straight)
                        return;
                    var round = new CarrierSolver(linkage);
                    if (
                        round.MoveTo(by).End != MoveEnd.Reached
                        || round.MoveTo(drive).End != MoveEnd.Reached
                    )
                        return;
                    var mark = new Vec3(100, 500, 500);
                    PaperCarsTests.Near(straight.Point(mark), round.Point(mark), Owed);
                    Assert.Equal(MoveEnd.Reached, round.MoveTo(default).End);
                    PaperCarsTests.Near(mark, round.Point(mark), Owed);
                },
                iter: 500
            );

    [Fact]
    public void MirroredCar_MovesMirrored() =>
        Gen.Select(s_linkage, s_drive)
            .Sample(
                (linkage, drive) =>
                {
                    if (Reached(linkage, drive) is not { } left)
                        return;
                    var right = Reached(linkage.Mirrored(), drive with { Rack = -drive.Rack });
                    Assert.NotNull(right);
                    var mark = new Vec3(100, 500, 500);
                    var seen = right.Point(mark with { Y = -mark.Y });
                    PaperCarsTests.Near(left.Point(mark), seen with { Y = -seen.Y }, Owed);
                },
                iter: 500
            );

    [Fact]
    public void Position_AgreesWithAGeneralPurposeSolverOnOtherCoordinates() =>
        Gen.Select(s_linkage, s_drive)
            .Sample(
                (linkage, drive) =>
                {
                    if (Reached(linkage, drive) is not { } ours)
                        return;
                    var theirs = Broyden.FindRoot(
                        u => [.. linkage.Constraints.Select(c => Signed(c, linkage, drive, u))],
                        [0, 0, drive.Travel / 100, 0, 0, 0],
                        1e-11,
                        400,
                        1e-6
                    );
                    var mark = new Vec3(100, 500, 500);
                    PaperCarsTests.Near(Euler(theirs, mark, linkage), ours.Point(mark), 1e-7);
                },
                iter: 100
            );

    /// <summary>Shift in tenths of a metre and three successive angles: other coordinates than the solver's.</summary>
    private static Vec3 Euler(double[] u, Vec3 point, Linkage linkage)
    {
        var a = point - linkage.WheelCentre;
        return linkage.WheelCentre + new Vec3(u[0], u[1], u[2]) * 100 + EulerTurn(u, a);
    }

    private static Vec3 EulerTurn(double[] u, Vec3 a)
    {
        var (sx, cx) = Math.SinCos(u[3]);
        var (sy, cy) = Math.SinCos(u[4]);
        var (sz, cz) = Math.SinCos(u[5]);
        a = new(a.X, cx * a.Y - sx * a.Z, sx * a.Y + cx * a.Z);
        a = new(cy * a.X + sy * a.Z, a.Y, -sy * a.X + cy * a.Z);
        return new(cz * a.X - sz * a.Y, sz * a.X + cz * a.Y, a.Z);
    }

    private static double Signed(Constraint c, Linkage linkage, Drive drive, double[] u)
    {
        var moved =
            c.Chassis
            + c.Along
                * c.Driver switch
                {
                    Driver.Rack => drive.Rack,
                    Driver.Travel => drive.Travel,
                    Driver.OtherTravel => drive.OtherTravel,
                    _ => 0,
                };
        var point = Euler(u, c.Carrier, linkage);
        return c.Hold switch
            {
                Hold.Rod => (point - moved).Length - (c.Carrier - c.Chassis).Length,
                Hold.Plane => c.Normal.Dot(point - moved),
                _ => EulerTurn(u, c.Normal).Dot(moved - point),
            } / 100;
    }
}
