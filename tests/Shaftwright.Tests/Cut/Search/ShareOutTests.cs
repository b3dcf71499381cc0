using CsCheck;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut.Search;

public sealed class ShareOutTests
{
    private const double Lost = 4;

    private static Gen<ShareCut[]> Ways { get; } =
        Gen.Select(
                Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Int[1, 5]),
                Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Int[1, 5]),
                Gen.Int[1, 6],
                Gen.Int[0, 4]
            )
            .Select(t => new ShareCut(
                t.Item1.Item1,
                t.Item1.Item2,
                t.Item1.Item3 * 100,
                t.Item2.Item1,
                t.Item2.Item2,
                t.Item2.Item3 * 100,
                t.Item3 * 100,
                t.Item4 / 10.0
            ))
            .Array[0, 5];

    /// <summary>Few donors and round numbers, so that ends, lengths and strengths are fought over.</summary>
    private static Gen<(ShareCut[][] Ways, int[] Like, double[] Lengths)> Shares { get; } =
        from lengths in Gen.Int[4, 8].Array[4, 4]
        from cuts in Ways.Array[1, 3]
        from spare in Gen.Bool
        select (
            spare ? (ShareCut[][])[cuts[0], .. cuts] : cuts,
            spare
                ? (int[])[0, 0, .. Enumerable.Range(2, cuts.Length - 1)]
                : [.. Enumerable.Range(0, cuts.Length)],
            lengths.Select(l => l * 100.0 + Lost).ToArray()
        );

    private static (int Made, double Carries, double Step) Score(IEnumerable<ShareCut?> plan)
    {
        var made = plan.OfType<ShareCut>().ToList();
        return (
            made.Count,
            made.Select(c => c.Carries).DefaultIfEmpty(0).Min(),
            -made.Sum(c => c.Step)
        );
    }

    /// <summary>No end twice, and what is cut from both ends of one shaft fits on it.</summary>
    private static bool Holds(IEnumerable<ShareCut?> plan, double[] lengths)
    {
        var ends = new List<(int Donor, bool Far, double At)>();
        foreach (var c in plan.OfType<ShareCut>())
        {
            ends.Add((c.Inner, c.InnerFar, c.InnerAt));
            ends.Add((c.Outer, c.OuterFar, c.OuterAt));
        }
        return ends.DistinctBy(e => (e.Donor, e.Far)).Count() == ends.Count
            && ends.GroupBy(e => e.Donor)
                .All(g => g.Count() < 2 || g.Sum(e => e.At) + Lost <= lengths[g.Key]);
    }

    private static IEnumerable<List<ShareCut?>> Every(ShareCut[][] ways)
    {
        IEnumerable<List<ShareCut?>> plans =
        [
            [],
        ];
        foreach (var way in ways)
            plans = plans.SelectMany(p =>
                way.Select(c => (ShareCut?)c).Append(null).Select(c => new List<ShareCut?>(p) { c })
            );
        return plans;
    }

    [Fact]
    public void Solve_SmallShelves_FindsTheBestOfEveryPlanThereIs() =>
        Check.Sample(
            Shares,
            share =>
            {
                var shared = new ShareOut(share.Ways, share.Like, share.Lengths, Lost);
                var plan = shared.Solve();
                Assert.True(shared.Proven);
                Assert.True(Holds(plan, share.Lengths));
                var best = Every(share.Ways).Where(p => Holds(p, share.Lengths)).Max(Score);
                var score = Score(plan);
                Assert.Equal(best.Made, score.Made);
                Assert.Equal(best.Carries, score.Carries);
                Assert.Equal(best.Step, score.Step, tolerance: 1e-9);
            },
            iter: 2000
        );

    [Fact]
    public void Solve_GivenUpEarly_SaysThatItIsNotProven()
    {
        ShareCut[] ways =
        [
            .. Enumerable
                .Range(0, 30)
                .Select(k => new ShareCut(k, false, 100, (k + 1) % 30, true, 100, 500, 1)),
        ];
        var share = new ShareOut(
            [ways, ways, ways],
            [0, 0, 0],
            [.. ways.Select(_ => 500.0)],
            Lost,
            most: 2
        );
        share.Solve();
        Assert.False(share.Proven);
    }

    [Fact]
    public void Solve_TwoSidesFromOneLongAndTwoShortShafts_LetsTheLongOneServeBoth()
    {
        static ShelfDonor On(string id, DonorShaft shaft, bool both) =>
            new()
            {
                Id = id,
                Shaft = shaft,
                Condition = DonorCondition.Sound,
                WalkedEnd = new(),
                FarEnd = both ? new() : null,
            };
        var far = Usual(25, 655);
        var request = new ShelfRequest
        {
            Shelf = new()
            {
                Donors =
                [
                    On(
                        "long",
                        far with
                        {
                            Zones = [.. far.Zones, Zone(ZoneKind.Spline, 700, 26, root: 24)],
                        },
                        both: true
                    ),
                    On("short 1", Usual(25, 300), both: false),
                    On("short 2", Usual(25, 300), both: false),
                ],
            },
            Cut = CutSolverTests.Ask(500),
            Metal = ShelfSearchProperties.Metal,
        };
        var result = ShelfShare.Solve([request, request], spares: 0);
        Assert.True(result.Proven);
        Assert.All(result.Shafts, s => Assert.NotNull(s.Cut));
        Assert.Equal(
            ["long", "long", "short 1", "short 2"],
            result.Shafts.SelectMany(s => new[] { s.Inner!.Id, s.Outer!.Id }).Order()
        );
        // Two spares more have nothing to be made from, and that is said.
        var more = ShelfShare.Solve([request, request], spares: 1);
        Assert.Equal(2, more.Shafts.Count(s => s.Cut is null));
        Assert.Single(more.Findings, f => f.Code == "share-not-all");
    }
}
