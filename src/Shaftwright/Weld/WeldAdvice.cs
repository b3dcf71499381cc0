using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What the weld stage says beside its numbers.</summary>
internal sealed class WeldAdvice
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "own derivation, plane geometry of a bar in a vee";

    private readonly List<Finding> _findings = [];

    public IReadOnlyList<Finding> Findings => _findings;

    public void DiametersMissing(bool inner, bool outer) =>
        Add(
            Severity.Note,
            "diameter-missing",
            $"The shim is half the difference of the two diameters, and the diameter of {Which(inner, outer)} is not known.",
            $"Measure {Which(inner, outer)} where it will lie in the vee, with the same caliper as the other.",
            Geometry
        );

    public void DiametersFromCut(bool inner, bool outer) =>
        Add(
            Severity.Note,
            "diameter-from-cut",
            $"The diameter of {Which(inner, outer)} is taken from the cut.",
            $"A taper or old paint changes it: measure where it lies in the vee and type that.",
            Practice
        );

    public void CaliperTooCoarse(double uncertainty) =>
        Add(
            Severity.Caution,
            "diameters-too-rough",
            $"As the diameters were measured, the shim is only known to ± {Say.Fine(uncertainty)}, more than a pack may be off ({Say.Fine(WeldSolver.MostPackError)}).",
            $"Measure both again with one good caliper or a micrometer before you trust the packs.",
            "JCGM 100:2008 (GUM), 5.1.2"
        );

    public void Alike(double shim, double uncertainty) =>
        Add(
            Severity.Note,
            "pieces-alike",
            $"The two pieces are alike: half their difference is {Say.Fine(shim)}, and the caliper leaves ± {Say.Fine(uncertainty)} on it.",
            $"Lay both in the vee without shims.",
            Geometry
        );

    public void StepTooLarge(double shim, double small, double large) =>
        Add(
            Severity.Caution,
            "step-too-large",
            $"Each face needs {Say.Fine(shim)}, more than blades are good for ({Say.Fine(WeldSolver.MostShim)}): the pack gets springy and the small piece can walk on it.",
            $"Turn a ring or two half-bushes bored to {Say.Diameter(small)} and turned to {Say.Diameter(large)}, and lay the small piece in those. Look again whether a donor nearer in diameter can be had: so large a step is also a notch.",
            Practice
        );

    public void NoBlades(double shim) =>
        Add(
            Severity.Note,
            "no-blades",
            $"No blades are listed, so no packs are worked out.",
            $"Pick a set, list your blades, or cut two pieces of shim stock {Say.Fine(shim)} thick.",
            Practice
        );

    public void NoPacks(double shim, double? error, int leaves, double small, double large)
    {
        Sentence text = error is { } e
            ? (Sentence)
                $"Your blades cannot make it: the nearest two packs of at most {leaves} leaves are {Say.Fine(Math.Abs(e))} too {(e < 0 ? "thin" : "thick")} at the worse face, and {Say.Fine(WeldSolver.MostPackError)} is the most that is offered."
            : $"Your blades cannot make it: no two packs of at most {leaves} leaves come within {Say.Fine(WeldSolver.MostPackError)}, or nearer than no shim at all.";
        Add(
            Severity.Caution,
            "no-packs",
            text,
            $"Buy two blades or cut two pieces of shim stock {Say.Fine(shim)} thick, or turn a ring bored to {Say.Diameter(small)} and turned to {Say.Diameter(large)}.",
            Practice
        );
    }

    public void PackError(double error, double? apart, double uncertainty)
    {
        Sentence left = apart is { } a
            ? (Sentence)
                $" That leaves the two axes {Say.Fine(a)} apart, which a dial shows as {Say.Fine(2 * a)} of run-out."
            : $"";
        // Within what the caliper leaves open, another blade would not make it surer.
        var known = Math.Abs(error) <= uncertainty;
        Add(
            known ? Severity.Note : Severity.Caution,
            "pack-error",
            $"The worse pack is {Say.Fine(Math.Abs(error))} too {(error < 0 ? "thin" : "thick")}.{left}",
            known
                ? (Sentence)
                    $"The caliper leaves ± {Say.Fine(uncertainty)} on the shim anyway. Use the packs and let the dial decide."
                : $"Use them if the dial agrees after tacking; better, add a blade that brings both packs nearer.",
            Geometry
        );
    }

    public void ManyLeaves(int left, int right) =>
        Add(
            Severity.Caution,
            "many-leaves",
            $"The packs have {left} and {right} leaves. A pack of many leaves springs, and dirt between them counts.",
            $"Wipe every leaf, pinch each pack in the caliper and read it; a thicker blade in place of two thin ones is better.",
            Practice
        );

    public void WrongWays(double shim, double? vee)
    {
        if (vee is not { } angle)
        {
            Add(
                Severity.Note,
                "vee-angle-unknown",
                $"The shims are the same in any vee. What else one might try (a packing under the block, a shim on one face) does depend on its angle, and is not shown.",
                $"Leave it, or measure the angle of the vee.",
                Geometry
            );
            return;
        }
        var block = Vee.UnderBlock(shim, angle);
        Add(
            Severity.Note,
            "under-block",
            $"The same {Say.Fine(shim)} put under the whole block instead would leave the small piece {Say.Fine(block - shim)} low.",
            $"Shim both faces; or, with a block of its own for the small piece, pack {Say.Fine(block)} under that block.",
            Geometry
        );
        var aside = Vee.OneFaceAside(shim, angle);
        Add(
            Severity.Note,
            "one-face",
            $"On one face only, {Say.Fine(shim)} leaves the axis {Say.Fine(Vee.HalfDone(shim, angle))} off; doubled to {Say.Fine(2 * shim)} it is at the right height but {Say.Fine(aside)} to the side.",
            $"Always shim both faces alike.",
            Geometry
        );
    }

    /// <summary>What can be pressed out later, once.</summary>
    public void Way(PackingWay way, PackingPlan? plan)
    {
        if (plan is null || way is PackingWay.Unknown)
            return;
        var choice = plan.Choices.Single(c => c.Way == way);
        var worst = choice.Mistakes.MaxBy(m => m.Off)!;
        Sentence right = way switch
        {
            PackingWay.BothFaces => $"{Say.Fine(choice.Pack)} on each face.",
            PackingWay.UnderBlock => $"{Say.Fine(choice.Pack)} under the whole block.",
            _ =>
                $"{Say.Fine(choice.Pack)} on one face, and the block moved {Say.Fine(choice.BlockAside)} aside, towards the packed face.",
        };
        Add(
            way == PackingWay.OneFace ? Severity.Caution : Severity.Note,
            "packing-way",
            $"{right} The worst mistake with it, {worst.Words}, leaves the axis {Say.Fine(worst.Off)} off.",
            way == PackingWay.OneFace
                ? (Sentence)$"Both faces alike is safer: nothing has to be moved by a dial."
                : $"Check under the dial before the first tack.",
            Geometry
        );
    }

    public void VeesUnlike() =>
        Add(
            Severity.Caution,
            "vees-unlike",
            $"The two pieces lie in vees that are not alike, and how high each stands is not known.",
            $"Lay one and the same plain bar in each empty vee, measure from the table to its top, and type bar and heights.",
            Geometry
        );

    public void OwnVees(PackingPlan plan) =>
        Add(
            Severity.Note,
            "vees-of-their-own",
            $"Each piece lies in a vee of its own. The {(plan.Lower == Cut.ShaftEnd.Inner ? "inner-end" : "outer-end")} piece lies {Say.Fine(plan.Lift)} lower, give or take {Say.Fine(plan.LiftUncertainty)}.",
            $"Set both blocks along one straight edge: a block out of line sideways is not seen from their heights.",
            Geometry
        );

    public void Tapers(IReadOnlyList<TaperStand> tapers)
    {
        foreach (var t in tapers.Where(t => t.MorePack > 0))
        {
            Sentence high = t.JointHigh is { } h
                ? (Sentence)
                    $" At the joint its axis is then {Say.Fine(Math.Abs(h))} too {(h > 0 ? "high" : "low")}."
                : $"";
            Add(
                Severity.Caution,
                "stands-on-taper",
                $"The {(t.End == Cut.ShaftEnd.Inner ? "inner-end" : "outer-end")} piece stands on a taper. On even packs its axis leans {Say.Angle(t.Tilt)}, rising towards its thick end, which is {(t.ThickTowardsWeld ? "nearer" : "away from")} the weld.{high}",
                $"Make the packs on both faces {Say.Fine(t.MorePack)} thicker at the thin edge of the vee than at the thick edge, in any vee; or hold it where it is plain.",
                "own derivation: a cone on two planes, docs/weld.md"
            );
        }
    }

    public void CheckAfterTacking() =>
        Add(
            Severity.Note,
            "check-after-tacking",
            $"This lines up two straight, round pieces in one vee, or in two vees cut alike on one flat base. It does not see a bent donor or a burr.",
            $"Clean vee and pieces, clamp, tack, then turn the whole under a dial on each side of the joint before you weld. A lean or a bow can be pressed out later; a parallel offset cannot: break the tacks.",
            Practice
        );

    private static string Which(bool inner, bool outer) =>
        (inner, outer) switch
        {
            (true, true) => "both pieces",
            (true, false) => "the inner-end piece",
            _ => "the outer-end piece",
        };

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _findings.Add(new Finding(severity, Stage.Weld, code, text, action, source));
}
