using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut.Search;

/// <summary>The search against every cut of a fine grid, over random shelves.</summary>
public sealed class ShelfSearchProperties
{
    internal static HeatedMetal Metal { get; } =
        new(
            (steel, _) => ShearYield.Softened(steel).Low,
            (yield, d) => RoundSection.YieldTorque(yield, d),
            (yield, d) => RoundSection.FusedRingYieldTorque(yield, d, 0.15 * d)
        );

    private static Gen<ShelfDonor> Donor { get; } =
        from shaft in Tests.Donors.Walked.Random
        from ends in Gen.Int[1, 3]
        from steel in Gen.Enum<SteelClass>()
        from carried in Gen.Int[300, 900]
        from gone in Gen.Int[0, 12]
        select new ShelfDonor
        {
            Shaft = shaft with { Steel = steel },
            WalkedEnd = (ends & 1) != 0 ? new() : null,
            FarEnd = (ends & 2) != 0 ? new() : null,
            Carried = Measured<Torque>.Of(carried, Torque.NewtonMetre),
            Gone = gone == 0 ? [new() { From = Mm(70), To = Mm(90) }] : [],
        };

    private static Gen<ShelfRequest> Shelves { get; } =
        from donors in Donor.Array[2, 3]
        from overall in Gen.Int[60, 320]
        from band in Gen.Int[2, 15]
        from sleeve in Gen.Int[0, 50]
        from outside in Gen.Int[26, 36]
        from room in Gen.Int[0, 20]
        select new ShelfRequest
        {
            Shelf = new() { Donors = [.. donors.Select((d, i) => d with { Id = $"{i}" })] },
            Cut = new()
            {
                OverallLength = Mm(overall),
                RootGap = Mm(1.5),
                Shrinkage = Mm(1.1),
                HeatBand = Mm(band),
                SleeveLength = sleeve < 20 ? null : Mm(sleeve),
                SleeveOutside = sleeve < 20 ? null : Mm(outside),
                BootSlideRoom = Mm(room),
            },
            Torque = 500_000,
            Metal = Metal,
        };

    [Fact]
    public void Solve_AnyShelf_IsNeverWorseThanEveryCutOfAFineGrid() =>
        Check.Sample(
            Shelves,
            request =>
            {
                var result = ShelfSearch.Solve(request);
                var every = new EveryCut(request);
                var least = every.Least(grid: 2.3);
                foreach (var (goal, cost) in least)
                {
                    var sign = goal == SearchGoal.Strength ? -1 : 1;
                    var best = result
                        .Choices.SelectMany(c => c.Goals)
                        .First(g => g.Goal == goal)
                        .Best;
                    Assert.True(
                        sign * best <= cost + 1e-6 + 1e-9 * Math.Abs(cost),
                        $"{goal}: the grid finds {cost:R}, the search {sign * best:R}"
                    );
                }
            },
            iter: 1500
        );

    [Fact]
    public void Solve_AnyShelf_ChoosesCutsThatKeepEveryRuleAndComeToWhatIsSaid() =>
        Check.Sample(
            Shelves,
            request =>
            {
                var result = ShelfSearch.Solve(request);
                var every = new EveryCut(request);
                foreach (var choice in result.Choices)
                {
                    var again = every.Judge(choice);
                    Assert.True(again[0].Spare >= -1e-6, $"a rule fails by {again[0].Spare:R}");
                    foreach (var g in choice.Goals)
                    {
                        var cost = g.Goal == SearchGoal.Strength ? -g.Value : g.Value;
                        Assert.True(
                            again.Exists(t =>
                                Math.Abs(t.Cost(g.Goal) - cost)
                                <= 1e-6 * Math.Max(1, Math.Abs(cost))
                            ),
                            $"{g.Goal} at {choice.InnerAt:R}: {cost:R} said, {again[0].Cost(g.Goal):R} found"
                        );
                    }
                }
                // The best of a goal is had by the entry that leads in it, to within what cannot be told apart: so the best
                // is no better than a cut that was judged again just now explains.
                foreach (var goal in result.Choices.SelectMany(c => c.Goals).Select(g => g.Goal))
                {
                    var led = result
                        .Choices.SelectMany(c => c.Goals)
                        .Where(g => g.Goal == goal)
                        .ToList();
                    Assert.Contains(led, g => g.Leads);
                }
            },
            iter: 1500
        );

    [Fact]
    public void Solve_AnyShelf_SaysWhyOfEveryShaftThatIsNotChosen() =>
        Check.Sample(
            Shelves,
            request =>
            {
                var result = ShelfSearch.Solve(request);
                var chosen = result
                    .Choices.SelectMany(c => new[] { c.Inner.Id, c.Outer.Id })
                    .Distinct();
                Assert.Equal(
                    request.Shelf.Donors.Select(d => d.Id).Except(chosen),
                    result.Rejected.Select(r => r.Id)
                );
                Assert.All(result.Rejected, r => Assert.NotEmpty(r.Why.ToString()));
                Assert.Equal(
                    result.Choices.Count == 0,
                    result.Findings.Any(f => f.Severity == Severity.Stop)
                );
            },
            iter: 1000
        );

    [Fact]
    public void Solve_ShelfInAnotherOrder_FindsTheSameBest() =>
        Check.Sample(
            Shelves,
            request =>
            {
                static Dictionary<SearchGoal, double> Best(ShelfResult r) =>
                    r
                        .Choices.SelectMany(c => c.Goals)
                        .DistinctBy(g => g.Goal)
                        .ToDictionary(g => g.Goal, g => g.Best);
                var turned = request with
                {
                    Shelf = new() { Donors = [.. request.Shelf.Donors.Reverse()] },
                };
                var (a, b) = (Best(ShelfSearch.Solve(request)), Best(ShelfSearch.Solve(turned)));
                Assert.Equal(a.Keys.Order(), b.Keys.Order());
                foreach (var (goal, value) in a)
                    Assert.Equal(value, b[goal], tolerance: 1e-6 * Math.Max(1, Math.Abs(value)));
            },
            iter: 1000
        );
}
