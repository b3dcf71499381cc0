using System.Globalization;
using System.Text.Json;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Length;

/// <summary>The three cars of Published/kinematics.json, read as a fabricator would read them.</summary>
public sealed class KinematicsTests
{
    private static readonly PublishedFile File = PublishedFile.Load("kinematics");

    public static TheoryData<string> Ids() => PublishedFile.Ids("kinematics");

    public static TheoryData<string> Plain() => ["trailing-arm", "parallel-wishbones", "swing-arm"];

    private sealed record Car(
        double[] Travel,
        double[] Axial,
        double[] Across,
        double[] Lean,
        double Plunge,
        double Margin,
        double Inner,
        double Outer
    );

    private static Car Read(PublishedCase c)
    {
        static double Number(JsonElement e) =>
            e.ValueKind == JsonValueKind.Number
                ? e.GetDouble()
                : Math.Sqrt(
                    double.Parse(e.GetString()!["sqrt ".Length..], CultureInfo.InvariantCulture)
                );
        double[] Row(string name) => [.. c.Raw(name).EnumerateArray().Select(Number)];
        return new(
            Row("travels"),
            Row("axial"),
            Row("across"),
            Row("outerAngleOffset"),
            c.Input<Distance>("plunge").Value,
            c.Input<Distance>("margin").Value,
            c.Input<Angle>("innerLimit").Value / TrialShaft.Degree,
            c.Input<Angle>("outerLimit").Value / TrialShaft.Degree
        );
    }

    private static CornerInput DistanceAndAngle(Car car) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            Readings =
            [
                .. car.Travel.Select(
                    (t, k) =>
                        TrialShaft.DistanceAndAngle(
                            t,
                            car.Axial[k],
                            car.Across[k],
                            Math.Abs(
                                Math.Atan2(car.Across[k], car.Axial[k]) / TrialShaft.Degree
                                    - car.Lean[k]
                            )
                        )
                ),
            ],
        };

    private static CornerInput InAndOut(Car car, double trial) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = TrialShaft.Mm(trial),
            Readings =
            [
                .. car.Travel.Select(
                    (t, k) =>
                        TrialShaft.InAndOut(
                            t,
                            car.Axial[k],
                            car.Across[k],
                            trial,
                            car.Plunge,
                            car.Plunge
                        )
                ),
            ],
        };

    [Theory]
    [MemberData(nameof(Ids))]
    public void Window_FromDistanceAndAngle_IsThePublishedOne(string id)
    {
        var published = File[id];
        var car = Read(published);
        var result = TrialShaft.Solve(
            DistanceAndAngle(car),
            TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            car.Margin
        );

        published.Agrees("shortest", result.Shortest!.Length);
        published.Agrees("longest", result.Longest!.Length);
        if (published.Expects("balanced"))
            published.Agrees("balanced", result.Make!.Value);
        if (published.Expects("missing"))
            published.Agrees("missing", result.Missing);
        Assert.Equal(!published.Expects("missing"), result.HasWindow);
        if (published.Expects("forbids"))
            Assert.Equal(Forbids.InnerAngle, result.Shortest.Forbids);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Window_FromInAndOutOfATrialShaft_IsTheSame(string id)
    {
        var published = File[id];
        var car = Read(published);
        // A trial shaft a little off the right length, as any trial shaft is.
        var trial = car.Axial[1] + 3.7;
        var result = TrialShaft.Solve(
            InAndOut(car, trial),
            TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            car.Margin
        );

        published.Agrees("shortest", result.Shortest!.Length);
        published.Agrees("longest", result.Longest!.Length);
        if (published.Expects("balanced"))
            published.Agrees("balanced", result.Make!.Value);
    }

    [Theory]
    [MemberData(nameof(Plain))]
    public void PlungeAndAngle_AtTheCentredLength_ArePublished(string id)
    {
        var published = File[id];
        var car = Read(published);
        var corner = DistanceAndAngle(car);
        var chosen = TrialShaft.Mm(published.Expected("centred"));
        var job = new Job
        {
            Corner = corner,
            Joints = TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            Length = new LengthInput { Margin = TrialShaft.Mm(car.Margin), Chosen = chosen },
        };
        var result = Workflow.Evaluate(job).Length!;
        var end = result.Positions.Single(p => p.Read && p.Travel > 0);

        published.Agrees("plungeAtEndCentred", end.Plunge!.Value);
        published.Agrees("innerAngleAtEndCentred", end.InnerAngle!.Value / TrialShaft.Degree);
        published.Agrees("distanceAtEnd", corner.Readings[2].Distance!.Value);
        // ψ = φ less the lean of the hub, which the readings carry.
        Assert.Equal(corner.Readings[2].OuterAngle!.Value, end.OuterAngle!.Value, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Plain))]
    public void Balanced_LeavesTheSamePlungeAtBothEnds(string id)
    {
        var published = File[id];
        var car = Read(published);
        var result = TrialShaft.Solve(
            DistanceAndAngle(car),
            TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            car.Margin
        );
        var least = result.Positions.Where(p => p.Read).ToList();

        published.Agrees("leftAtBalance", least.Min(p => p.LeftIn));
        published.Agrees("leftAtBalance", least.Min(p => p.LeftOut));
    }

    [Theory]
    [MemberData(nameof(Plain))]
    public void TrialShaftTable_ReadToHalfAMillimetre_RecoversTheLengthWithinItsUncertainty(
        string id
    )
    {
        var published = File[id];
        var car = Read(published);
        static double Half(double x) => Math.Round(x * 2) / 2;
        var trial = car.Axial[1] + 3.7;
        var exact = InAndOut(car, trial);
        var read = exact with
        {
            TrialLength = Measured<Distance>.Of(Half(trial), Distance.Mm),
            Readings =
            [
                .. exact.Readings.Select(r => new TrialReading
                {
                    Travel = Measured<Distance>.Of(r.Travel!.Value, Distance.Mm),
                    In = Measured<Distance>.Of(Half(r.In!.Value), Distance.Mm),
                    Out = Measured<Distance>.Of(Half(r.Out!.Value), Distance.Mm),
                    InnerAngle = Measured<Angle>.Of(
                        Half(r.InnerAngle!.Value / TrialShaft.Degree),
                        Angle.Degree
                    ),
                }),
            ],
        };
        var result = TrialShaft.Solve(
            read,
            TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            car.Margin
        );

        Assert.InRange(
            Math.Abs(result.Make!.Value - published.Expected("balanced")),
            0,
            2 * result.MakeUncertainty
        );
        Assert.InRange(
            Math.Abs(result.Shortest!.Length - published.Expected("shortest")),
            0,
            2 * result.Shortest.StandardUncertainty
        );
        Assert.InRange(
            Math.Abs(result.Longest!.Length - published.Expected("longest")),
            0,
            2 * result.Longest.StandardUncertainty
        );
        // Half a millimetre on a rule is a standard uncertainty near 0.3 mm a reading, of three that matter: neither nothing nor centimetres.
        Assert.InRange(result.MakeUncertainty, 0.15, 1.0);
    }

    [Fact]
    public void DistanceAlone_AtTwentyDegrees_IsSeveralPerCentOff()
    {
        // PRODUCT.md: plunge is the axial part D·cos φ; the distance alone is 1 − cos 20° = 6 % too much.
        Assert.Equal(0.0603, 1 - Math.Cos(20 * TrialShaft.Degree), 4);
        var straight = TrialShaft.Joints(15, 30, 30);
        CornerInput Corner(double across) =>
            new()
            {
                Conditions = TrialShaft.AllWell,
                Readings =
                [
                    .. new[] { -80.0, 0, 80 }.Select(t =>
                        TrialShaft.DistanceAndAngle(
                            t,
                            400 * Math.Cos(across),
                            400 * Math.Sin(across)
                        )
                    ),
                ],
            };
        var bent = TrialShaft.Solve(Corner(20 * TrialShaft.Degree), straight, 0).Longest!.Length;
        Assert.Equal(
            double.Hypot(
                400 * Math.Cos(20 * TrialShaft.Degree) + 15,
                400 * Math.Sin(20 * TrialShaft.Degree)
            ),
            bent,
            1e-9
        );
        Assert.True(415 - bent > 0.8, "a shaft cut from the distance alone would be too long");
    }

    [Fact]
    public void NoLength_NamesBothPositionsAndWhatIsMissing()
    {
        var car = Read(File["swing-arm, no length works"]);
        var result = TrialShaft.Solve(
            DistanceAndAngle(car),
            TrialShaft.Joints(car.Plunge, car.Inner, car.Outer),
            car.Margin
        );
        var stop = Assert.Single(result.Findings, f => f.Severity == Severity.Stop);

        Assert.Equal("no-length", stop.Code);
        Assert.Contains("302.0", stop.Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("303.4", stop.Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("1.4", stop.Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("at ride height", stop.Text.ToString(), StringComparison.Ordinal);
        Assert.Null(result.Make);
    }
}
