using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Donors;

public sealed class DonorsSolverTests
{
    private static DonorsResult Solve(DonorShaft inner) =>
        DonorsSolver.Solve(Pair(inner, Usual(25, 400)));

    private static void Says(DonorsResult result, string code, Severity severity) =>
        Assert.Contains(result.Findings, f => f.Code == code && f.Severity == severity);

    [Fact]
    public void Solve_AWalkedShaft_LaysItsStretchesEndToEnd()
    {
        var profile = Solve(Usual(25, 400)).InnerEnd!;

        Assert.Equal(400, profile.Length);
        Assert.Equal(5, profile.Stretches.Count);
        Assert.Equal(0, profile.Stretches[0].From);
        for (var i = 1; i < 5; i++)
            Assert.Equal(profile.Stretches[i - 1].To, profile.Stretches[i].From);
        Assert.Equal(24, profile.Stretches[0].RootDiameter);
        Assert.DoesNotContain(profile.Stretches, s => s.Guessed);
    }

    [Fact]
    public void Solve_NoZones_LeavesThatDonorOutAndSaysSo()
    {
        var result = Solve(new DonorShaft());

        Assert.Null(result.InnerEnd);
        Assert.NotNull(result.OuterEnd);
        Says(result, "donor-not-walked", Severity.Caution);
    }

    [Fact]
    public void Solve_NoDiameterAnywhere_LeavesThatDonorOutAndSaysSo()
    {
        var result = Solve(new DonorShaft { Zones = [new() { Until = Mm(100) }] });

        Assert.Null(result.InnerEnd);
        Says(result, "donor-no-diameter", Severity.Caution);
    }

    [Fact]
    public void Solve_ZoneWithoutEnd_StopsTheShaftThere()
    {
        var shaft = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 100, 25),
                new() { Kind = ZoneKind.Groove, Diameter = Mm(22) },
                Zone(ZoneKind.Plain, 300, 25),
            ],
        };
        var result = Solve(shaft);

        Assert.Equal(100, result.InnerEnd!.Length);
        Says(result, "zone-end-missing", Severity.Caution);
    }

    [Fact]
    public void Solve_ZoneWithoutDiameter_BorrowsForTheDrawingAndMarksItGuessed()
    {
        var shaft = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Taper, 100, 25, end: 27),
                new() { Kind = ZoneKind.Plain, Until = Mm(150) },
                Zone(ZoneKind.Plain, 300, 24),
            ],
        };
        var result = Solve(shaft);

        Assert.True(result.InnerEnd!.Stretches[1].Guessed);
        Assert.Equal(27, result.InnerEnd.Stretches[1].Diameter);
        Says(result, "zone-diameter-missing", Severity.Caution);
    }

    [Fact]
    public void Solve_TaperWithoutEndDiameter_RunsIntoTheNextStretch()
    {
        var taper = new ShaftZone
        {
            Kind = ZoneKind.Taper,
            Until = Mm(100),
            Diameter = Mm(27),
        };
        var result = Solve(new DonorShaft { Zones = [taper, Zone(ZoneKind.Plain, 300, 24)] });
        var last = Solve(new DonorShaft { Zones = [taper] });

        Assert.Equal(24, result.InnerEnd!.Stretches[0].EndDiameter);
        Assert.False(result.InnerEnd.Stretches[0].Guessed);
        Says(result, "taper-end-missing", Severity.Note);
        Assert.True(last.InnerEnd!.Stretches[0].Guessed);
        Says(last, "taper-end-missing", Severity.Caution);
    }

    [Fact]
    public void Solve_SplineWithoutRoot_SaysItsStrengthIsNotJudged()
    {
        var result = Solve(new DonorShaft { Zones = [Zone(ZoneKind.Spline, 40, 26)] });

        Says(result, "spline-root-missing", Severity.Caution);
    }

    [Fact]
    public void Solve_ShapesThatCannotBeMeant_AreQuestioned()
    {
        var result = Solve(
            new DonorShaft
            {
                Zones =
                [
                    Zone(ZoneKind.Spline, 40, 26, root: 26.5),
                    Zone(ZoneKind.Plain, 100, 25),
                    Zone(ZoneKind.Groove, 103, 25.5),
                    Zone(ZoneKind.Plain, 200, 25),
                    Zone(ZoneKind.Plain, 300, 28),
                ],
            }
        );

        Says(result, "spline-root-not-lower", Severity.Caution);
        Says(result, "groove-not-lower", Severity.Caution);
        Says(result, "diameter-jump", Severity.Note);
    }

    [Fact]
    public void Solve_HardenedZones_AreSortedClippedAndTheUnplacedNamed()
    {
        var result = Solve(
            Usual(25, 400) with
            {
                Hardened =
                [
                    Hard(300, 900, 3),
                    Hard(0, 60),
                    new() { From = Mm(100) },
                    Hard(500, 600),
                ],
            }
        );

        Assert.Equal(
            [new HardStretch(0, 60, null), new HardStretch(300, 400, Band.Exactly(3))],
            result.InnerEnd!.Hardened
        );
        Says(result, "hard-zone-unplaced", Severity.Caution);
        Says(result, "case-depth-missing", Severity.Note);
    }

    [Fact]
    public void Solve_Hardness_BecomesARangeOfTheTypedOrTheUsualPlusMinus()
    {
        var steel = Solve(
            Usual(25, 400) with
            {
                CoreHardness = Measured<Hardness>.Of(2, Hardness.Hrc),
                SurfaceHardness = Measured<Hardness>.Of(54, Hardness.Hrc, 1),
            }
        ).InnerEnd!.Steel;

        Assert.Equal(new Band(0, 5), steel.CoreHrc);
        Assert.Equal(new Band(53, 55), steel.SurfaceHrc);
    }

    [Fact]
    public void Solve_UnknownSteel_SaysWhatItCosts()
    {
        Says(Solve(Usual(25, 400)), "steel-unknown", Severity.Note);
        Says(Solve(Usual(25, 400)), "hardening-not-tested", Severity.Note);
    }

    [Fact]
    public void Solve_InchTypedShaft_GivesTheSameProfile()
    {
        var mm = new DonorShaft { Zones = [Zone(ZoneKind.Plain, 254, 25.4)] };
        var inch = new DonorShaft
        {
            Zones =
            [
                new()
                {
                    Until = Measured<Distance>.Of(10, Distance.Inch),
                    Diameter = Measured<Distance>.Of(1, Distance.Inch, 0),
                },
            ],
        };

        Assert.Equal(Solve(mm).InnerEnd!.Stretches, Solve(inch).InnerEnd!.Stretches);
    }

    [Fact]
    public void Solve_AnyWalkedShaft_HasNoGapsAndEndsWhereTheLastZoneEnds() =>
        CsCheck.Check.Sample(
            Walked.Random,
            shaft =>
            {
                var stretches = Solve(shaft).InnerEnd!.Stretches;
                return stretches[0].From == 0
                    && stretches.Zip(stretches.Skip(1)).All(p => p.First.To == p.Second.From)
                    && stretches[^1].To == shaft.Zones[^1].Until!.Value;
            }
        );
}
