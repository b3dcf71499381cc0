using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>What the press says beside its numbers.</summary>
internal sealed class PressAdvice
{
    private const string Practice = "common practice, no source";
    private const string Own = "own derivation, elastic–plastic bending; tested on a simulator";
    private const string Geometry = "own derivation, plane geometry of a turning section";

    private readonly List<Finding> _findings = [];

    public IReadOnlyList<Finding> Findings => _findings;

    public void Promise() =>
        Add(
            Severity.Note,
            PressResult.Promise,
            $"What is said of a stroke is tested on a simulated press, not on your shaft: the simulator and what it assumes are in the handbook.",
            $"Believe the dial before the number, and stop when the two part company.",
            "own simulation, docs/pressing.md"
        );

    public void CrackSign() =>
        Add(
            Severity.Stop,
            PressResult.CrackSign,
            $"A crack, a click or flaking was noted at a stroke.",
            $"Press no more. Crack-test it; a shaft with a crack is scrapped, not welded again.",
            Practice
        );

    public void OverSince(double runOut, double limit) =>
        Add(
            Severity.Stop,
            "press-over-since",
            $"Run-out {Say.Fine(runOut)} was noted after the last stroke, over the limit of {Say.Fine(limit)}.",
            $"True it, then turn it under the dial again. What an earlier turn said no longer counts.",
            Practice
        );

    public void TooCloseSince(double runOut, double expanded, double limit) =>
        Add(
            Severity.Caution,
            "press-too-close-since",
            $"Run-out {Say.Fine(runOut)} ± {Say.Fine(expanded)} after the last stroke cannot be told from the limit of {Say.Fine(limit)}.",
            $"Turn it under the dial at more places, or treat it as over.",
            Practice
        );

    public void Ahead(int strokes) =>
        Add(
            Severity.Caution,
            "press-stroke-ahead-of-now",
            $"{strokes} {(strokes == 1 ? "stroke is" : "strokes are")} dated later than it is. Nothing is learned from {(strokes == 1 ? "it" : "them")}.",
            $"Set the clock right that said so, take the stroke back and note it again. A crack test after it is owed all the same.",
            Practice
        );

    public void StoppedByATest() =>
        Add(
            Severity.Stop,
            "press-mark-stops",
            $"A crack or a mark on record stops the job, and pressing opens it.",
            $"Settle the mark first: find out what it is, dress it out and test again, or scrap the shaft.",
            Practice
        );

    public void Tacked() =>
        Add(
            Severity.Caution,
            "press-tacked",
            $"Tacks crack before they bend.",
            $"Break the tacks, clean vee and packs, set up again and tack again.",
            Practice
        );

    public void AfterRun() =>
        Add(
            Severity.Stop,
            "press-after-run",
            $"A shaft that went out of true on the car has yielded or cracked somewhere.",
            $"Take it off and find where before anything else. It is not straightened and run again.",
            Practice
        );

    public void Tempered(bool known) =>
        Add(
            Severity.Stop,
            "press-untempered",
            known
                ? (Sentence)
                    $"The weld is not tempered: beside it the steel may be as hard and brittle as a file, and pressing cracks it."
                : $"It is not known whether the weld was tempered, and an untempered one cracks under the press.",
            known
                ? (Sentence)
                    $"Temper it, let it cool right through, then turn it under the dial again."
                : $"Find out. If nobody can say, temper it, let it cool right through, and turn it under the dial again.",
            Practice
        );

    public void FileSkates() =>
        Add(
            Severity.Stop,
            "press-hard-case",
            $"A file skates where the ram would stand: that is a hard case. It cracks when it is bent, and it can burst.",
            $"Do not press there. Move to softened bar beside the weld, or cut and set up again.",
            Practice
        );

    public void NoRam(double bend, string what) =>
        Add(
            Severity.Stop,
            "press-no-place",
            $"There is no place for the ram near the bend at {Say.Length(bend)}: {what} is in the way.",
            $"Do not press it. Cut it and set it up again, straighter.",
            Practice
        );

    public void NoBlocks(double ram, double shortest, double longest) =>
        Add(
            Severity.Stop,
            "press-no-blocks",
            $"No two places for the blocks were found on either side of {Say.Length(ram)}, {Say.Length(shortest)} to {Say.Length(longest)} apart and clear of splines, seats, welds and ends.",
            $"Take a press with another span, or hollowed blocks that clear what is there.",
            Practice
        );

    public void CaseStressed(double share) =>
        Add(
            Severity.Stop,
            "press-case-stressed",
            $"However the blocks stand, the hard case between them would see {Say.Share(share)} of its own yield; {Say.Share(PressLimits.CaseShare)} is as far as it is taken here.",
            $"Do not press it. Cut it and set it up again, straighter.",
            Practice
        );

    public void CaseBetween(double share) =>
        Add(
            Severity.Caution,
            "press-case-between",
            $"There is hard case between the blocks. It will see up to {Say.Share(share)} of its own yield.",
            $"Soft caps under it, at most {PressLimits.StrokesOnCase} strokes in all, and stop at any click.",
            "published abstracts on straightening case-hardened shafts; the numbers are common practice, no source"
        );

    public void SetOff() =>
        Add(
            Severity.Stop,
            "press-set-off",
            $"On one side of the weld it is high where it is low on the other: the two pieces lie beside one axis, not at an angle.",
            $"One bend cannot take that out; it needs two against each other. Cut it and set it up again.",
            Geometry
        );

    public void PartSetOff() =>
        Add(
            Severity.Caution,
            "press-part-set-off",
            $"Part of it is a bend at the weld and part a set-off: the two pieces lie beside one axis by some of it.",
            $"The press takes out the bend alone. Read again along the shaft after the first strokes, and set it up again if the rest is over the limit.",
            Geometry
        );

    public void NotABend(double runOut, double bend) =>
        Add(
            Severity.Caution,
            "press-not-a-bend",
            $"Run-out is {Say.Fine(runOut)}, but only {Say.Fine(bend)} of it is bend. The rest is shape: oval, lobes or a rough surface, and no press takes that out.",
            $"Read beside it on clean, round bar. If the bend there is inside the limit, leave it.",
            Geometry
        );

    public void TooMany(int strokes, bool hard) =>
        Add(
            Severity.Stop,
            "press-too-many",
            hard
                ? (Sentence)
                    $"{strokes} strokes with hard case between the blocks. Repeated loading cracks the case."
                : $"{strokes} strokes, and it is not straight.",
            $"Press no more. Crack-test it, and find out what is different from what is written here: blocks, steel, where it is bent.",
            Practice
        );

    public void NoResponse(int strokes) =>
        Add(
            Severity.Stop,
            "press-no-response",
            $"The last {strokes} strokes were to leave something and left nothing.",
            $"Press no deeper. Check that the depth is counted from contact and not from rest, that the blocks do not give, and that the steel is what is written here.",
            Practice
        );

    public void Strained(double kept) =>
        Add(
            Severity.Stop,
            "press-strained",
            $"All strokes together have left {Say.Share(kept)} of strain at the surface, more than {Say.Share(PressLimits.StrainKept)}.",
            $"Press no more there. Crack-test it; cut it and set it up again.",
            Practice
        );

    public void StrainRules() =>
        Add(
            Severity.Note,
            "press-strain-rules",
            $"The stroke stops where the surface strains by {Say.Share(PressLimits.Strain)}; it will take more than one.",
            $"Crack-test when it is straight.",
            Practice
        );

    public void TooWeak(double load, double most) =>
        Add(
            Severity.Caution,
            "press-too-weak",
            $"That may take {Say.Load(load)}; this press pushes {Say.Load(most)}.",
            $"Stand the blocks farther apart, or take a larger press.",
            Own
        );

    public void Overshot() =>
        Add(
            Severity.Caution,
            "press-went-too-far",
            $"The last stroke went past straight.",
            $"Turn the shaft to the new high point. Bent steel yields sooner on the way back, so the stroke is shorter than the one before would suggest.",
            "Bauschinger effect, any text on plasticity; common practice"
        );

    public void ReadAfter() =>
        Add(
            Severity.Caution,
            "press-read-after",
            $"The dial was not read after the last stroke, so what it did is not known.",
            $"Turn the shaft under the dial at the same station, then come back.",
            Practice
        );

    public void NoTurn() =>
        Add(
            Severity.Note,
            "press-no-turn",
            $"No turn under the dial at this moment has a bend that could be told.",
            $"Read one turn, eight places, at the place where it wobbles most.",
            Practice
        );

    public void NoDiameter() =>
        Add(
            Severity.Note,
            "press-no-diameter",
            $"The diameter where it is bent is not known, so no stroke can be reckoned.",
            $"Measure it with the caliper.",
            Own
        );

    public void NoHigh() =>
        Add(
            Severity.Caution,
            "press-no-high",
            $"It is over the limit, but no one side of it is high.",
            $"Read a full turn at eight places. If it stays so, it is shape and not bend.",
            Geometry
        );

    public void SupportsUnknown(double length) =>
        Add(
            Severity.Caution,
            "press-supports-unknown",
            $"It is not noted on what the shaft turned. It is taken to turn on its ends, {Say.Length(length)} apart, where a bend shows most; the stroke comes out short rather than long.",
            $"Note the supports with the turn: the first stroke is then nearer.",
            Geometry
        );

    public void LengthUnknown(double length) =>
        Add(
            Severity.Note,
            "press-length-unknown",
            $"The length of the shaft is not known; {Say.Length(length)} is taken, and the places below are counted as if the bend were in its middle.",
            $"Measure it: the first stroke is then nearer.",
            Practice
        );

    public void SteelUnknown(double low, double high) =>
        Add(
            Severity.Note,
            "press-wide-yield",
            $"Yield there is taken as {Say.Stress(low)} to {Say.Stress(high)}, because the steel is a guess. The first strokes are short and may leave nothing: that too teaches.",
            $"A hardness of the bar beside the weld narrows it.",
            "ranges of the strength stage"
        );

    public void Bridge() =>
        Add(
            Severity.Caution,
            "press-bridge",
            $"The ram stands over the weld.",
            $"Use a soft cap hollowed so that it bears on the bar beside the weld, not on its toes.",
            Practice
        );

    public void Beside(double bend, double ram) =>
        Add(
            Severity.Caution,
            "press-beside",
            $"The ram cannot stand at the bend ({Say.Length(bend)}) and stands at {Say.Length(ram)}. Pressing beside a bend leaves a small double bend.",
            $"Read on both sides of the weld when it is done.",
            Geometry
        );

    public void PlainBar() =>
        Add(
            Severity.Note,
            "press-plain-bar",
            $"Reckoned as plain bar of one diameter, without knowing its splines, seats and hard stretches.",
            $"Keep blocks and ram off splines, boot seats, grooves, shoulders and weld toes yourself, and off anything a file skates on.",
            Practice
        );

    public void DialBlind() =>
        Add(
            Severity.Caution,
            "press-dial-blind",
            $"Where the dial stood, a bend under this ram hardly shows.",
            $"Read near the bend, well between the supports.",
            Geometry
        );

    public void CrackTestAfter() =>
        Add(
            Severity.Note,
            "press-crack-test-after",
            $"Pressing opens what heat began.",
            $"Crack-test after every session at the press, and turn it under the dial again after a rest.",
            Practice
        );

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _findings.Add(new Finding(severity, Stage.Truing, code, text, action, source));
}
