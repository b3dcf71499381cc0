using Shaftwright.CrackTest;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Fit;

/// <summary>Judges what was found while fitting.</summary>
/// <param name="fit">What is known beforehand.</param>
/// <param name="found">Of each step the entry that counts.</param>
/// <param name="basis">What earlier stages say.</param>
internal sealed class FitJudge(
    FitInput fit,
    IReadOnlyDictionary<FitStep, FitDone> found,
    FitBasis basis
)
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "own derivation: offset = twist × diameter / 2";
    private const string Plastic =
        "torsion past first yield, perfectly plastic: any strength-of-materials text; steel as a range";

    private readonly List<Finding> _findings = [];
    private readonly Dictionary<FitStep, Sentence> _stops = [];

    public IReadOnlyList<Finding> Findings => _findings;

    public Sentence? StopAt(FitStep step) => _stops.GetValueOrDefault(step);

    /// <summary>What an entry of a step leaves open; null when it says all that the step is for.</summary>
    public Sentence? OpenAt(FitStep step) =>
        At(step) is not { } entry
            ? null
            : step switch
            {
                FitStep.PullCheck when entry.PullHeld is null => $"Note whether it held.",
                FitStep.TrialEnds when entry.LeftIn is null || entry.LeftOut is null =>
                    $"Note what is left inwards and outwards.",
                FitStep.FreeTurn when entry.FreeAtDroop is null || entry.FreeAtLock is null =>
                    $"Note whether it turned freely at full droop and at both full locks.",
                FitStep.FirstRun when entry.Leaks is null || entry.Noise is null =>
                    $"Note whether anything leaked, clicked or shook.",
                _ => (Sentence?)null,
            };

    /// <summary>Whether a nut had its maker's torque, as far as both are noted.</summary>
    private bool IsTight(FitDone done) =>
        fit.HubNutByMaker is not { } by
        || done.HubNut is not { } given
        || given.Value + (given.PlusMinus ?? 0) >= by.Value;

    private DateTimeOffset? First(FitStep step, Func<FitDone, bool>? counts = null) =>
        Entries
            .Standing(fit.Done)
            .Where(d => d.Step == step && counts?.Invoke(d) != false)
            .Select(d => (DateTimeOffset?)d.At)
            .Min();

    private FitDone? At(FitStep step) => found.GetValueOrDefault(step);

    public TrialEnds? Ends()
    {
        // Without a window there is no shaft to fit; its positions only show by how much it fails.
        if (basis.Length is not { HasWindow: true, Positions: { Count: > 0 } positions })
            return null;
        var (tightIn, tightOut) = (
            positions.MinBy(p => p.LeftIn)!,
            positions.MinBy(p => p.LeftOut)!
        );
        return new(tightIn.LeftIn, tightIn.Travel, tightOut.LeftOut, tightOut.Travel);
    }

    public void Pull()
    {
        if (At(FitStep.PullCheck) is not { } check)
            return;
        if (check.PullHeld == false)
            Stop(
                FitStep.PullCheck,
                "pulled-out",
                $"The inner end came out when it was pulled.",
                $"Fit a new clip, look at its groove and at the length of the stub, push it home again and pull again.",
                Practice
            );
        if (check.Pull is { } pull && fit.PullByMaker is { } by && pull.Value < by.Value)
            Add(
                Severity.Caution,
                "pull-too-light",
                $"It was pulled with {Say.Force(pull.Value)}; its maker asks for {Say.Force(by.Value)}.",
                $"Pull again with a spring balance.",
                "the joint maker's data"
            );
        else if (check.PullHeld is not null && fit.PullByMaker is null)
            Add(
                Severity.Note,
                "pull-by-hand",
                $"No maker's figure for the pull; about {Say.Force(FitFields.UsualPull)} by hand is usual.",
                $"Look for the figure of the gearbox or joint you have.",
                Practice
            );
    }

    public void HubNut()
    {
        var clamp = At(FitStep.BearingClamp);
        // The first of each: a nut tightened again after the run was tight before it, if it had its torque.
        var rolled =
            First(FitStep.FirstRun) is { } ran && !(First(FitStep.BearingClamp, IsTight) <= ran);
        if (fit.StubClampsBearing is null && fit.HubNutByMaker is null)
            Add(
                Severity.Caution,
                "clamp-unknown",
                $"It is not noted whether the stub clamps the hub bearing. Taken as if it does.",
                $"No weight on the wheel and no rolling before the nut has its full torque.",
                Practice
            );
        if (fit.HubNutByMaker is not { } by)
        {
            if (clamp is not null)
                Add(
                    Severity.Caution,
                    "hub-nut-figure-missing",
                    $"The hub maker's torque is not noted, so what was given cannot be judged.",
                    $"Find the figure for the hub you have, not for the donor's.",
                    "the hub maker's data"
                );
        }
        else if (clamp?.HubNut is { } given)
        {
            var a = given.PlusMinus ?? 0;
            if (given.Value + a < by.Value)
                Stop(
                    FitStep.BearingClamp,
                    "hub-nut-loose",
                    $"The hub nut was given {Say.Torque(given.Value)}; its maker asks for {Say.Torque(by.Value)}.",
                    $"Tighten it to {Say.Torque(by.Value)} before any weight or rolling.",
                    "the hub maker's data"
                );
            else if (given.Value - a > 1.1 * by.Value)
                Add(
                    Severity.Caution,
                    "hub-nut-tight",
                    $"The hub nut was given {Say.Torque(given.Value)}, more than a tenth over its maker's {Say.Torque(by.Value)}.",
                    $"Take it off, look at thread and bearing, and fit a new nut.",
                    "the hub maker's data; the tenth is common practice, no source"
                );
        }
        if (rolled && fit.StubClampsBearing != false)
            Stop(
                FitStep.BearingClamp,
                "rolled-before-clamped",
                $"It ran before the hub nut was noted at full torque.",
                $"If it truly ran so, the bearing is spoilt: fit a new one. If only the note is missing, note it.",
                Practice
            );
    }

    public void Trial(TrialEnds? ends)
    {
        var trial = At(FitStep.TrialEnds);
        End(trial?.LeftIn, FitFields.LeftIn, ends?.LeftIn, "inwards", "shorter");
        End(trial?.LeftOut, FitFields.LeftOut, ends?.LeftOut, "outwards", "longer");
    }

    private void End(
        Measured<Distance>? read,
        Field<Distance> field,
        double? expected,
        string way,
        string make
    )
    {
        if (read is null)
            return;
        var half = read.PlusMinus ?? field.UsualPlusMinus;
        if (read.Value - half <= 0)
            Stop(
                FitStep.TrialEnds,
                "no-plunge-left",
                $"Only {Say.Length(read.Value)} of plunge is left {way}, give or take {Say.Length(half)}: the joint may come to its stop.",
                $"Do not run it. The shaft must be {make}, or the travel less.",
                "the stop itself"
            );
        else if (read.Value < basis.Margin)
            Add(
                Severity.Caution,
                "margin-not-kept",
                $"{Say.Length(read.Value)} of plunge is left {way}; {Say.Length(basis.Margin)} was to be kept.",
                $"Measure it again with the power unit pushed that way. If it stays, take away travel or make the shaft {make}.",
                "the margin asked for in the length stage"
            );
        if (expected is not { } left)
            return;
        // Reading and car as standard uncertainties, doubled, and what the shaft was allowed to be off when made.
        var u = field.StandardUncertainty(read);
        var about =
            2 * Math.Sqrt(u * u + basis.Length!.MakeUncertainty * basis.Length.MakeUncertainty)
            + basis.Length.Tolerance;
        if (Math.Abs(read.Value - left) > about)
            Add(
                Severity.Caution,
                "not-as-worked-out",
                $"{Say.Length(read.Value)} is left {way}, but {Say.Length(left)} was worked out, give or take {Say.Length(about)}.",
                $"Measure the shaft's length, see that both joints sit home, and read the corner again.",
                "the length stage; JCGM 100:2008 (GUM), 5.1.2"
            );
    }

    public void Turns()
    {
        if (At(FitStep.FreeTurn) is not { } turn)
            return;
        if (turn.FreeAtDroop == false || turn.FreeAtLock == false)
            Stop(
                FitStep.FreeTurn,
                "does-not-turn-freely",
                (turn.FreeAtDroop, turn.FreeAtLock) switch
                {
                    (false, false) => $"It binds at full droop and at full lock.",
                    (false, _) => $"It binds at full droop.",
                    _ => (Sentence)$"It binds at full lock.",
                },
                $"Find what touches or which joint is past its angle. Limit droop or lock, or change the joint; never run it so.",
                Practice
            );
    }

    public (double? Twist, double Uncertainty) Line()
    {
        if (Twist(FitStep.FirstRun) is not { } read)
            return (null, 0);
        if (Math.Abs(read.Twist) > 2 * read.Uncertainty)
            Stop(
                FitStep.FirstRun,
                "twisted",
                $"The painted line is {Say.Length(Math.Abs(read.Offset))} off straight: the shaft has twisted {Say.Angle(Math.Abs(read.Twist))} for good, give or take {Say.Angle(2 * read.Uncertainty)}.",
                $"Take it off and scrap it.",
                Geometry
            );
        return (read.Twist, read.Uncertainty);
    }

    /// <summary>Twist by the painted line as read at a step; null when it was not read, or the diameter is not known.</summary>
    private (double Offset, double Twist, double Uncertainty)? Twist(FitStep step)
    {
        if (At(step) is not { LineOffset: { } offset } entry)
            return null;
        if ((entry.LineDiameter ?? At(FitStep.PaintLine)?.LineDiameter) is not { } d)
        {
            Add(
                Severity.Caution,
                "line-diameter-missing",
                $"The painted line is {Say.Length(offset.Value)} off straight, but the diameter there is not noted.",
                $"Measure the shaft where the offset was read.",
                Geometry
            );
            return null;
        }
        return (
            offset.Value,
            PaintedLine.Twist(offset.Value, d.Value),
            2 * FitFields.LineOffset.StandardUncertainty(offset) / d.Value
        );
    }

    public ProofResult? Proof()
    {
        if (fit.ProofTorque is not { } proof)
            return null;
        if (basis.Made is not { } made)
        {
            Add(
                Severity.Caution,
                "proof-without-shaft",
                $"The made shaft is not described, so what a proof torque of {Say.Torque(proof.Value)} does to it is not known.",
                $"Walk both donors and settle the cut first.",
                Plastic
            );
            return null;
        }
        var nothing = new SteelKnown(SteelClass.Unknown, null, null);
        var stretches = WindUp.StretchesOf(
            made,
            basis.Donors?.InnerEnd?.Steel ?? nothing,
            basis.Donors?.OuterEnd?.Steel ?? nothing
        );
        var (loaded, set) = WindUp.Of(stretches, proof.Value);
        if (basis.Strength?.Weakest is { } weakest && proof.Value > weakest.YieldTorque.Low)
            Add(
                Severity.Caution,
                "proof-may-yield",
                $"{Say.Torque(proof.Value)} may already yield it: {weakest.Words} yields from {Say.Torque(weakest.YieldTorque.Low)} on. A proof that yields the weld uses some of it up.",
                $"Stay below {Say.Torque(weakest.YieldTorque.Low)}, or treat the shaft as a test piece.",
                Plastic
            );
        if (double.IsInfinity(set.High))
            Add(
                Severity.Stop,
                "proof-may-break",
                $"At {Say.Torque(proof.Value)} the weakest stretch might yield right through and give way.",
                $"Choose a lower proof torque.",
                Plastic
            );
        var (measured, half) = ProofSet();
        var verdict = ProofVerdict.NotKnown;
        if (measured is { } left)
        {
            verdict = left - half > set.High ? ProofVerdict.TooMuch : ProofVerdict.AsExpected;
            if (verdict == ProofVerdict.TooMuch)
                Stop(
                    FitStep.ProofTwist,
                    "proof-set-too-large",
                    $"{Say.Angle(left)} of twist stayed after the proof torque; the weakest metal it may be made of explains {Say.Angle(set.High)}.",
                    $"Do not fit it. Crack-test every weld, look whether a grip slipped, and find where the line turns.",
                    Plastic
                );
            else if (left - half > 0)
                Add(
                    Severity.Caution,
                    "proof-set",
                    $"{Say.Angle(left)} of twist stayed after the proof torque: something has yielded.",
                    $"Find where the line turns, crack-test there, and paint a new line before it is fitted.",
                    Plastic
                );
        }
        Sentence expects =
            double.IsInfinity(loaded.High)
                ? $"winds it up {Say.Angle(loaded.Low)} or more, and it may give way"
            : set.High <= 0 ? $"winds it up {Say.Angle(loaded.Low)}, and nothing should stay"
            : (Sentence)
                $"winds it up {Say.Angle(loaded.Low)} to {Say.Angle(loaded.High)}, of which {Say.Angle(set.Low)} to {Say.Angle(set.High)} may stay";
        Sentence came = verdict switch
        {
            ProofVerdict.AsExpected => $" {Say.Angle(measured!.Value)} stayed.",
            ProofVerdict.TooMuch => $" {Say.Angle(measured!.Value)} stayed: too much.",
            _ => Sentence.Plain(""),
        };
        return new(
            proof.Value,
            loaded,
            set,
            measured,
            verdict,
            $"{Say.Torque(proof.Value)} {expects}.{came}"
        );
    }

    /// <summary>Twist that stayed after the proof, and how far off that may be, rad.</summary>
    private (double? Left, double Half) ProofSet()
    {
        if (At(FitStep.ProofTwist)?.ProofSet is { } angle)
            return (angle.Value, angle.PlusMinus ?? FitFields.ProofSet.UsualPlusMinus);
        return Twist(FitStep.ProofTwist) is { } read
            ? (Math.Abs(read.Twist), 2 * read.Uncertainty)
            : (null, 0);
    }

    public void FirstRun()
    {
        if (At(FitStep.FirstRun) is not { } run)
            return;
        if (run.Noise == true)
            Stop(
                FitStep.FirstRun,
                "noise-after-run",
                $"There was a new vibration or click in the first run.",
                $"Take it off, turn it under the dial, crack-test every weld, and look at both joints.",
                Practice
            );
        if (run.Leaks == true)
            Stop(
                FitStep.FirstRun,
                "leak-after-run",
                $"Grease was thrown or oil lost in the first run.",
                $"Find which boot, clamp or seal it was and put it right before it runs again.",
                Practice
            );
    }

    private void Stop(FitStep step, string code, Sentence text, Sentence action, string source)
    {
        _stops.TryAdd(step, action);
        Add(Severity.Stop, code, text, action, source);
    }

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _findings.Add(new(severity, Stage.Fit, code, text, action, source));
}
