using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>Says which tapes and readings do not fit, and which points the readings moved further than they were measured to.</summary>
internal static class LinkageDoubts
{
    private const string Derived = "least squares, derived in docs/linkages.md";

    /// <summary>A tape or a point this many standard uncertainties off is called odd.</summary>
    private const double Odd = 3;

    /// <summary>Tapes that do not meet.</summary>
    public static void Tapes(LinkageModel model, List<Finding> findings)
    {
        foreach (
            var point in model
                .Tapes.Where(t => Math.Abs(t.Taped - t.Fitted) > Odd * t.StandardUncertainty)
                .GroupBy(t => t.Point)
        )
        {
            var worst = point.MaxBy(t => Math.Abs(t.Taped - t.Fitted) / t.StandardUncertainty)!;
            Add(
                findings,
                Severity.Caution,
                "tapes-do-not-meet",
                $"The tapes to the {LinkageFields.Words(point.Key)} do not meet: the one from {worst.From} is {Say.Length(Math.Abs(worst.Taped - worst.Fitted))} too {(worst.Taped > worst.Fitted ? "long" : "short")}, more than the {Say.Length(Odd * worst.StandardUncertainty)} it could be off by.",
                $"Tape that point again, from {worst.From} first.",
                Derived
            );
        }
    }

    /// <summary>What the readings say of the linkage.</summary>
    public static void Readings(Correction correction, CornerInput corner, List<Finding> findings)
    {
        var left = correction.Readings.Where(r => r.LeftOut).ToList();
        foreach (var r in left)
            Add(
                findings,
                Severity.Caution,
                "reading-contradicts-linkage",
                $"The {r.What} read {Where(corner, r)} does not fit the linkage, nor what the other readings say of it: it is {Off(r)} off and could be {Could(r)}. It is left out.",
                $"Take that reading again.",
                Derived
            );
        var still = correction
            .Readings.Where(r =>
                !r.LeftOut
                && Math.Abs(r.Read - r.Fitted) > Correction.DoesNotFit * r.StandardUncertainty
            )
            .ToList();
        if (still.Count > 0)
            Add(
                findings,
                Severity.Stop,
                "readings-contradict-linkage",
                $"The readings and the measured points contradict each other: {still.Count} of {correction.Readings.Count - left.Count} readings stay off, the {still[0].What} {Where(corner, still[0])} by {Off(still[0])}.",
                $"Check which points belong to which name, then the trial shaft's length and where mid-plunge was taken; measure those again.",
                Derived
            );
        if (!correction.Settled)
            Add(
                findings,
                Severity.Caution,
                "correction-not-settled",
                $"Correcting the points by the readings did not come to rest.",
                $"Check the points and readings for slips; until then believe neither.",
                Derived
            );
        var far = correction
            .Moved.Where(m => Math.Abs(m.After - m.Before) > Odd * m.UncertaintyBefore)
            .OrderByDescending(m => Math.Abs(m.After - m.Before) / m.UncertaintyBefore)
            .ToList();
        foreach (var m in far)
            Add(
                findings,
                Severity.Caution,
                "point-moved-far",
                $"The readings moved the {m.Words} by {Amount(m.After - m.Before, m.IsAngle)}, though it was measured to {Amount(Odd * m.UncertaintyBefore, m.IsAngle)}.",
                $"Measure that point again.",
                Derived
            );
        var most = correction
            .Moved.Where(m => m.UncertaintyBefore > 0)
            .MaxBy(m => Math.Abs(m.After - m.Before) / m.UncertaintyBefore);
        if (most is not null && far.Count == 0)
            Add(
                findings,
                Severity.Note,
                "points-corrected",
                $"The readings corrected the points, most of all the {most.Words}: by {Amount(most.After - most.Before, most.IsAngle)}, where it was measured to ± {Amount(2 * most.UncertaintyBefore, most.IsAngle)}. The corrected points are used.",
                $"Nothing to do.",
                Derived
            );
    }

    private static Sentence Where(CornerInput corner, ReadingFit r)
    {
        var reading = corner.Readings[r.Reading];
        return PositionWords.At(reading.Travel!.Value, reading.Steering);
    }

    private static bool IsAngle(ReadingFit r) => r.What.EndsWith("angle", StringComparison.Ordinal);

    private static Sentence Off(ReadingFit r) => Amount(r.Read - r.Fitted, IsAngle(r));

    private static Sentence Could(ReadingFit r) =>
        Amount(Correction.DoesNotFit * r.StandardUncertainty, IsAngle(r));

    private static Sentence Amount(double by, bool angle) =>
        angle ? (Sentence)$"{Say.Angle(Math.Abs(by))}" : $"{Say.Length(Math.Abs(by))}";

    private static void Add(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new Finding(severity, Stage.Corner, code, text, action, source));
}
