using Microsoft.AspNetCore.Components;
using Shaftwright.Drawings;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Pages.Pictures;

/// <summary>A drawing ready for the page.</summary>
/// <param name="Svg">The picture.</param>
/// <param name="Table">The table behind it.</param>
public sealed record Scaled(MarkupString Svg, MarkupString Table);

/// <summary>The drawings to scale of a job's answers, at the width of a phone. Null where there is nothing to draw yet.</summary>
public static class ToScale
{
    /// <summary>Plunge and angle inside the joint's envelope, or the lengths that each position allows.</summary>
    public static Scaled? Plunge(JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Length is { Positions.Count: > 0 } length
            ? Ready(PlungeDrawing.Of(length, result.Job.Joints, display), "plunge")
            : null;
    }

    /// <summary>A linkage by its points, one of them in hand.</summary>
    public static Scaled? Linkage(
        Corner.Linkages.LinkageInput linkage,
        Corner.Linkages.LinkagePoint? inHand
    ) => Ready(LinkageDrawing.Of(linkage, inHand), "linkage");

    /// <summary>The vee with both ends and the shims.</summary>
    public static Scaled? Vee(JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Weld is { } weld
            ? Ready(
                VeeDrawing.Of(
                    weld,
                    result.Job.Weld?.InnerDiameter?.Value ?? result.Cut?.InnerDiameter,
                    result.Job.Weld?.OuterDiameter?.Value ?? result.Cut?.OuterDiameter,
                    result.Job.Weld?.VeeAngle?.Value,
                    display
                ),
                "vee"
            )
            : null;
    }

    /// <summary>The groove with its beads.</summary>
    public static Scaled? Groove(JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Weld?.Preparation is { } groove
            ? Ready(GrooveDrawing.Of(groove, display), "groove")
            : null;
    }

    /// <summary>The next layer, bead by bead.</summary>
    /// <param name="plan">The order of the beads.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="now">Number of the bead to weld now, from 1; 0 for none.</param>
    public static Scaled? Beads(Weld.BeadPlan? plan, Display display, int now = 0) =>
        plan is null ? null : Ready(BeadDrawing.Of(plan, display, now: now), "beads");

    /// <summary>One donor as far as it was walked.</summary>
    public static Scaled? Donor(JobResult result, bool inner, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        var donor = inner ? result.Donors?.InnerEnd : result.Donors?.OuterEnd;
        return donor is { Stretches.Count: > 0 }
            ? Ready(DonorDrawing.Of(donor, null, display), "donor")
            : null;
    }

    /// <summary>Both donors with their cuts.</summary>
    public static Scaled? Donors(JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Donors is { InnerEnd: not null, OuterEnd: not null } donors
            ? Ready(DonorDrawing.TwoDonors(donors, result.Cut, display), "donors")
            : null;
    }

    /// <summary>The shaft that the cut makes.</summary>
    public static Scaled? Made(JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Cut?.Made is { } made ? Ready(ShaftDrawing.Of(made, display), "made") : null;
    }

    /// <summary>One turn under the dial.</summary>
    public static Scaled? Dial(JobResult result, string turnId, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        return
            result.Truing?.Turns.FirstOrDefault(t => t.TurnId == turnId) is { } turn
            && result.Job.Truing?.Turns.FirstOrDefault(t => t.Id == turnId) is { } read
            ? Ready(DialDrawing.Of(turn, read, display), "dial-" + turnId)
            : null;
    }

    /// <summary>The shaft's bow at a moment, if several stations were read; else the last turn of it.</summary>
    public static Scaled? Bow(JobResult result, Moment moment, Display display)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.TruingAt(moment) is not { } truing)
            return null;
        return truing.Shape is { Stations.Count: > 1 } shape
                ? Ready(BowDrawing.Of(shape, truing.Turns, display), "bow-" + moment)
            : truing.Turns.LastOrDefault(t => t.RunOut is not null) is { } last
                ? Dial(result, last.TurnId, display)
            : null;
    }

    /// <summary>The next stroke of the press.</summary>
    public static Scaled? Press(PressResult press, Display display) =>
        Ready(PressDrawing.Of(press, display), "press");

    private static Scaled? Ready(Drawing? drawing, string id) =>
        drawing is null
            ? null
            : new(
                (MarkupString)SvgWriter.Write(drawing, id),
                (MarkupString)Markup.Html(drawing.Table)
            );
}
