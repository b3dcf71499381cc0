using CsCheck;
using Shaftwright.Findings;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>A finished seam by what was measured on it: the published limits, and what becomes of a reading near one.</summary>
public sealed class SeamTests
{
    private static readonly PublishedFile s_limits = PublishedFile.Load("seam-limits");

    public static TheoryData<string> Limits() => PublishedFile.Ids("seam-limits");

    [Theory]
    [MemberData(nameof(Limits))]
    public void Most_OfListedSeams_IsPublished(string id)
    {
        var c = s_limits[id];
        var item = Enum.Parse<SeamItem>(c.Raw("item").GetString()!, ignoreCase: true);
        double Most(SeamLevel level) =>
            SeamLimits
                .Most(
                    item,
                    level,
                    c.Has("t") ? c.Number("t") : null,
                    c.Has("b") ? c.Number("b") : null,
                    c.Has("short")
                )!
                .Value;
        c.Agrees("B", Most(SeamLevel.B));
        c.Agrees("C", Most(SeamLevel.C));
        c.Agrees("D", Most(SeamLevel.D));
    }

    [Fact]
    public void Most_OfAStricterLevel_IsNeverMore() =>
        Gen.Select(
                Gen.Int[0, Enum.GetValues<SeamItem>().Length - 1],
                Gen.Double[0.5, 30],
                Gen.Double[1, 60],
                Gen.Bool
            )
            .Sample(
                (item, depth, width, isShort) =>
                {
                    double Most(SeamLevel l) =>
                        SeamLimits.Most((SeamItem)item, l, depth, width, isShort)!.Value;
                    return Most(SeamLevel.B) <= Most(SeamLevel.C)
                        && Most(SeamLevel.C) <= Most(SeamLevel.D);
                }
            );

    private static SeamLook Sound =>
        new()
        {
            Depth = WeldJobs.Mm(8, 0),
            Undercut = WeldJobs.Mm(0),
            SurfacePore = WeldJobs.Mm(0),
            CapHeight = WeldJobs.Mm(1.5, 0.3),
            CapWidth = WeldJobs.Mm(12, 0.5),
            Offset = WeldJobs.Mm(0.1, 0.1),
            Cracked = false,
        };

    private static SeamResult Solve(SeamLook look, SeamLevel asked = SeamLevel.B) =>
        Assert.Single(WeldJobs.Solve(new() { SeamLevel = asked, Seams = [look] }).Seams);

    [Fact]
    public void SoundSeam_IsLevelBAndStopsNothing()
    {
        var seam = Solve(Sound);
        Assert.Equal((SeamLevel.B, 0), (seam.Level, seam.Missing.Count));
        Assert.DoesNotContain(seam.Findings, f => f.Severity > Severity.Note);
        Assert.Equal("Level B at the butt.", seam.Words.ToString());
    }

    [Theory]
    // Depth 8: B takes 0.4, C 0.5, D 1.0.
    [InlineData(0.25, SeamLevel.B, SeamVerdict.Inside, SeamLevel.B)]
    [InlineData(0.35, SeamLevel.B, SeamVerdict.TooClose, SeamLevel.C)] // 0.35 ± 0.1: it may be over.
    [InlineData(0.45, SeamLevel.B, SeamVerdict.TooClose, SeamLevel.D)]
    [InlineData(0.6, SeamLevel.B, SeamVerdict.Over, SeamLevel.D)]
    [InlineData(0.6, SeamLevel.D, SeamVerdict.Inside, SeamLevel.D)]
    [InlineData(1.2, SeamLevel.D, SeamVerdict.Over, null)]
    public void Undercut_NearALimit_CountsWithWhatTheGaugeCanBeOff(
        double deep,
        SeamLevel asked,
        SeamVerdict verdict,
        SeamLevel? level
    )
    {
        var seam = Solve(Sound with { Undercut = WeldJobs.Mm(deep, 0.1) }, asked);
        var item = seam.Items.Single(i => i.Item == SeamItem.Undercut);
        Assert.Equal((verdict, level), (item.Verdict, item.Level));
        Assert.Equal(level, seam.Level);
        Assert.Equal(
            verdict switch
            {
                SeamVerdict.Over => "seam-over",
                SeamVerdict.TooClose => "seam-too-close",
                _ => null,
            },
            seam.Findings.FirstOrDefault(f => f.Severity > Severity.Note)?.Code
        );
        Assert.Equal(
            verdict == SeamVerdict.Over,
            seam.Findings.Any(f => f.Severity == Severity.Stop)
        );
    }

    [Theory]
    [InlineData("pore", "seam-over")]
    [InlineData("cap", "seam-over")]
    [InlineData("offset", "seam-over")]
    [InlineData("crack", "seam-crack")]
    public void OneThingWrong_StopsAndSaysWhatToDo(string what, string code)
    {
        var seam = Solve(
            what switch
            {
                "pore" => Sound with { SurfacePore = WeldJobs.Mm(0.4) }, // Level B takes none.
                "cap" => Sound with { CapHeight = WeldJobs.Mm(4) },
                "offset" => Sound with { Offset = WeldJobs.Mm(2.5) },
                _ => Sound with { Cracked = true },
            }
        );
        var finding = Assert.Single(seam.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(code, finding.Code);
        Assert.NotEqual(SeamLevel.B, seam.Level);
    }

    [Fact]
    public void NothingMeasured_IsNoLevelAndNamesWhatIsMissing()
    {
        var seam = Solve(new() { Place = SeamPlace.Butt });
        Assert.Null(seam.Level);
        Assert.Equal(5, seam.Missing.Count);
        Assert.DoesNotContain(seam.Findings, f => f.Severity > Severity.Note);
    }

    [Fact]
    public void UnknownDepth_LeavesOpenWhatHangsOnIt()
    {
        var seam = Solve(Sound with { Depth = null, Undercut = WeldJobs.Mm(0.3) });
        Assert.Null(seam.Level);
        Assert.Equal(
            SeamVerdict.NotKnown,
            seam.Items.Single(i => i.Item == SeamItem.Undercut).Verdict
        );
        Assert.Contains(seam.Findings, f => f.Code == "seam-limit-unknown");
    }

    [Fact]
    public void Depth_NotTyped_IsTheLessOfGrooveAndFusion()
    {
        WeldInput weld = new()
        {
            InnerDiameter = WeldJobs.Mm(25),
            OuterDiameter = WeldJobs.Mm(25),
            Preparation = new() { Flat = WeldJobs.Mm(9), Bevel = WeldJobs.Degrees(30) },
            Seams = [Sound with { Depth = null }],
        };
        Assert.Equal(8, WeldSolver.Solve(weld).Seams[0].Depth!.Value, 1e-9);
        // The strength counts a fusion of 0.3 of the radius until a sample says better.
        Assert.Equal(
            0.3 * 12.5,
            WeldSolver.Solve(weld, new WeldAround(Strength: new())).Seams[0].Depth!.Value,
            1e-9
        );
    }

    [Fact]
    public void TwoLooks_AtOneSeam_TheLastCounts()
    {
        var bad = Sound with { Undercut = WeldJobs.Mm(1.5) };
        SeamResult Last(params SeamLook[] looks) =>
            Assert.Single(WeldJobs.Solve(new() { Seams = looks }).Seams);
        Assert.Equal(SeamLevel.B, Last(bad, Sound).Level);
        Assert.Null(Last(Sound, bad).Level);
    }
}
