using System.Globalization;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.JobFile;

/// <summary>The weld's answers, one for each of its operations, as sentences that could be said aloud.</summary>
public static class WeldAnswers
{
    /// <summary>Runs, rod and shrinkage; null until the groove is known.</summary>
    public static Sentence? Preparation(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Weld?.Preparation is not { } p)
            return null;
        Sentence rod = p.FillerLength is { } f
            ? (Sentence)$", {To(f, Say.Length)} of rod"
            : Sentence.Plain("");
        Sentence set = p.SetOverall is { } length
            ? (Sentence)$" Set {To(length, Say.Length)} overall in the vee: it draws together."
            : Sentence.Plain("");
        return $"A groove {Say.Length(p.Depth)} deep: {Whole(p.FewestRuns, p.MostRuns)} runs{rod}, {((int)Math.Round(p.Volume)).ToString(CultureInfo.InvariantCulture)} mm³ of metal.{set}";
    }

    /// <summary>What the sample gave; null when nothing was read off it.</summary>
    public static Sentence? Sample(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.KnownOfWeld?.Sample is not { } sample)
            return null;
        if (sample.Cracked == true)
            return $"The sample cracked.";
        if (FutureDates.IsAhead(sample.At, result.Now))
            return $"The sample replaces no guess yet: it is dated later than it is now.";
        if (SampleReadings.Of(sample) is not { } read)
            return $"The sample replaces no guess yet: say that it is of the same offcuts and welded as the shaft is.";
        Sentence depth = read.Fusion is { } f
            ? (Sentence)$"Fused at least {Say.Length(f.Low)} deep"
            : $"No fusion depth read";
        Sentence hard =
            read.Rows.Count > 0
                ? (Sentence)
                    $", {Say.Vickers(read.Rows.Min(r => r.Hv))} to {Say.Vickers(read.Hardest!.Value)} across"
                : $", no hardness row";
        Sentence on = sample.At is { } at
            ? (Sentence)$", sample of {at.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}"
            : Sentence.Plain("");
        return $"{depth}{hard}{on}.";
    }

    /// <summary>Offset or tilt of the tacked pieces; null when the dial was not read on both sides.</summary>
    public static Sentence? Tacks(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Weld?.Tacks is not { Offset: { } offset } t)
            return null;
        Sentence what = t.Call switch
        {
            TackCall.Break => $"Break the tacks",
            TackCall.Weld => $"Go on",
            _ => $"Read again",
        };
        Sentence tilt = t.Tilt is { } lean
            ? (Sentence)$", they lean {Say.Angle(lean)} to each other"
            : Sentence.Plain("");
        return $"{what}: the axes stand {Say.Fine(offset)} apart at the joint{tilt}.";
    }

    /// <summary>Preheat: the handbooks' band first, then the formula and what of it does not hold.</summary>
    public static Sentence? Preheat(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Weld?.Heat is not { } heat)
            return null;
        return $"Preheat to {To(heat.Preheat, Say.Temperature)}{Formula(heat)}";
    }

    /// <summary>What the formula says beside the band, to the full stop: "; the formula says 225 °C and is outside its range (carbon)."</summary>
    public static Sentence Formula(HeatNumbers heat)
    {
        ArgumentNullException.ThrowIfNull(heat);
        if (heat.Diameter is null)
            return $".";
        var outside =
            heat.MethodBLimits.Count > 0
                ? $" and is outside its range ({string.Join(", ", heat.MethodBLimits.Select(MethodB.NameOf))})"
                : "";
        Sentence says =
            heat.MethodB.High < BarHeat.Workshop ? (Sentence)$"none"
            : heat.MethodB.Low < BarHeat.Workshop ? $"none to {Say.Temperature(heat.MethodB.High)}"
            : To(heat.MethodB, Say.Temperature);
        return $"; the formula says {says}{outside}.";
    }

    /// <summary>Where the next layer begins and how hot the bar may get; null when there is no weld yet.</summary>
    public static Sentence? Beads(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result is not { Beads: { } plan, Weld.Heat: { } heat })
            return null;
        Sentence order = Sentence.Plain("");
        for (var i = 0; i < plan.Next.Count; i++)
            order =
                i == 0
                    ? (Sentence)$"{Say.Bearing(plan.Next[i].At)}"
                    : $"{order}, {Say.Bearing(plan.Next[i].At)}";
        return $"Layer {plan.NextLayer}: quarter beads at {order}. Between runs at most {Say.Temperature(heat.InterpassLimit)}.";
    }

    /// <summary>How the hydrogen is let out; null when there is no weld yet.</summary>
    public static Sentence? SlowCool(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Weld?.Heat is null
            ? null
            : (Sentence)
                $"Hold {Say.Temperature(250)} for {Say.Time(7200)} if you can, then cool wrapped.";
    }

    /// <summary>Tempering; null when there is no weld yet.</summary>
    public static Sentence? Temper(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Weld?.Heat is { } heat
            ? (Sentence)
                $"Temper at {To(heat.Temper, Say.Temperature)} for {Say.Time(heat.TemperTime)}."
            : null;
    }

    /// <summary>What the sleeve's seams stand at; null when nothing was said of them.</summary>
    public static Sentence? Sleeve(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.KnownOfWeld?.Sleeve is not { } seams)
            return null;
        return seams.AllHold
            ? (Sentence)$"Every seam is closed, clear, vented and tested: the sleeve counts."
            : $"The sleeve earns nothing yet. Still open: {string.Join("; ", seams.Open)}.";
    }

    private static Sentence To(Band band, Func<double, Shown> shown) =>
        shown(band.Low).ToString() == shown(band.High).ToString()
            ? (Sentence)$"{shown(band.High)}"
            : $"{shown(band.Low)} to {shown(band.High)}";

    private static string Whole(int fewest, int most) =>
        fewest == most
            ? fewest.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{fewest} to {most}");
}
