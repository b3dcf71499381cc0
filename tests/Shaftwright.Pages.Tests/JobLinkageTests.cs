using Shaftwright.Corner.Linkages;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>The pivots of a job, typed one at a time: a tape alone leads to a length, and what is not touched stays as it was.</summary>
public sealed class JobLinkageTests
{
    private const string Joints = """
        {"joints":{"inner":{"kind":"plungingBall","plungeIn":"15 mm","plungeOut":"15 mm","angleLimit":"23°"},
         "outer":{"kind":"fixed","angleLimit":"25°"}},"length":{"margin":"1 mm"}}
        """;

    [Fact]
    public async Task SwingArm_TypedFromNothing_GivesItsLength()
    {
        await using var hand = await Hand.At<JobLinkage>(Joints);
        await hand.Type("solid", "no");
        await hand.Type("strut", "no");
        await hand.Type("arms", nameof(LinkageKind.PivotedArm));
        // kinematics.md, case 3.
        foreach (
            var (point, x, y, z) in new[]
            {
                (LinkagePoint.WheelCentre, "0", "600", "280"),
                (LinkagePoint.OuterJoint, "0", "500", "280"),
                (LinkagePoint.InnerJoint, "0", "200", "280"),
                (LinkagePoint.PivotOne, "300", "100", "280"),
                (LinkagePoint.PivotTwo, "-200", "100", "280"),
            }
        )
        {
            await hand.Type(point + "/x", x);
            await hand.Type(point + "/y", y);
            await hand.Type(point + "/z", z);
        }
        Assert.Null(Workflow.Evaluate(hand.Job).Length?.Make);
        await hand.Type("droop", "140");
        await hand.Type("bump", "140");
        Assert.Equal(302.739726, Workflow.Evaluate(hand.Job).Length!.Make!.Value, 0.5e-6);
    }

    [Fact]
    public async Task WhatThePageDoesNotAsk_Stays()
    {
        await using var hand = await Hand.At<JobLinkage>(
            """
            {"corner":{"linkage":{"kind":"beam",
              "points":[{"point":"rollOne","x":"1 mm","y":"2 ± 1 mm","z":"3 mm"},
                        {"point":"wheelCentre","x":"4.0 mm","y":"5 mm","z":"6 mm","mirrored":true,"tapes":[{"from":"A","distance":"400 mm"}]}],
              "bushes":"0.5 mm","driving":{"z":"2 mm"}}}}
            """
        );
        await hand.Type("droop", "80");
        var linkage = hand.Job.Corner!.Linkage!;
        Assert.Equal(LinkageKind.Beam, linkage.Kind);
        Assert.Equal("0.5 mm", linkage.Bushes!.Typed);
        Assert.Equal("2 mm", linkage.Driving!.Z!.Typed);
        Assert.Equal("2 ± 1 mm", linkage.Points[0].Y!.Typed);
        Assert.Equal("4.0 mm", linkage.Points[1].X!.Typed);
        Assert.True(linkage.Points[1].Mirrored);
        Assert.Equal("A", Assert.Single(linkage.Points[1].Tapes).From);
        Assert.Equal(80, linkage.Droop!.Value, 1e-9);
    }

    [Fact]
    public async Task PointTapedFromFourMarks_IsFound()
    {
        await using var hand = await Hand.At<JobLinkage>(
            """
            {"corner":{"linkage":{"kind":"pivotedArm","references":[{"name":"sill","x":"1 mm","y":"2 mm","z":"3 mm"}],
              "points":[{"point":"wheelCentre","x":"0","y":"600","z":"280","tapes":[]},
                        {"point":"innerJoint","x":"0","y":"200","z":"280"},
                        {"point":"pivotOne","x":"300","y":"100","z":"280"},
                        {"point":"pivotTwo","x":"-200","y":"100","z":"280"}],
              "droop":"140","bump":"140"}}}
            """
        );
        // The outer joint at (0, 500, 280).
        (string Mark, double X, double Y, double Z)[] marks =
        [
            ("A", 300, 100, 0),
            ("B", -400, 100, 0),
            ("C", 0, 900, 0),
            ("D", 0, 100, 700),
        ];
        foreach (var (mark, x, y, z) in marks)
        {
            await hand.Type($"mark/{mark}/x", Text(x));
            await hand.Type($"mark/{mark}/y", Text(y));
            await hand.Type($"mark/{mark}/z", Text(z));
            await hand.Type(
                $"OuterJoint/tape/{mark}",
                Text(Math.Sqrt(x * x + (y - 500) * (y - 500) + (z - 280) * (z - 280)))
            );
        }
        Assert.Equal(
            ["sill", "A", "B", "C", "D"],
            hand.Job.Corner!.Linkage!.References.Select(r => r.Name)
        );
        var found = Workflow
            .Evaluate(hand.Job)
            .Corner!.Linkage!.Points.Single(p => p.Point == LinkagePoint.OuterJoint)
            .At;
        Assert.Equal(0, found.X, 1e-3);
        Assert.Equal(500, found.Y, 1e-3);
        Assert.Equal(280, found.Z, 1e-3);
    }

    private static string Text(double value) =>
        value.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
}
