using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>What the stage says of one donor.</summary>
internal sealed class DonorFindings(string who, List<Finding> findings)
{
    /// <summary>A change of diameter between neighbours from which it is worth asking what is really there, mm. Common practice, no source.</summary>
    private const double Jump = 2;

    private const string Practice = "common practice, no source";

    public void NotWalked() =>
        Add(
            Severity.Caution,
            "donor-not-walked",
            $"The {who} has not been walked with a caliper. Until it is, no cut can be placed and no strength judged.",
            $"Start at the joint end and write down, stretch by stretch: up to where, how thick, what is here."
        );

    public void NothingMeasured() =>
        Add(
            Severity.Caution,
            "donor-no-diameter",
            $"No stretch of the {who} has both an end and a diameter, so there is nothing to work with.",
            $"Measure at least the bar where you mean to cut: where it ends and how thick it is."
        );

    public void EndMissing(int index, ZoneKind kind, double from) =>
        Add(
            Severity.Caution,
            "zone-end-missing",
            $"On the {who}, stretch {index + 1} ({Words(kind)}, from {Say.Length(from)}) has no end. Nothing beyond it can be placed, so the shaft stops there.",
            $"Measure from the joint end to where that stretch ends."
        );

    public void OutOfOrder(int index, ZoneKind kind, double until) =>
        Add(
            Severity.Caution,
            "zone-out-of-order",
            $"On the {who}, stretch {index + 1} ({Words(kind)}) ends at {Say.Length(until)}, before the one in front of it. It is left out.",
            $"Measure all ends from the same joint end, and put the stretches in order."
        );

    public void DiameterMissing(ZoneKind kind, double from, double to) =>
        Add(
            Severity.Caution,
            "zone-diameter-missing",
            $"On the {who}, the {Words(kind)} from {Say.Length(from)} to {Say.Length(to)} has no diameter. No cut is placed in it and its strength is not judged.",
            $"Measure its diameter{(kind == ZoneKind.Groove ? " at the floor" : "")}."
        );

    public void TaperEndMissing(double from, double to, double? next)
    {
        if (next is { } d)
            Add(
                Severity.Note,
                "taper-end-missing",
                $"On the {who}, the taper from {Say.Length(from)} to {Say.Length(to)} has no end diameter. It is taken to run into the next stretch at {Say.Length(d)}.",
                $"Measure the diameter where the taper ends, before you cut in it."
            );
        else
            Add(
                Severity.Caution,
                "taper-end-missing",
                $"On the {who}, the taper from {Say.Length(from)} to {Say.Length(to)} has no end diameter, and no measured stretch follows. No cut is placed in it and its strength is not judged.",
                $"Measure the diameter where the taper ends."
            );
    }

    public void RootMissing(double from, double to) =>
        Add(
            Severity.Caution,
            "spline-root-missing",
            $"On the {who}, the spline from {Say.Length(from)} to {Say.Length(to)} has no root diameter. Its strength is not judged, and it may be the weakest place of the shaft.",
            $"Measure down to the root of the teeth, with wires or with the caliper's points."
        );

    public void HardZoneUnplaced() =>
        Add(
            Severity.Caution,
            "hard-zone-unplaced",
            $"On the {who}, a hardened zone lacks one of its ends, so it is left out: the heat of the weld may soften it without a word from here.",
            $"Find both ends with a file: it skates on the hard metal and bites beyond."
        );

    public void HollowUnplaced() =>
        Add(
            Severity.Caution,
            "hollow-unplaced",
            $"On the {who}, a hollow lacks an end or its diameter, so it is left out: metal counts there that is not there.",
            $"Put a wire down it for its depth, and a caliper across its mouth."
        );

    public void Hardening(IReadOnlyList<HardStretch> hardened, FileTest file)
    {
        if (hardened.Count == 0 && file == FileTest.Skates)
            Add(
                Severity.Caution,
                "hardening-not-placed",
                $"The file skates on the {who}, but no hardened zone is entered: its metal is taken as soft as its core all along, and nothing says what the heat will soften.",
                $"Move the file along until it bites, both ways. Enter where it skates from and to."
            );
        else if (hardened.Count == 0 && file == FileTest.Bites)
            return;
        else if (hardened.Count == 0)
            Add(
                Severity.Note,
                "hardening-not-tested",
                $"No hardened zone is entered for the {who}, so its metal is taken as soft as its core all along.",
                $"Try a file along the whole bar. Many shafts are hardened nearly end to end."
            );
        else if (hardened.Any(h => h.CaseDepth is null))
            Add(
                Severity.Note,
                "case-depth-missing",
                $"The depth of the hard case of the {who} is not known. Its strength then runs from no case at all to hard all through.",
                $"Grind and etch the face where you cut: the case shows as a ring. Measure its depth."
            );
    }

    public void Steel(SteelKnown steel)
    {
        if (steel is { Class: SteelClass.Unknown, CoreHrc: null })
            Add(
                Severity.Note,
                "steel-unknown",
                $"Nothing is known of the steel of the {who}. Its strength is then a wide range, the weakest likely steel to the strongest, about one to three.",
                $"Measure the hardness in the middle of the face where you cut it. That settles most of it."
            );
    }

    /// <summary>Splines whose count, module and diameter do not belong together. A tooth more or less moves the diameter over the
    /// teeth by one module, so half a module is a wrong count or a wrong module.</summary>
    /// <remarks>Diameter over the teeth m·(z + 1) at 30°, m·(z + 0.9) at 37.5°, m·(z + 0.8) at 45°. Source: ISO 4156-1, from
    /// memory; flat-root forms of older national standards differ by less than half a module.</remarks>
    public void Splines(IReadOnlyList<ShaftZone> zones)
    {
        var from = 0.0;
        foreach (var zone in zones)
        {
            if (zone is { Kind: ZoneKind.Spline, Until: { } until })
            {
                if (zone.RunOut is { } runOut && runOut.Value >= until.Value - from)
                    Add(
                        Severity.Caution,
                        "spline-all-run-out",
                        $"On the {who}, the run-out of the spline from {Say.Length(from)} is {Say.Length(runOut.Value)} long, and the whole spline {Say.Length(until.Value - from)}: no full tooth is left.",
                        $"Measure from the joint end to where the teeth begin to rise, and to where they end."
                    );
                if (
                    zone is { Teeth: > 0, Module: { } m, Diameter: { } d }
                    && OverTeeth(zone.Teeth, m.Value, zone.PressureAngle?.Value) is var over
                    && Math.Abs(over - d.Value) > m.Value / 2
                )
                    Add(
                        Severity.Caution,
                        "spline-does-not-add-up",
                        $"On the {who}, {zone.Teeth} teeth of module {Say.Fine(m.Value)} make {Say.Diameter(over)} over the teeth, and {Say.Diameter(d.Value)} was measured.",
                        $"Count the teeth again with a mark on the first. Then measure over them."
                    );
            }
            from = zone.Until?.Value ?? from;
        }
    }

    private static double OverTeeth(int z, double m, double? angle) =>
        m
        * (
            z
            + (
                angle switch
                {
                    > 41 * Math.PI / 180 => 0.8,
                    > 34 * Math.PI / 180 => 0.9,
                    _ => 1,
                }
            )
        );

    /// <summary>Shapes that are hardly meant as they were entered.</summary>
    public void Shape(IReadOnlyList<Stretch> stretches)
    {
        for (var i = 0; i < stretches.Count; i++)
        {
            var here = stretches[i];
            if (here.Guessed)
                continue;
            if (here is { RootDiameter: { } root } && root >= here.Diameter)
                Add(
                    Severity.Caution,
                    "spline-root-not-lower",
                    $"On the {who}, the root of the spline from {Say.Length(here.From)} measures {Say.Length(root)}, not less than over its teeth ({Say.Length(here.Diameter)}).",
                    $"Measure both again."
                );
            if (
                here.Kind == ZoneKind.Groove
                && Neighbours(stretches, i).Any(n => n <= here.Diameter)
            )
                Add(
                    Severity.Caution,
                    "groove-not-lower",
                    $"On the {who}, the groove at {Say.Length(here.From)} is {Say.Length(here.Diameter)} at its floor, not less than the bar beside it.",
                    $"Measure the groove at its floor."
                );
            if (i == 0 || stretches[i - 1].Guessed || !Bar(here) || !Bar(stretches[i - 1]))
                continue;
            var jump = Math.Abs(here.Diameter - stretches[i - 1].EndDiameter);
            if (jump > Jump)
                Add(
                    Severity.Note,
                    "diameter-jump",
                    $"On the {who}, the diameter jumps by {Say.Length(jump)} at {Say.Length(here.From)}. It is taken as a sharp step.",
                    $"If it is really a cone, enter it as a taper with both diameters. Look for a fillet there, and keep heat and tools off it."
                );
        }
    }

    private static IEnumerable<double> Neighbours(IReadOnlyList<Stretch> stretches, int i)
    {
        if (i > 0 && !stretches[i - 1].Guessed && stretches[i - 1].Kind != ZoneKind.Groove)
            yield return stretches[i - 1].EndDiameter;
        if (
            i + 1 < stretches.Count
            && !stretches[i + 1].Guessed
            && stretches[i + 1].Kind != ZoneKind.Groove
        )
            yield return stretches[i + 1].Diameter;
    }

    private static bool Bar(Stretch s) =>
        s.Kind is ZoneKind.Plain or ZoneKind.Taper or ZoneKind.BootSeat;

    private static string Words(ZoneKind kind) =>
        kind switch
        {
            ZoneKind.Plain => "plain bar",
            ZoneKind.Taper => "taper",
            ZoneKind.Spline => "spline",
            ZoneKind.Groove => "groove",
            ZoneKind.BootSeat => "boot seat",
            ZoneKind.SensorRing => "sensor ring",
            ZoneKind.Damper => "damper",
            _ => "step",
        };

    private void Add(Severity severity, string code, Sentence text, Sentence action) =>
        findings.Add(new(severity, Stage.Donors, code, text, action, Practice));
}
