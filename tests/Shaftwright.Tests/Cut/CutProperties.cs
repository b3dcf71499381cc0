using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Tests.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut;

public sealed class CutProperties
{
    private static Gen<(DonorShaft Inner, DonorShaft Outer, CutInput Cut)> Jobs { get; } =
        from inner in Walked.Random
        from outer in Walked.Random
        from share in Gen.Int[20, 95]
        from band in Gen.Int[2, 20]
        from sleeve in Gen.Int[0, 60]
        from outside in Gen.Int[26, 36]
        from room in Gen.Int[0, 30]
        let together = inner.Zones[^1].Until!.Value + outer.Zones[^1].Until!.Value
        where together > 80
        select (
            inner,
            outer,
            new CutInput
            {
                OverallLength = Mm(Math.Round(together * share / 100, 1)),
                RootGap = Mm(1.5),
                Shrinkage = Mm(1.1),
                HeatBand = Mm(band),
                SleeveLength = sleeve < 20 ? null : Mm(sleeve),
                SleeveOutside = sleeve < 20 ? null : Mm(outside),
                BootSlideRoom = Mm(room),
            }
        );

    private static CutResult Solve((DonorShaft Inner, DonorShaft Outer, CutInput Cut) job) =>
        CutSolverTests.Solve(job.Inner, job.Outer, job.Cut);

    /// <summary>The heavy rules written down a second time, straight from docs/cut.md: by how much the tightest fails (negative), for one piece.</summary>
    internal static double Spare(DonorProfile donor, double c, CutInput cut)
    {
        double b = cut.HeatBand!.Value,
            reach = cut.SleeveLength is { } l ? l.Value / 2 - 0.2 : 0,
            sleeve = cut.SleeveLength is null ? 0 : reach;
        if (!donor.Stretches.Any(s => Bar(s) && c >= s.From - 1e-9 && c <= s.To + 1e-9))
            return double.NegativeInfinity;
        var spare = c - b - sleeve;
        foreach (var kind in new[] { ZoneKind.Spline, ZoneKind.BootSeat })
        {
            var own = donor.Stretches.Where(s => s.Kind == kind).Take(1).ToList();
            var through = donor.Stretches.Count(s => s.Kind == ZoneKind.Spline) >= 2;
            if (own.Count == 1 && !(through && (own[0].From + own[0].To) / 2 > donor.Length / 2))
                spare = Math.Min(spare, c - own[0].To);
        }
        Stretch? before = null;
        foreach (var s in donor.Stretches.Where(s => s.From < c - 1e-9))
        {
            if (!Bar(s))
                spare = Math.Min(spare, c - s.To - b - sleeve);
            else if (before is { } p && Bar(p) && Math.Abs(p.EndDiameter - s.Diameter) > 0.2)
                spare = Math.Min(spare, c - s.From - b - sleeve);
            if (s.Kind == ZoneKind.BootSeat)
                spare = Math.Min(spare, c - s.To - reach - cut.BootSlideRoom!.Value);
            // Too thick for the sleeve: bar is straight, so it is thickest at an end of what the sleeve covers.
            var (from, to) = (Math.Max(s.From, c - sleeve), Math.Min(s.To, c));
            if (cut.SleeveOutside is { } od && Bar(s) && from < to - 1e-9)
            {
                if (Math.Max(s.At(from), s.At(to)) > od.Value - 2 + 1e-9)
                    return double.NegativeInfinity;
            }
            before = s;
        }
        return spare;

        static bool Bar(Stretch s) => s.Kind is ZoneKind.Plain or ZoneKind.Taper;
    }

    [Fact]
    public void Propose_AnyDonors_IsAsGoodAsADenseSearchOfEveryCut() =>
        Check.Sample(
            Jobs,
            job =>
            {
                var result = Solve(job);
                var donors = DonorsSolver.Solve(Pair(job.Inner, job.Outer));
                var together = job.Cut.OverallLength!.Value - 0.4;
                for (var k = 0; k <= 3000; k++)
                {
                    // Off the round tenths, so that no sample falls on a boundary by chance; a hair inside every rule.
                    var x = together * (k + 0.3137) / 3001;
                    var y = together - x;
                    var spare = Math.Min(
                        Spare(donors.InnerEnd!, x, job.Cut),
                        Spare(donors.OuterEnd!, y, job.Cut)
                    );
                    if (spare < 0.5)
                        continue;
                    Assert.NotNull(result.InnerAt);
                    var there = Math.Abs(
                        Diameter(donors.InnerEnd!, x) - Diameter(donors.OuterEnd!, y)
                    );
                    Assert.True(
                        result.DiameterStep <= there + 1e-9,
                        $"{x:R}: step {there:R} beats {result.DiameterStep:R} at {result.InnerAt:R}"
                    );
                }
            },
            iter: 300
        );

    [Fact]
    public void Propose_AnyDonors_KeepsEveryHeavyRule() =>
        Check.Sample(
            Jobs,
            job =>
            {
                var result = Solve(job);
                if (result.InnerAt is not { } x || result.OuterAt is not { } y)
                    return;
                var donors = DonorsSolver.Solve(Pair(job.Inner, job.Outer));
                Assert.All(result.Checks.Where(c => c.Heavy), c => Assert.True(c.Holds, c.Code));
                Assert.True(Spare(donors.InnerEnd!, x, job.Cut) >= -1e-6);
                Assert.True(Spare(donors.OuterEnd!, y, job.Cut) >= -1e-6);
            },
            iter: 2000
        );

    [Fact]
    public void Propose_AndAChosenCutAtTheSamePlace_Agree() =>
        Check.Sample(
            Jobs,
            job =>
            {
                var proposed = Solve(job);
                if (proposed.InnerAt is not { } x)
                    return;
                var chosen = Solve(job with { Cut = job.Cut with { InnerCutAt = Mm(x) } });
                Assert.DoesNotContain(chosen.Findings, f => f.Code == "no-place-to-cut");
                Assert.Equal(proposed.OuterAt!.Value, chosen.OuterAt!.Value, tolerance: 1e-6);
                Assert.Equal(proposed.OverallPossible, chosen.OverallPossible);
            },
            iter: 500
        );

    [Fact]
    public void Solve_MoveOfAChosenCut_LeadsToASoundOne() =>
        Check.Sample(
            Gen.Select(Jobs, Gen.Double[0.1, 0.9]),
            pair =>
            {
                var (job, share) = pair;
                var x = Math.Round(job.Cut.OverallLength!.Value * share, 1);
                var bad = Solve(job with { Cut = job.Cut with { InnerCutAt = Mm(x) } });
                var stop = bad.Findings.SingleOrDefault(f => f.Code == "cut-breaks-rule");
                Assert.Equal(
                    bad.Made is null || bad.Checks.Any(c => c.Heavy && !c.Holds),
                    stop is not null
                );
                // A move is offered exactly when a sound cut exists.
                if (stop is not null)
                    Assert.Equal(
                        Solve(job).InnerAt is not null,
                        stop.Action.ToString().StartsWith("Move the cut", StringComparison.Ordinal)
                    );
            },
            iter: 1000
        );

    [Fact]
    public void Propose_AnyDonors_MakesAShaftOfTheLengthAskedFor() =>
        Check.Sample(
            Jobs,
            job =>
            {
                if (Solve(job).Made is not { } made)
                    return;
                var T = job.Cut.OverallLength!.Value;
                Assert.Equal(T, made.Overall);
                Assert.Equal(0, made.Stretches[0].From);
                Assert.Equal(T, made.Stretches[^1].To);
                Assert.All(
                    made.Stretches.Zip(made.Stretches.Skip(1)),
                    p => Assert.Equal(p.First.To, p.Second.From, tolerance: 1e-9)
                );
                Assert.All(made.Stretches, s => Assert.True(s.Length > -1e-9));
                Assert.Single(made.Stretches, s => s.To == made.WeldAt);
                Assert.Single(made.Stretches, s => s.From == made.WeldAt);
                Assert.All(
                    made.Hardened,
                    h => Assert.True(h.From >= -1e-9 && h.To <= T + 1e-9 && h.To > h.From - 1e-9)
                );
            },
            iter: 1000
        );

    [Fact]
    public void Propose_DonorsSwapped_GivesTheMirroredShaft() =>
        Check.Sample(
            Jobs,
            job =>
            {
                var one = Solve(job);
                var other = Solve((job.Outer, job.Inner, job.Cut));
                Assert.Equal(one.InnerAt is null, other.InnerAt is null);
                if (one.Made is not { } a || other.Made is not { } b)
                    return;
                Assert.Equal(one.DiameterStep!.Value, other.DiameterStep!.Value, tolerance: 1e-8);
                // Two places exactly as good and as near the middle have no mirror rule between them.
                if (Math.Abs(one.InnerAt!.Value - other.OuterAt!.Value) > 1e-6)
                {
                    Assert.Equal(
                        Math.Abs(one.InnerAt.Value - one.OuterAt!.Value),
                        Math.Abs(other.InnerAt!.Value - other.OuterAt.Value),
                        tolerance: 1e-6
                    );
                    return;
                }
                Assert.Equal(a.WeldAt, b.Overall - b.WeldAt, tolerance: 1e-6);
                Assert.Equal(a.Stretches.Count, b.Stretches.Count);
                Assert.Equal(a.Hardened.Count, b.Hardened.Count);
            },
            iter: 1000
        );

    [Fact]
    public void Propose_InchTypedPlan_ChangesNothing() =>
        Check.Sample(
            Jobs,
            job =>
            {
                var inch = job.Cut with
                {
                    OverallLength = Inches(job.Cut.OverallLength!.Value),
                    HeatBand = Inches(job.Cut.HeatBand!.Value),
                };
                var (a, b) = (Solve(job), Solve(job with { Cut = inch }));
                Assert.Equal(a.InnerAt is null, b.InnerAt is null);
                if (a.DiameterStep is { } step)
                    Assert.Equal(step, b.DiameterStep!.Value, tolerance: 1e-6);
            },
            iter: 500
        );

    [Fact]
    public void OverallPossible_LengthsOutsideIt_HaveNoPlace() =>
        Check.Sample(
            Gen.Select(Jobs, Gen.Double[0.01, 30]),
            pair =>
            {
                var (job, off) = pair;
                if (Solve(job).OverallPossible is not { } band)
                    return;
                CutResult At(double T) =>
                    CutSolver.Solve(
                        DonorsSolver.Solve(Pair(job.Inner, job.Outer)),
                        job.Cut with
                        {
                            OverallLength = null,
                        },
                        T
                    );
                Assert.Null(At(band.Low - off).InnerAt);
                Assert.Null(At(band.High + off).InnerAt);
                Assert.NotNull(At(band.Low).InnerAt);
                Assert.NotNull(At(band.High).InnerAt);
            },
            iter: 500
        );

    private static double Diameter(DonorProfile donor, double c) =>
        donor.Stretches.First(s => c >= s.From && c <= s.To).At(c);

    private static Shaftwright.Measures.Measured<Shaftwright.Measures.Distance> Inches(double mm) =>
        Shaftwright.Measures.Measured<Shaftwright.Measures.Distance>.Of(
            mm / 25.4,
            Shaftwright.Measures.Distance.Inch
        );
}
