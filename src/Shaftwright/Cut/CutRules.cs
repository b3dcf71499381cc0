namespace Shaftwright.Cut;

/// <summary>The rules of a cut. All are common practice, no source: heat changes the metal within its band, and a changed
/// metal at a notch is where a shaft breaks.</summary>
internal static class CutRules
{
    public const string InBar = "cut-in-bar";
    public const string Hardened = "heat-clear-of-hardened";
    public const string SleeveClearOfWeld = "sleeve-end-clear-of-weld";

    /// <summary>The heavy rules for one piece, all of the form "the cut lies beyond".</summary>
    public static IReadOnlyList<ClearRule> For(JoinPlan plan, bool bootPasses)
    {
        var b = plan.HeatBand;
        var rules = new List<ClearRule>
        {
            new(
                "spline-stays",
                "the joint's spline stays on its piece",
                FeatureKind.OwnSpline,
                0,
                0
            ),
            new(
                "boot-seat-stays",
                "the boot's seat stays on its piece",
                FeatureKind.OwnBootSeat,
                0,
                0
            ),
        };
        foreach (var (kind, code, words) in Places)
            rules.Add(
                new("weld-clear-of-" + code, "the weld's heat keeps clear of " + words, kind, 0, b)
            );
        if (plan.SleeveHalf is not null)
        {
            foreach (var (kind, code, words) in Places)
                rules.Add(
                    new(
                        "sleeve-clear-of-" + code,
                        "the sleeve, and the heat at its end, keep clear of " + words,
                        kind,
                        plan.SleeveReach,
                        b
                    )
                );
            rules.Add(
                new(
                    "sleeve-over-bar",
                    "the sleeve goes over bar that is thin enough for it",
                    FeatureKind.TooThick,
                    plan.SleeveReach,
                    0
                )
            );
        }
        if (!bootPasses)
            rules.Add(
                new(
                    "boot-slides",
                    plan.SleeveHalf is null
                        ? "the boot can slide back from its seat before it meets the weld"
                        : "the boot can slide back from its seat before it meets the sleeve",
                    FeatureKind.BootSeat,
                    plan.SleeveReach,
                    plan.SlideRoom
                )
            );
        return rules;
    }

    private static readonly (FeatureKind Kind, string Code, string Words)[] Places =
    [
        (FeatureKind.JointEnd, "end", "the shaft's end"),
        (FeatureKind.Step, "step", "a step"),
        (FeatureKind.Groove, "groove", "a groove"),
        (FeatureKind.Spline, "spline", "the spline and its run-out"),
        (FeatureKind.BootSeat, "boot-seat", "the boot's seat"),
        (FeatureKind.Ring, "ring", "a sensor ring or damper"),
        (FeatureKind.Hollow, "hollow", "a hollow"),
        (FeatureKind.Unmeasured, "unmeasured", "a stretch that was not measured"),
    ];

    /// <summary>Every rule at a cut of one piece, those that hold and those that do not.</summary>
    public static IEnumerable<CutCheck> Checks(Piece piece, JoinPlan plan, double c)
    {
        yield return new(
            InBar,
            piece.End,
            "the cut lies in plain or tapered bar that was measured",
            piece.InsideBar(c) ?? -c,
            0,
            Heavy: true
        );
        foreach (var rule in piece.Rules)
        {
            if (piece.Has(rule, c) is { } has)
                yield return new(rule.Code, piece.End, rule.Words, has, rule.Needs, Heavy: true);
        }
        if (piece.HardenedOverlap(c) is { } overlap)
            yield return new(
                Hardened,
                piece.End,
                "the heat leaves hardened metal alone",
                -overlap,
                0,
                Heavy: false
            );
        if (plan.SleeveHalf is { } half)
            yield return new(
                SleeveClearOfWeld,
                piece.End,
                "the sleeve's end lies outside the butt weld's own heat",
                half,
                plan.HeatBand,
                Heavy: false
            );
    }
}
