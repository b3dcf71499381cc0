using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>How two pieces of different diameter are brought onto one axis in a vee; and, through its own solvers, the groove, the
/// tacks and the heat.</summary>
/// <remarks>
/// <para>In a vee of any angle a bar of radius r with a shim t on both faces stands where a bar of radius r + t stands without.
/// So the smaller piece (d) comes level with the larger (D) on shims of t = (D − d)/2, whatever the angle; also common workshop
/// practice, no source. It holds for one vee, or for two cut alike whose floors line up.</para>
/// <para>Uncertainty: u(t) = ½ √(u²(D) + u²(d)), U = 2u. Source: JCGM 100:2008 (GUM), 5.1.2; ± read as a rectangular
/// half-width, 4.3.7. The two readings count as independent; with one caliper for both their common error falls out, so this
/// errs to the careful side.</para>
/// <para>Check values: Published/vee-shims.json, Published/blade-pairs.json.</para>
/// </remarks>
public static class WeldSolver
{
    /// <summary>Error of a pack above which it is not offered, mm. In a 90° vee two packs this far off leave the axes up to
    /// 0.07 mm apart, which is 0.14 mm of run-out: all of what is usually accepted after the butt, spent before the first tack.</summary>
    public const double MostPackError = 0.05;

    /// <summary>Shim above which blades are the wrong tool, mm. Common practice, no source.</summary>
    public const double MostShim = 3;

    /// <summary>Leaves in a pack above which it is said that it springs. Common practice, no source.</summary>
    public const int EasyLeaves = 3;

    private static readonly double[] s_metric20 =
    [
        .. Enumerable.Range(1, 20).Select(i => i * 5 / 100.0),
    ];

    private static readonly double[] s_metric13 =
    [
        0.05,
        0.10,
        0.15,
        0.20,
        0.25,
        0.30,
        0.40,
        0.50,
        0.60,
        0.70,
        0.80,
        0.90,
        1.00,
    ];

    /// <summary>Solves the weld: set-up, preparation, heat. A diameter that was not typed is taken from the cut.</summary>
    /// <param name="weld">What is known of it.</param>
    /// <param name="around">What the stages before it say; null for nothing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="weld"/> is null.</exception>
    public static WeldResult Solve(WeldInput weld, WeldAround? around = null)
    {
        ArgumentNullException.ThrowIfNull(weld);
        around ??= new WeldAround();
        var setUp = SetUp(weld, around.Cut);
        var (preparation, prepared) = PreparationSolver.Solve(weld, around);
        var tacks = TackSolver.Solve(weld.Tacks);
        var heat = HeatSolver.Solve(weld, around);
        var seams = SeamSolver.Solve(weld, around, preparation);
        return setUp with
        {
            Preparation = preparation,
            PreparationFindings = prepared,
            Tacks = tacks,
            Heat = heat,
            Seams = seams,
            SetUpFindings = setUp.Findings,
            Findings =
            [
                .. setUp.Findings,
                .. prepared,
                .. tacks?.Findings ?? [],
                .. heat.PreheatFindings,
                .. heat.WeldFindings,
                .. heat.TemperFindings,
                .. seams.SelectMany(s => s.Findings),
            ],
        };
    }

    private static WeldResult SetUp(WeldInput weld, CutResult? cut)
    {
        var advice = new WeldAdvice();
        List<TaperStand> tapers =
        [
            .. new[] { ShaftEnd.Inner, ShaftEnd.Outer }
                .Select(e => PackingSolver.Taper(weld, e))
                .OfType<TaperStand>(),
        ];
        advice.Tapers(tapers);
        var inner = weld.InnerDiameter?.Value ?? cut?.InnerDiameter;
        var outer = weld.OuterDiameter?.Value ?? cut?.OuterDiameter;
        if (inner is not { } innerD || outer is not { } outerD)
        {
            advice.DiametersMissing(inner is null, outer is null);
            return new() { Tapers = tapers, Findings = advice.Findings };
        }
        if (weld.InnerDiameter is null || weld.OuterDiameter is null)
            advice.DiametersFromCut(weld.InnerDiameter is null, weld.OuterDiameter is null);

        var plan = PackingSolver.Plan(weld, innerD, outerD);
        var own = weld is not { InnerVee: null, OuterVee: null } && IsOwn(weld);
        if (own && plan is null)
        {
            advice.VeesUnlike();
            return new() { Tapers = tapers, Findings = advice.Findings };
        }
        var alike = !own;
        var vee = alike ? weld.VeeAngle?.Value : plan!.VeeAngle;
        var shim = alike ? Math.Abs(innerD - outerD) / 2 : plan!.Lift * Math.Sin(plan.VeeAngle / 2);
        var uncertainty = alike
            ? 2
                * 0.5
                * Math.Sqrt(
                    Square(Uncertainty(WeldFields.InnerDiameter, weld.InnerDiameter))
                        + Square(Uncertainty(WeldFields.OuterDiameter, weld.OuterDiameter))
                )
            : plan!.LiftUncertainty * Math.Sin(plan.VeeAngle / 2);
        if (uncertainty > MostPackError)
            advice.CaliperTooCoarse(uncertainty);

        var answer = new WeldResult
        {
            Shim = shim,
            ShimUncertainty = uncertainty,
            UnderBlock = vee is { } a ? Vee.UnderBlock(shim, a) : null,
            OneFaceError = vee is { } b ? Vee.OneFaceAside(shim, b) : null,
            Tapers = tapers,
            Findings = advice.Findings,
        };
        // Pieces that the caliper cannot tell apart need no shim, and no blade could make one.
        if (shim <= Math.Max(uncertainty, ShimSearch.GoodEnough))
        {
            advice.Alike(shim, uncertainty);
            advice.CheckAfterTacking();
            return answer;
        }

        var under = alike
            ? innerD < outerD
                ? ShaftEnd.Inner
                : ShaftEnd.Outer
            : plan!.Lower;
        answer = answer with { ShimUnder = under, Packing = plan };
        var (small, large) = (Math.Min(innerD, outerD), Math.Max(innerD, outerD));
        if (!alike)
        {
            advice.OwnVees(plan!);
            small = under == ShaftEnd.Inner ? innerD : outerD;
            large = small + 2 * shim;
        }
        if (shim > MostShim)
            advice.StepTooLarge(shim, small, large);
        answer = WithPacks(answer, weld, vee, advice, shim, small, large);
        advice.WrongWays(shim, vee);
        advice.Way(weld.Packing, plan);
        advice.CheckAfterTacking();
        return answer;
    }

    /// <summary>True when the two vees are not one, or two alike: an angle of its own, or a height that was found.</summary>
    private static bool IsOwn(WeldInput weld)
    {
        var (a, b) = (weld.InnerVee?.Angle ?? weld.VeeAngle, weld.OuterVee?.Angle ?? weld.VeeAngle);
        return weld.InnerVee?.HeightOverBar is not null
            || weld.OuterVee?.HeightOverBar is not null
            || (a is { } i && b is { } o && Math.Abs(i.Value - o.Value) > 1e-9);
    }

    private static WeldResult WithPacks(
        WeldResult answer,
        WeldInput weld,
        double? vee,
        WeldAdvice advice,
        double shim,
        double small,
        double large
    )
    {
        var blades = Blades(weld);
        if (blades.Length == 0)
        {
            advice.NoBlades(shim);
            return answer;
        }
        var leaves = Math.Clamp(weld.MostLeaves, 1, 6);
        if (ShimSearch.Best(blades, shim, leaves) is not { } best)
        {
            advice.NoPacks(shim, null, leaves, small, large);
            return answer;
        }
        var error =
            Math.Abs(best.RightError) > Math.Abs(best.LeftError) ? best.RightError : best.LeftError;
        if (Math.Abs(error) > MostPackError || Math.Abs(error) >= shim)
        {
            advice.NoPacks(shim, error, leaves, small, large);
            return answer with { NearestError = error };
        }
        double? apart =
            vee is { } angle ? Vee.Moved(best.LeftError, best.RightError, angle)
            : error == 0 ? 0
            : null;
        if (Math.Abs(error) > ShimSearch.GoodEnough)
            advice.PackError(error, apart, answer.ShimUncertainty);
        if (Math.Max(best.Left.Leaves.Count, best.Right.Leaves.Count) > EasyLeaves)
            advice.ManyLeaves(best.Left.Leaves.Count, best.Right.Leaves.Count);
        return answer with { Packs = new ShimPair(best.Left, best.Right, error, apart) };
    }

    private static double[] Blades(WeldInput weld) =>
        weld.BladeSet switch
        {
            BladeSet.Metric20 => s_metric20,
            BladeSet.Unsaid when weld.Blades.Count == 0 => s_metric20,
            BladeSet.Metric13 => s_metric13,
            _ => [.. weld.Blades.Take(WeldFields.MostBlades).Select(b => b.Value)],
        };

    private static double Uncertainty(Field<Distance> field, Measured<Distance>? measure) =>
        measure is null ? field.UsualPlusMinus / Math.Sqrt(3) : field.StandardUncertainty(measure);

    private static double Square(double x) => x * x;
}
