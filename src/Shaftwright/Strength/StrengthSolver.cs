using Shaftwright.Car;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength.TorsionField;

namespace Shaftwright.Strength;

/// <summary>Torque at first yield of every section of the made shaft, beside the torque in it.</summary>
/// <remarks>Static, nominal, first yield: no stress concentration, no fatigue. Method and limits: docs/strength.md.</remarks>
public static class StrengthSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="made">The shaft that the cut makes.</param>
    /// <param name="donors">The donors, for their steel.</param>
    /// <param name="car">Torque and yardsticks; null when no car is described.</param>
    /// <param name="strength">What is known of the weld.</param>
    /// <returns>Every section that could be judged; margins only where the torque is known.</returns>
    public static StrengthResult Solve(
        MadeShaft made,
        DonorsResult donors,
        CarResult? car,
        StrengthInput strength
    )
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(donors);
        ArgumentNullException.ThrowIfNull(strength);
        var findings = new List<Finding>();
        var say = new StrengthFindings(findings);
        var nothing = new SteelKnown(SteelClass.Unknown, null, null);
        var sample = SampleReadings.Of(strength.Sample);
        var inner = new PieceSections(
            made,
            ShaftEnd.Inner,
            donors.InnerEnd?.Steel ?? nothing,
            sample
        );
        var outer = new PieceSections(
            made,
            ShaftEnd.Outer,
            donors.OuterEnd?.Steel ?? nothing,
            sample
        );

        var sections = new List<SectionMargin?>();
        foreach (
            var (piece, sleeveAt) in new[] { (inner, made.SleeveFrom), (outer, made.SleeveTo) }
        )
        {
            sections.Add(piece.WeakestPlain());
            sections.AddRange(piece.Notches());
            sections.Add(piece.InHeat(SectionKind.BesideWeld, "bar beside the weld", made.WeldAt));
            if (sleeveAt is { } at)
                sections.Add(piece.InHeat(SectionKind.SleeveEnd, "bar at the sleeve's end", at));
        }
        var ring = FusedRing(made, inner, outer, strength);
        var sleeved = ring is null ? null : Sleeved(made, ring, inner, outer, strength);
        sections.Add(sleeved ?? ring);

        var torque = car?.ThisCar?.Governing;
        List<SectionMargin> judged =
        [
            .. sections
                .OfType<SectionMargin>()
                .Select(s =>
                    s with
                    {
                        Margin = torque is { } t ? s.YieldTorque / t : null,
                        NewOverDonor = NewOverDonor(car, s.End),
                    }
                )
                .OrderBy(s => s.At),
        ];
        var weakest = judged.MinBy(s => s.YieldTorque.Low);
        if (weakest is not null)
            say.Weakest(weakest);
        say.Margins(judged, donors);
        if (torque is null)
            say.NoTorque();
        say.Yardstick(car);
        say.Fusion(strength);
        var root = Root(inner, outer, strength, torque);
        say.Root(root, judged.Find(s => s.Kind is SectionKind.FusedRing or SectionKind.Sleeved));
        say.Sample(strength.Sample, made, ring);
        say.NotJudged(made);
        say.Limits(made, sample);
        say.Sleeve(made, strength.Sleeve, ring, sleeved);
        return new StrengthResult
        {
            Torque = torque,
            Sections = judged,
            Weakest = weakest,
            Root = root,
            Findings = findings,
        };
    }

    /// <summary>The ring that the butt weld fuses, on the smaller diameter. Its metal is taken no stronger than the weaker of the
    /// two softened bars. Until a sample was etched, only the low end of the fusion depth counts.</summary>
    private static SectionMargin? FusedRing(
        MadeShaft made,
        PieceSections inner,
        PieceSections outer,
        StrengthInput strength
    )
    {
        if (inner.AtWeld is not { } a || outer.AtWeld is not { } b)
            return null;
        var least = Math.Min(a.Value - a.Doubt, b.Value - b.Doubt);
        var most = Math.Min(a.Value + a.Doubt, b.Value + b.Doubt);
        // A ring of one depth carries more on a thicker bar, so the ends of the ranges belong together.
        var depth = FusionDepths.Of(strength, least / 2, most / 2);
        var metal = new Band(
            Math.Min(inner.Softened.Low, outer.Softened.Low),
            Math.Min(inner.Softened.High, outer.Softened.High)
        );
        return new(
            SectionKind.FusedRing,
            "fused ring of the butt weld",
            null,
            made.WeldAt,
            Math.Min(a.Value, b.Value),
            metal,
            new(
                RoundSection.FusedRingYieldTorque(metal.Low, least, depth.Low),
                RoundSection.FusedRingYieldTorque(metal.High, most, depth.High)
            ),
            null,
            null,
            Softened: true
        );
    }

    /// <summary>The core that the butt weld leaves unfused, as a crack.</summary>
    private static UnfusedRoot? Root(
        PieceSections inner,
        PieceSections outer,
        StrengthInput strength,
        Band? torque
    )
    {
        if (inner.AtWeld is not { } a || outer.AtWeld is not { } b)
            return null;
        var least = Math.Min(a.Value - a.Doubt, b.Value - b.Doubt) / 2;
        var most = Math.Min(a.Value + a.Doubt, b.Value + b.Doubt) / 2;
        var depth = FusionDepths.Of(strength, least, most);
        if (depth.Low >= least)
            return null;
        // A guessed depth goes with the radius, so that either bar may have the smaller core.
        double[] cores =
        [
            least - depth.Low,
            least - depth.High,
            most - depth.Low,
            most - depth.High,
        ];
        Band diameter = new(2 * Math.Max(0, cores.Min()), 2 * Math.Min(most, cores.Max()));
        if (depth.Low <= 0)
            return new(diameter, null, MayBeAll: true);
        if (torque is not { } works)
            return new(diameter, null, MayBeAll: false);
        return new(
            diameter,
            new(
                Math.Min(
                    RootCrack.Intensity(works.Low, least, depth.High),
                    RootCrack.Intensity(works.Low, most, depth.High)
                ),
                Math.Max(
                    RootCrack.Intensity(works.High, least, depth.Low),
                    RootCrack.Intensity(works.High, most, depth.Low)
                )
            ),
            MayBeAll: false
        );
    }

    /// <summary>The butt together with its sleeve, once every seam is closed and nothing is left open: both twist alike, so they
    /// share the torque by their second moments, and the first of the two to yield ends it. Null where the sleeve does not
    /// count, or where the pair would first yield at less than the ring alone.</summary>
    /// <remarks>Source: derived. The sleeve is taken as soft low-carbon tube, tensile yield 235 to 355 (S235 to S355), ÷ √3.</remarks>
    private static SectionMargin? Sleeved(
        MadeShaft made,
        SectionMargin ring,
        PieceSections inner,
        PieceSections outer,
        StrengthInput strength
    )
    {
        if (
            inner.AtWeld is not { } a
            || outer.AtWeld is not { } b
            || strength.Sleeve is not { AllHold: true }
            || made is not { SleeveOutside: { } outside, SleeveFrom: not null }
        )
            return null;
        var bore = made
            .Stretches.Where(s => !s.Guessed && s.From <= made.SleeveTo && s.To >= made.SleeveFrom)
            .Select(s => Math.Max(s.Diameter, s.EndDiameter))
            .DefaultIfEmpty(ring.Diameter)
            .Max();
        if (outside <= bore)
            return null;
        var tube = RoundSection.SecondMoment(outside, bore);
        Band metal = new(235 / Math.Sqrt(3), 355 / Math.Sqrt(3));
        double Both(double sleeve, double ringTorque, double ringYield, double D)
        {
            // The ring's second moment follows from its own torque: T = τ·2J/D.
            var alone = ringYield > 0 ? ringTorque * D / (2 * ringYield) : 0;
            var together = alone + tube;
            return Math.Min(sleeve * 2 * together / outside, ringYield * 2 * together / D);
        }
        Band torque = new(
            Both(
                metal.Low,
                ring.YieldTorque.Low,
                ring.ShearYield.Low,
                Math.Min(a.Value - a.Doubt, b.Value - b.Doubt)
            ),
            Both(
                metal.High,
                ring.YieldTorque.High,
                ring.ShearYield.High,
                Math.Min(a.Value + a.Doubt, b.Value + b.Doubt)
            )
        );
        return torque.Low <= ring.YieldTorque.Low
            ? null
            : ring with
            {
                Kind = SectionKind.Sleeved,
                Words = "butt weld with its sleeve",
                ShearYield = metal,
                YieldTorque = torque,
            };
    }

    /// <summary>The yardstick of a piece; of the weld, the larger of the two.</summary>
    private static Band? NewOverDonor(CarResult? car, ShaftEnd? end)
    {
        if (car is null)
            return null;
        return end switch
        {
            ShaftEnd.Inner => car.NewOverInnerDonor,
            ShaftEnd.Outer => car.NewOverOuterDonor,
            _ => (car.NewOverInnerDonor, car.NewOverOuterDonor) switch
            {
                ({ } a, { } b) => new Band(Math.Max(a.Low, b.Low), Math.Max(a.High, b.High)),
                var (a, b) => a ?? b,
            },
        };
    }
}
