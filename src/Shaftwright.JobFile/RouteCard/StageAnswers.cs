using Shaftwright.Car;
using Shaftwright.Corner.Linkages;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Weld;

namespace Shaftwright.JobFile;

/// <summary>Each stage's answer as a sentence that could be said aloud. The page, the sheet and the command line say the same.</summary>
public static class StageAnswers
{
    /// <summary>What was read at the corner; null when nothing was.</summary>
    public static Sentence? Corner(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Corner?.Linkage is { Positions.Count: > 0 } linkage)
            return Linkage(linkage);
        if (result.Job.Corner is not { Readings.Count: > 0 } corner)
            return null;
        var travels = corner.Readings.Select(r => r.Travel?.Value).OfType<double>().ToList();
        if (travels.Count == 0)
            return null;
        return $"{Count(corner.Readings.Count, "reading", "readings")}, from {Travel(travels.Min())} to {Travel(travels.Max())}.";
    }

    private static Sentence Linkage(LinkageResult linkage)
    {
        var reached = linkage.Positions.Where(p => p.Line is not null).ToList();
        Sentence kind = linkage.Kind switch
        {
            LinkageKind.DoubleWishbone => $"Double wishbones",
            LinkageKind.Strut => $"Strut",
            LinkageKind.PivotedArm => $"Arm on one axis",
            LinkageKind.FiveLink => $"Five links",
            _ => $"Beam",
        };
        return reached.Count == 0
            ? (Sentence)$"{kind} by its points; it goes nowhere that was asked for."
            : $"{kind} by its points: {Say.Length(reached.Min(p => p.Line!.Value.Distance))} to {Say.Length(reached.Max(p => p.Line!.Value.Distance))} between the joint centres, from {Travel(reached.Min(p => p.Travel))} to {Travel(reached.Max(p => p.Travel))}.";
    }

    /// <summary>Torque into the shaft; null when it is not known.</summary>
    public static Sentence? Car(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Car?.ThisCar is not { } car)
            return null;
        var by = car.Limit switch
        {
            TorqueLimit.EngineSide => "set by the engine side",
            TorqueLimit.TyreSide => "set by the tyre, which slips first",
            TorqueLimit.OnlyEngineSideKnown => "by the engine side alone",
            _ => "by the tyre alone",
        };
        return $"Torque in the shaft {Between(Say.Torque(car.Governing.Low), Say.Torque(car.Governing.High))}, {by}.";
    }

    /// <summary>Where the joints sit; null when that is not known.</summary>
    public static Sentence? Joints(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (
            result.Joints
            is not { InnerSeatToCentre: { } inner, OuterSeatToCentre: { } outer } joints
        )
            return null;
        Sentence ends = joints is { InnerSeatToEnd: { } ie, OuterSeatToEnd: { } oe }
            ? (Sentence)$" The shaft ends {Say.Length(ie)} and {Say.Length(oe)} beyond them."
            : $" How far the shaft ends beyond them is not known yet.";
        return $"Joint centres {Say.Length(inner)} (inner) and {Say.Length(outer)} (outer) beyond what locates them.{ends}";
    }

    /// <summary>The length to make, or that there is none; null when too little is known.</summary>
    public static Sentence? Length(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Length is not { Shortest: not null, Longest: not null } length)
            return null;
        if (length.Contradicted)
            return $"No length yet: two readings contradict each other. To satisfy both, {Say.Length(length.Missing)} is missing.";
        if (length.Make is not { } make)
            return $"No length works: {Say.Length(length.Missing)} is missing.";
        Sentence overall = length switch
        {
            { Overall: { } o } => $" That is {Say.Length(o)} overall.",
            { SeatToSeat: { } s } => $" That is {Say.Length(s)} from seat to seat.",
            _ => Sentence.Plain(""),
        };
        if (!length.HasWindow)
            return $"No length works, {Say.Length(make)} neither: {Say.Length(length.Missing)} is missing.";
        if (length.Findings.FirstOrDefault(f => f.Severity == Severity.Stop) is { } stop)
            return $"Do not make it at {Say.Length(make)}. {stop.Text}";
        return $"Make it {Say.Length(make)} from joint centre to joint centre, {Say.Length(length.Tolerance)} either way.{overall}";
    }

    /// <summary>What many drawn cars say of the length.</summary>
    /// <param name="spread">What the run came to.</param>
    public static Sentence Spread(LengthSpread spread)
    {
        ArgumentNullException.ThrowIfNull(spread);
        var cars = spread
            .Cars.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture)
            .Replace(',', '\u00a0');
        Sentence asks = double.IsFinite(spread.Low)
            ? (Sentence)
                $"95 of 100 ask for a length from {Say.Length(spread.Low)} to {Say.Length(spread.High)}. "
            : Sentence.Plain("");
        Sentence made =
            spread.Making > 0
                ? (Sentence)$", made to {Say.Length(spread.Making)} either way"
                : Sentence.Plain("");
        Sentence none =
            spread.ChanceOfNoWindow.Value > 0
                ? (Sentence)
                    $" On {Say.Chance(spread.ChanceOfNoWindow.Value)} of the cars no length works at all."
                : Sentence.Plain("");
        // Nothing counted is no proof of nothing: it says how many were looked at.
        Sentence Chance(Counted chance) =>
            chance.Value == 0 ? (Sentence)$"none of {cars}" : $"{Say.Chance(chance.Value)}";
        return $"Of {cars} cars that fit what was measured, {asks}With {Say.Length(spread.Length)}{made}, the chance of passing a limit is {Chance(spread.ChanceOfViolation)}, of reaching a stop {Chance(spread.ChanceOfContact)}.{none}";
    }

    /// <summary>What has been walked; null until both donors have.</summary>
    public static Sentence? Donors(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (
            result.Donors
            is not { InnerEnd: { Length: > 0 } inner, OuterEnd: { Length: > 0 } outer }
        )
            return null;
        return $"Inner end from {NameOf(inner, "the first donor")}, {Say.Length(inner.Length)} walked; outer end from {NameOf(outer, "the second donor")}, {Say.Length(outer.Length)} walked.";
    }

    /// <summary>Where to cut; null when there is nothing to say yet.</summary>
    public static Sentence? Cut(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Cut is not { } cut)
            return null;
        if (cut is not { InnerAt: { } inner, OuterAt: { } outer })
            return null;
        var first = NameOf(result.Donors?.InnerEnd, "the inner-end donor");
        var second = NameOf(result.Donors?.OuterEnd, "the outer-end donor");
        Sentence step = cut.DiameterStep is { } d
            ? (Sentence)$" There they differ by {Say.Fine(d)} in diameter."
            : Sentence.Plain("");
        Sentence overall = cut.Overall is { } o
            ? (Sentence)
                $" Welded, that makes {Say.Length(o)} overall, {Say.Length(cut.OverallPlusMinus)} either way."
            : Sentence.Plain("");
        return $"Cut {first} at {Say.Length(inner)} and {second} at {Say.Length(outer)}, each from its joint end.{step}{overall}";
    }

    /// <summary>The weakest place and its margin; null when nothing could be judged.</summary>
    public static Sentence? Strength(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Strength?.Weakest is not { } weakest)
            return null;
        Sentence margin = weakest.Margin is { } m
            ? (Sentence)
                $", {Between(Say.Factor(m.Low), Say.Factor(m.High))} times the torque in the shaft"
            : $"; the torque in the shaft is not known";
        Sentence donor = weakest.NewOverDonor is { } d
            ? (Sentence)
                $" It is asked for {Between(Say.Factor(d.Low), Say.Factor(d.High))} times what its donor was made for."
            : Sentence.Plain("");
        return $"It yields first at the {Words(weakest.Words)}: at {Between(Say.Torque(weakest.YieldTorque.Low), Say.Torque(weakest.YieldTorque.High))}{margin}.{donor}";
    }

    /// <summary>Which shims; null when the diameters are not known.</summary>
    public static Sentence? Weld(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Weld is not { Shim: { } shim } weld)
            return null;
        if (weld.ShimUnder is not { } under)
            return $"Both ends are alike: no shims.";
        var piece = under == ShaftEnd.Inner ? "inner-end" : "outer-end";
        return weld.Packs is { } packs
            ? (Sentence)
                $"{Say.Fine(shim)} of shim on each face under the {piece} piece: {Leaves(packs.Left)} on one, {Leaves(packs.Right)} on the other."
            : (Sentence)
                $"{Say.Fine(shim)} of shim on each face under the {piece} piece; the blades at hand do not make it.";
    }

    /// <summary>How straight it runs; null when it was not turned under the dial.</summary>
    public static Sentence? Truing(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        // What the last stroke left is newer than any turn before it.
        return result.Press?.SinceWords ?? (result.Truing is { } truing ? Truing(truing) : null);
    }

    internal static Sentence? Truing(TruingResult truing)
    {
        if (truing.Turns.Count == 0)
            return null;
        var worst = truing.Turns.MaxBy(t => (t.Verdict, t.RunOut ?? 0))!;
        if (truing.Turns.Count == 1)
            return worst.Words;
        if (truing.Shape is not { Stations.Count: > 1 } shape || worst.RunOut is not { } runOut)
            return $"{truing.Turns.Count} turns; the worst: {worst.Words}";
        // The shape says where it is high; the worst turn need not say it too.
        var stands = worst.Verdict switch
        {
            RunOutVerdict.Inside => "inside it",
            RunOutVerdict.Over => "over it",
            RunOutVerdict.ReadAgain =>
                "over it only by readings that stand alone: clean there and read again",
            _ => "too close to call",
        };
        return $"{truing.Turns.Count} turns; the worst runs out {Say.Fine(runOut)} against a limit of {Say.Fine(worst.Limit)}, {stands}. {shape.Words}";
    }

    /// <summary>What the crack tests ask for at an instant; null when there is nothing to test for.</summary>
    /// <param name="tests">The tests as evaluated, with the work that was signed for.</param>
    /// <param name="input">The tests as written down.</param>
    /// <param name="now">The instant.</param>
    public static Sentence? CrackTest(
        CrackTestResult? tests,
        CrackTestInput? input,
        DateTimeOffset now
    )
    {
        if (tests is null)
            return null;
        if (tests.Sites.FirstOrDefault(s => s.State == SiteState.Stopped) is { } stopped)
            return stopped.Words;
        if (
            Entries.Standing(input?.Tests ?? []) is [.., { Steps.Count: > 0 } run]
            && tests.Runs[^1].Verdict == RunVerdict.UnderWay
        )
            return Procedure.At(run, now).Words;
        if (
            tests.Sites.FirstOrDefault(s =>
                s.State is SiteState.ToRetest or SiteState.Indication
            ) is
            { } site
        )
            return site.Words;
        return tests
            .Demands.Where(d => d.At(now) != DemandState.Done)
            .OrderByDescending(d => d.At(now))
            .Select(d => d.Words(now))
            .FirstOrDefault((Sentence)$"Nothing is to be tested now.");
    }

    private static Sentence Leaves(ShimPack pack)
    {
        var words = Sentence.Plain("");
        for (var i = 0; i < pack.Leaves.Count; i++)
            words =
                i == 0
                    ? (Sentence)$"{Say.Fine(pack.Leaves[i])}"
                    : $"{words} + {Say.Fine(pack.Leaves[i])}";
        return words;
    }

    private static Sentence Between(Shown low, Shown high) =>
        low.In(Display.Metric) == high.In(Display.Metric) ? (Sentence)$"{low}" : $"{low} to {high}";

    private static Sentence Travel(double travel) =>
        travel switch
        {
            > 0.05 => $"{Say.Length(travel)} bump",
            < -0.05 => $"{Say.Length(-travel)} droop",
            _ => $"ride height",
        };

    private static string Count(int n, string one, string many) =>
        n.ToString(System.Globalization.CultureInfo.InvariantCulture) + " " + (n == 1 ? one : many);

    private static string NameOf(DonorProfile? donor, string otherwise) =>
        donor is { Name.Length: > 0 } ? donor.Name : otherwise;

    private static string Words(string words) =>
        words.Length > 1 && char.IsUpper(words[0]) && char.IsLower(words[1])
            ? char.ToLowerInvariant(words[0]) + words[1..]
            : words;
}
