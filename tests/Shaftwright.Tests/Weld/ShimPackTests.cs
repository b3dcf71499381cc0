using CsCheck;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

public sealed class ShimPackTests
{
    public static TheoryData<string> Cases() => PublishedFile.Ids("blade-pairs");

    [Theory]
    [MemberData(nameof(Cases))]
    public void Packs_FromANamedSet_AreTheFewestLeavesOfTheCountedPairs(string id)
    {
        var c = PublishedFile.Load("blade-pairs")[id];
        var set = Enum.Parse<BladeSet>(c.Raw("set").GetString()!);
        var target = c.Number("target");

        // The oracle counts as the published count does; then the solver agrees with the oracle.
        var exhaustive = new ExhaustiveShims(WeldJobs.Blades(set.ToString()), target, 4);
        c.Agrees("packs", exhaustive.ExactPacks);
        c.Agrees("pairs", exhaustive.ExactPairs);

        var packs = WeldJobs.Solve(WeldJobs.ForShim(target) with { BladeSet = set }).Packs!;
        c.Agrees("leaves", packs.Left.Leaves.Count + packs.Right.Leaves.Count);
        Assert.Equal(0, packs.Error);
        Assert.Equal(0, packs.AxisError);
        Assert.Equal(target, packs.Left.Thickness, 1e-12);
        Assert.Equal(target, packs.Right.Thickness, 1e-12);
    }

    [Fact]
    public void Packs_FromRandomBlades_AreAsGoodAsTryingEveryPair()
    {
        // Hundredths, and thou as a decimal: sums that tie and sums that do not; and a few thicknesses owned many times.
        var blade = Gen.OneOf(
            Gen.Int[1, 4].Select(i => i / 10.0),
            Gen.Int[1, 100].Select(i => i / 100.0),
            Gen.Int[1, 40].Select(i => Math.Round(i * 0.0254, 4))
        );
        Gen.Select(blade.Array[2, 9], Gen.Int[4, 300], Gen.Int[1, 6])
            .Sample(
                (blades, hundredths, mostLeaves) =>
                {
                    var shim = hundredths / 100.0;
                    var found = WeldJobs.Solve(
                        WeldJobs.ForShim(shim) with
                        {
                            BladeSet = BladeSet.Listed,
                            Blades = [.. blades.Select(b => WeldJobs.Mm(b))],
                            MostLeaves = mostLeaves,
                        }
                    );
                    var best = new ExhaustiveShims(blades, shim, mostLeaves).Best;
                    var worst = best?.Item3 ?? decimal.MaxValue;
                    if (worst > (decimal)WeldSolver.MostPackError || worst >= (decimal)shim)
                    {
                        Assert.Null(found.Packs);
                        Assert.True(found.Has("no-packs"));
                        if (worst < (decimal)shim)
                            Assert.Equal((double)worst, Math.Abs(found.NearestError!.Value), 1e-9);
                        return;
                    }
                    var packs = found.Packs!;
                    AreOnHand(packs, blades, mostLeaves);
                    var (l, r) = (Error(packs.Left, shim), Error(packs.Right, shim));
                    Assert.Equal(
                        best,
                        ExhaustiveShims.Rank(
                            packs.Left.Leaves.Count + packs.Right.Leaves.Count,
                            Math.Max(Math.Abs(l), Math.Abs(r)),
                            Math.Abs(l - r)
                        )
                    );
                    Assert.Equal(
                        (double)Math.Max(Math.Abs(l), Math.Abs(r)),
                        Math.Abs(packs.Error),
                        1e-9
                    );
                },
                iter: 1500,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Packs_WhenAThinErrorSavesLeaves_TakeFewerLeaves()
    {
        // 0.53 can be had exactly from four leaves; two leaves miss it by 0.01, which nobody can tell from zero.
        double[] blades = [0.52, 0.54, 0.50, 0.03, 0.45, 0.08];
        var found = WeldJobs.Solve(
            WeldJobs.ForShim(0.53) with
            {
                BladeSet = BladeSet.Listed,
                Blades = [.. blades.Select(b => WeldJobs.Mm(b))],
            }
        );
        Assert.Equal(1.06, found.Packs!.Left.Thickness + found.Packs.Right.Thickness, 1e-9);
        Assert.Equal(2, found.Packs.Left.Leaves.Count + found.Packs.Right.Leaves.Count);
        Assert.Equal(0.01, Math.Abs(found.Packs.Error), 1e-9);
        Assert.False(found.Has("pack-error"));
    }

    [Fact]
    public void Packs_FromFortyBladesAndSixLeaves_AreFoundWhateverTheyAsk()
    {
        // Two metric sets, and awkward targets: nothing, one leaf, the most that twelve leaves can give, and beyond.
        Measured<Distance>[] blades =
        [
            .. WeldJobs
                .Blades("Metric20")
                .Concat(WeldJobs.Blades("Metric20"))
                .Select(b => WeldJobs.Mm(b)),
        ];
        foreach (
            var (shim, leaves) in new[] { (0.55, 2), (1.95, 4), (2.0, 5), (2.05, 6), (5.15, 12) }
        )
        {
            var found = WeldJobs.Solve(
                WeldJobs.ForShim(shim) with
                {
                    BladeSet = BladeSet.Listed,
                    Blades = blades,
                    MostLeaves = 6,
                }
            );
            Assert.Equal(0, found.Packs!.Error);
            Assert.Equal(leaves, found.Packs.Left.Leaves.Count + found.Packs.Right.Leaves.Count);
        }
        var beyond = WeldJobs.Solve(
            WeldJobs.ForShim(5.5) with
            {
                BladeSet = BladeSet.Listed,
                Blades = blades,
                MostLeaves = 6,
            }
        );
        // Twice 1.00 to 0.75 make 10.5, so the worse of two packs is 0.25 thin at best.
        Assert.Null(beyond.Packs);
        Assert.Equal(-0.25, beyond.NearestError!.Value, 1e-9);
    }

    [Theory]
    [InlineData(1, 1.5)]
    [InlineData(3, 2.4)]
    public void Packs_WhenEveryOneNeedsTheSameThickBlades_AreRefusedWithoutTryingAllPairs(
        int thick,
        double shim
    )
    {
        // Hundreds of thousands of packs, every two of which share a blade: all against all would take hours.
        Measured<Distance>[] blades =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(i => WeldJobs.Mm(i < thick ? 1 + i / 100.0 : (50 + 2 * i) / 1000.0)),
        ];
        var found = WeldJobs.Solve(
            WeldJobs.ForShim(shim) with
            {
                BladeSet = BladeSet.Listed,
                Blades = blades,
                MostLeaves = 6,
            }
        );
        Assert.Null(found.Packs);
        Assert.True(found.Has("no-packs"));
    }

    [Fact]
    public void Packs_WhenNoBladesCanDo_AreNotSuggestedAndTheBuyIsNamed()
    {
        var found = WeldJobs.Solve(
            WeldJobs.ForShim(1.7) with
            {
                BladeSet = BladeSet.Metric13,
                MostLeaves = 1,
            }
        );
        Assert.Null(found.Packs);
        Assert.Equal(-0.8, found.NearestError!.Value, 1e-9);
        var finding = found.Findings.Single(f => f.Code == "no-packs");
        Assert.Equal(Severity.Caution, finding.Severity);
        Assert.Contains("0.80\u00a0mm too thin", finding.Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("1.70\u00a0mm thick", finding.Action.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Packs_FromOneBladeOrNone_AreNotSuggested()
    {
        var none = WeldJobs.ForShim(0.5) with { BladeSet = BladeSet.Listed };
        Assert.True(WeldJobs.Solve(none).Has("no-blades"));
        var one = WeldJobs.Solve(none with { Blades = [WeldJobs.Mm(0.5)] });
        Assert.Null(one.Packs);
        Assert.Null(one.NearestError);
        Assert.True(one.Has("no-packs"));
        Assert.Equal(0.5, one.Shim!.Value, 1e-12);
    }

    [Fact]
    public void Packs_WithBladesListedAndNoSetNamed_AreMadeOfTheListed()
    {
        var listed = WeldJobs.ForShim(0.45) with
        {
            Blades = [WeldJobs.Mm(0.05), WeldJobs.Mm(0.4), WeldJobs.Mm(0.42)],
        };
        var packs = WeldJobs.Solve(listed).Packs!;
        Assert.All(
            packs.Left.Leaves.Concat(packs.Right.Leaves),
            b => Assert.Contains(listed.Blades, own => own.Value == b)
        );
        // A set that is named is what was asked for; nothing said and nothing listed is the set of 20.
        Assert.Equal(
            0,
            WeldJobs.Solve(listed with { BladeSet = BladeSet.Metric20 }).Packs!.Error,
            1e-12
        );
        Assert.Equal(0, WeldJobs.Solve(WeldJobs.ForShim(0.45)).Packs!.Error, 1e-12);
    }

    [Fact]
    public void Packs_OfManyLeaves_AreCautioned()
    {
        var thin = Enumerable.Repeat(WeldJobs.Mm(0.10), 8).ToArray();
        var found = WeldJobs.Solve(
            WeldJobs.ForShim(0.4) with
            {
                BladeSet = BladeSet.Listed,
                Blades = thin,
            }
        );
        Assert.Equal(8, found.Packs!.Left.Leaves.Count + found.Packs.Right.Leaves.Count);
        Assert.True(found.Has("many-leaves"));
    }

    [Theory]
    [InlineData(0.02, Severity.Caution)]
    [InlineData(0.05, Severity.Note)]
    public void PackError_AgainstTheCaliper_WeighsOnlyWhenTheCaliperKnowsBetter(
        double caliper,
        Severity severity
    )
    {
        var found = WeldJobs.Solve(
            new()
            {
                InnerDiameter = WeldJobs.Mm(26.05, caliper),
                OuterDiameter = WeldJobs.Mm(25, caliper),
                VeeAngle = WeldJobs.Degrees(90),
            }
        );
        // 0.525 lies midway between blades: one of them 0.025 off, whichever is taken.
        Assert.Equal(0.025, Math.Abs(found.Packs!.Error), 1e-9);
        Assert.Equal(severity, found.Findings.Single(f => f.Code == "pack-error").Severity);
    }

    private static decimal Error(ShimPack pack, double shim) =>
        pack.Leaves.Sum(l => (decimal)l) - (decimal)shim;

    private static void AreOnHand(ShimPair packs, double[] blades, int mostLeaves)
    {
        var left = blades.ToList();
        foreach (var leaf in packs.Left.Leaves.Concat(packs.Right.Leaves))
            Assert.True(left.Remove(leaf), $"{leaf} is taken more often than it is owned");
        Assert.InRange(packs.Left.Leaves.Count, 1, mostLeaves);
        Assert.InRange(packs.Right.Leaves.Count, 1, mostLeaves);
        Assert.Equal(packs.Left.Leaves.OrderDescending(), packs.Left.Leaves);
    }
}
