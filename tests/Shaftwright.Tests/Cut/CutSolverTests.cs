using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut;

public sealed class CutSolverTests
{
    internal static CutInput Ask(double overall, double? at = null, double? sleeve = null) =>
        new()
        {
            OverallLength = Mm(overall),
            InnerCutAt = at is { } a ? Mm(a) : null,
            RootGap = Mm(2),
            Shrinkage = Mm(1.2),
            HeatBand = Mm(20),
            BootSlideRoom = Mm(40),
            SleeveLength = sleeve is { } s ? Mm(s) : null,
            SleeveOutside = sleeve is null ? null : Mm(38),
        };

    internal static CutResult Solve(
        DonorShaft inner,
        DonorShaft outer,
        CutInput cut,
        double? overall = null
    ) => CutSolver.Solve(DonorsSolver.Solve(Pair(inner, outer)), cut, overall);

    private static Finding Says(CutResult result, string code, Severity severity) =>
        Assert.Single(result.Findings, f => f.Code == code && f.Severity == severity);

    [Fact]
    public void Solve_TwoPlainDonors_CutsWhereTheTightestRuleHasMostToSpare()
    {
        // Both are alike, so the weld goes to the middle: 500 = x + 2 + x − 1.2.
        var result = Solve(Usual(25, 400), Usual(24, 400), Ask(500));

        Assert.True(result.Proposed);
        Assert.Equal(249.6, result.InnerAt!.Value, 9);
        Assert.Equal(249.6, result.OuterAt!.Value, 9);
        Assert.Equal(1, result.DiameterStep!.Value, 9);
        Assert.Equal(0.9, result.OverallPlusMinus, 9);
        Assert.All(result.Checks, c => Assert.True(c.Holds));
        Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Stop);
    }

    [Fact]
    public void Solve_ATaperMeetsAPlainBar_CutsWhereTheDiametersAreEqual()
    {
        // Taper 30 to 24 over 100…400, so 26 stands at 100 + 300·4/6 = 300.
        var inner = new DonorShaft
        {
            Zones = [Zone(ZoneKind.Plain, 100, 30), Zone(ZoneKind.Taper, 400, 30, end: 24)],
        };
        var outer = new DonorShaft { Zones = [Zone(ZoneKind.Plain, 400, 26)] };
        var result = Solve(inner, outer, Ask(500));

        Assert.Equal(300, result.InnerAt!.Value, 9);
        Assert.Equal(0, result.DiameterStep!.Value, 9);
    }

    [Fact]
    public void Solve_BothTapers_CutsWhereTheyCross()
    {
        var inner = new DonorShaft { Zones = [Zone(ZoneKind.Taper, 400, 30, end: 22)] };
        var outer = new DonorShaft { Zones = [Zone(ZoneKind.Taper, 400, 30, end: 20)] };
        var result = Solve(inner, outer, Ask(500.8));

        // 30 − 8x/400 = 30 − 10(500 − x)/400.
        Assert.Equal(500 * 10.0 / 18, result.InnerAt!.Value, 9);
        Assert.Equal(0, result.DiameterStep!.Value, 9);
    }

    [Fact]
    public void Solve_WithSleeve_KeepsItsEndsClearToo()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400), Ask(500, sleeve: 120));

        var made = result.Made!;
        Assert.Equal(made.WeldAt - 60, made.SleeveFrom!.Value, 9);
        Assert.Equal(made.WeldAt + 60, made.SleeveTo!.Value, 9);
        Assert.Equal(38, made.SleeveOutside);
        var seat = result.Checks.Single(c =>
            c.Code == "sleeve-clear-of-boot-seat" && c.End == ShaftEnd.Inner
        );
        // Sleeve end at 249.6 + 0.4 − 60; the seat ends at 105.
        Assert.Equal(85, seat.Has, 9);
        Says(result, "boot-order", Severity.Caution);
    }

    [Fact]
    public void Solve_ChosenCutTooNearTheBootSeat_SaysHowFarToMoveItAndWhichWay()
    {
        // The boot needs 40 beyond its seat at 105: the first sound cut is 145.
        var result = Solve(Usual(25, 400), Usual(24, 400), Ask(500, at: 139));

        var stop = Says(result, "cut-breaks-rule", Severity.Stop);
        Assert.Contains("Move the cut 6.0\u00a0mm towards the wheel", stop.Action.ToString());
        Assert.False(result.Proposed);
        Assert.False(result.Checks.Single(c => c.Code == "boot-slides" && !c.Holds).Holds);
        Assert.NotNull(result.Made);
    }

    [Fact]
    public void Solve_ChosenCutInAGroove_SaysHowFarItIsFromBar()
    {
        var result = Solve(Usual(25, 400), Usual(24, 600), Ask(500, at: 41.5));

        var inBar = result.Checks.Single(c => c.Code == "cut-in-bar" && c.End == ShaftEnd.Inner);
        Assert.Equal(-1.5, inBar.Has, 9);
        Says(result, "cut-breaks-rule", Severity.Stop);
    }

    [Fact]
    public void Solve_ChosenCutLeavesTooLittleOfTheOther_SaysWhatIsMeasured()
    {
        var result = Solve(Usual(25, 400), Usual(24, 200), Ask(500, at: 150));

        var stop = Says(result, "cut-breaks-rule", Severity.Stop);
        Assert.Contains("349.2\u00a0mm", stop.Text.ToString());
        Assert.Null(result.Made);
        Assert.Null(result.OuterDiameter);
    }

    [Fact]
    public void Solve_DonorsTooShort_SaysByHowMuch()
    {
        var result = Solve(Usual(25, 200), Usual(24, 250), Ask(500));

        var stop = Says(result, "no-place-to-cut", Severity.Stop);
        Assert.Contains("too short by 49.2\u00a0mm", stop.Text.ToString());
        Assert.Null(result.InnerAt);
        Assert.Null(result.Made);
        // 145 + 145 … 200 + 250, and 0.8 of the gap stays.
        Assert.Equal(290.8, result.OverallPossible!.Value.Low, 9);
        Assert.Equal(450.8, result.OverallPossible.Value.High, 9);
    }

    [Fact]
    public void Solve_ShaftTooShortForTheRules_NamesTheRuleAndWhatIsLacking()
    {
        // 290.8 is the shortest; at 280.8 each side lacks 5.
        var result = Solve(Usual(25, 400), Usual(24, 400), Ask(280.8));

        var stop = Says(result, "no-place-to-cut", Severity.Stop);
        Assert.Contains("5.0\u00a0mm is lacking", stop.Text.ToString());
        Assert.Contains("boot can slide", stop.Text.ToString());
    }

    [Fact]
    public void Solve_LengthInAHoleBetweenTwoThatCanBeMade_NamesBoth()
    {
        var inner = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 100, 25),
                Zone(ZoneKind.Step, 200, 30),
                Zone(ZoneKind.Plain, 300, 25),
            ],
        };
        var outer = new DonorShaft { Zones = [Zone(ZoneKind.Plain, 60, 25)] };
        // Inner 20…100 and 220…300, outer 20…60: sums 40…160 and 240…360.
        var result = Solve(inner, outer, Ask(200.8));

        var stop = Says(result, "no-place-to-cut", Severity.Stop);
        Assert.Contains("160.8\u00a0mm and 240.8\u00a0mm", stop.Action.ToString());
        Assert.Equal(new Band(40.8, 360.8), result.OverallPossible);
    }

    [Fact]
    public void Solve_NoLengthKnown_StillSaysWhatLengthsAreToBeHad()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400), new CutInput());

        Says(result, "overall-unknown", Severity.Caution);
        Says(result, "cut-assumed", Severity.Note);
        Assert.NotNull(result.OverallPossible);
        Assert.Null(result.InnerAt);
    }

    [Fact]
    public void Solve_LengthFromTheCar_IsTakenAndATypedOneGoesFirst()
    {
        var fromCar = Solve(Usual(25, 400), Usual(24, 400), new CutInput(), 500);
        var both = Solve(Usual(25, 400), Usual(24, 400), Ask(510), 500);

        Assert.Equal(500, fromCar.Overall);
        Assert.Equal(510, both.Overall);
        Says(both, "two-lengths", Severity.Caution);
    }

    [Fact]
    public void Solve_OneDonorMissing_SaysSo()
    {
        var result = CutSolver.Solve(
            DonorsSolver.Solve(new DonorsInput { InnerEnd = Usual(25, 400) }),
            Ask(500),
            null
        );

        Says(result, "cut-needs-donors", Severity.Caution);
        Assert.Empty(result.Checks);
    }

    [Fact]
    public void Solve_HeatOnAHardenedZone_IsACostAndSaysOverWhatLength()
    {
        var hard = Usual(25, 400) with { Hardened = [Hard(0, 240, 3)] };
        var result = Solve(hard, Usual(24, 400), Ask(500, at: 250));

        // Heat from 230 to 250, hard to 240.
        var check = result.Checks.Single(c => c.Code == "heat-clear-of-hardened");
        Assert.False(check.Heavy);
        Assert.Equal(-10, check.Has, 9);
        Assert.Contains(
            "10.0\u00a0mm",
            Says(result, "hardened-softened", Severity.Caution).Text.ToString()
        );
        Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Stop);
    }

    [Fact]
    public void Solve_SleeveAndWeldHeatOnAHardenedZone_CountsSharedMetalOnce()
    {
        var hard = Usual(25, 400) with { Hardened = [Hard(0, 400, 3)] };
        var apart = Solve(hard, Usual(24, 400), Ask(500, at: 250, sleeve: 120));
        var shared = Solve(hard, Usual(24, 400), Ask(500, at: 250, sleeve: 60));

        // Sleeve end 60 − 0.4 from the face, ±20, and the weld's 20: 40 + 20. With 30 − 0.4 they meet: 49.6 in all.
        Assert.Equal(-60, apart.Checks.Single(c => c.Code == "heat-clear-of-hardened").Has, 9);
        Assert.Equal(-49.6, shared.Checks.Single(c => c.Code == "heat-clear-of-hardened").Has, 9);
    }

    [Fact]
    public void Solve_SleeveShorterThanTheHeat_Cautions()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400), Ask(500, sleeve: 30));

        Says(result, "sleeve-short", Severity.Caution);
    }

    [Fact]
    public void Solve_BarTooThickForTheSleeve_IsNotUnderIt()
    {
        // The sleeve of 30 takes bar up to 28; the bar is 28.5 up to 200 and 25 beyond.
        var inner = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 150, 28.5),
                Zone(ZoneKind.Taper, 200, 28.5, end: 25),
                Zone(ZoneKind.Plain, 400, 25),
            ],
        };
        var ask = Ask(500, sleeve: 60) with { SleeveOutside = Mm(30), HeatBand = Mm(10) };
        var result = Solve(inner, Usual(25, 450), ask with { InnerCutAt = Mm(180) });

        // 28 stands at 150 + 50·0.5/3.5.
        var over = result.Checks.Single(c => c.Code == "sleeve-over-bar");
        Assert.Equal(180 - 29.6 - (150 + 50 * 0.5 / 3.5), over.Has, 9);
        Assert.False(over.Holds);
        Says(result, "sleeve-on-taper", Severity.Caution);
        var proposed = Solve(inner, Usual(25, 450), ask);
        Assert.True(proposed.InnerAt >= 150 + 50 * 0.5 / 3.5 + 29.6 - 1e-9);
    }

    [Fact]
    public void Solve_BootThatPassesTheSleeve_NeedsNoRoomBeforeIt()
    {
        var tight = Ask(500, sleeve: 120) with { InnerBootBore = Mm(30) };
        var wide = tight with { InnerBootBore = Mm(40), OuterBootBore = Mm(40) };

        Assert.Contains(
            Solve(Usual(25, 400), Usual(24, 400), tight).Checks,
            c => c.Code == "boot-slides" && c.End == ShaftEnd.Inner
        );
        var result = Solve(Usual(25, 400), Usual(24, 400), wide);
        Assert.DoesNotContain(result.Checks, c => c.Code == "boot-slides");
        Assert.DoesNotContain(result.Findings, f => f.Code == "boot-order");
    }

    [Fact]
    public void Solve_StretchNotMeasured_IsNeitherCutNorHeated()
    {
        var inner = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 100, 25),
                new() { Until = Mm(250) },
                Zone(ZoneKind.Plain, 400, 25),
            ],
        };
        var inside = Solve(inner, Usual(24, 400), Ask(500, at: 240));
        var proposed = Solve(inner, Usual(24, 400), Ask(500));

        Assert.Contains(inside.Checks, c => c.Code == "cut-in-bar" && !c.Holds);
        Assert.True(proposed.InnerAt is >= 270 - 1e-9 or <= 100 + 1e-9);
    }

    [Theory]
    [InlineData("boot-seat-stays", 70)]
    [InlineData("spline-stays", 30)]
    public void Solve_CutThatTakesAwayTheJointsOwnPart_BreaksARule(string code, double at)
    {
        var result = Solve(Usual(25, 400), Usual(24, 600), Ask(500, at));

        Assert.Contains(result.Checks, c => c.Code == code && c.End == ShaftEnd.Inner && !c.Holds);
    }

    [Fact]
    public void Solve_ShaftWalkedToItsOtherJoint_MayLoseThatJointsSpline()
    {
        var inner = Usual(25, 400) with
        {
            Zones = [.. Usual(25, 360).Zones, Zone(ZoneKind.Spline, 400, 26, root: 24)],
        };
        var result = Solve(inner, Usual(24, 400), Ask(500));

        Assert.Equal(249.6, result.InnerAt!.Value, 9);
    }

    [Fact]
    public void Solve_BigDifferenceOfDiameters_Cautions()
    {
        Says(Solve(Usual(28, 400), Usual(24, 400), Ask(500)), "big-step", Severity.Caution);
    }
}
