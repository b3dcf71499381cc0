using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>Whether an end of a shaft takes a joint. An end is offered only where something says that it fits.</summary>
internal static class EndFit
{
    /// <summary>Difference of two diameters over the teeth that is no longer the caliper, mm. Common practice, no source.</summary>
    public const double SplineTells = 0.3;

    /// <summary>Whether anything is known of a joint by which an end can be told to fit it.</summary>
    public static bool Known(JointInput? joint) =>
        joint is not null
        && (joint.Name.Length > 0 || joint.Teeth > 0 || joint.SplineDiameter is not null);

    /// <summary>Why an end does not take a joint; null when it does, or when nothing is known of the joint.</summary>
    /// <param name="end">What was said of the end.</param>
    /// <param name="shaft">The shaft as walked.</param>
    /// <param name="far">True for the end it was not walked from.</param>
    /// <param name="joint">The joint.</param>
    public static Sentence? Against(DonorEnd end, DonorShaft shaft, bool far, JointInput? joint)
    {
        if (!Known(joint))
            return null;
        var spline = (far ? shaft.Zones.Reverse() : shaft.Zones).FirstOrDefault(z =>
            z.Kind == ZoneKind.Spline
        );
        var proven = false;
        if (joint!.Name.Length > 0 && end.Fits.Count > 0)
        {
            if (!end.Fits.Contains(joint.Name, StringComparer.OrdinalIgnoreCase))
                return $"fits {string.Join(", ", end.Fits)}, not {joint.Name}";
            proven = true;
        }
        if (joint.Teeth > 0 && spline is { Teeth: > 0 })
        {
            if (spline.Teeth != joint.Teeth)
                return $"has {spline.Teeth} teeth, and the joint {joint.Teeth}";
            proven = true;
        }
        if (joint.SplineDiameter is { } takes && spline?.Diameter is { } over)
        {
            if (Math.Abs(over.Value - takes.Value) > SplineTells)
                return $"measures {Say.Diameter(over.Value)} over its teeth, and the joint takes {Say.Diameter(takes.Value)}";
        }
        if (
            joint.Seat != SeatKind.Unknown
            && end.Seat != SeatKind.Unknown
            && joint.Seat != end.Seat
        )
            return $"locates a joint by {Words(end.Seat)}, and this one needs {Words(joint.Seat)}";
        return proven ? null : (Sentence)$"has nothing written down that says it fits the joint";
    }

    private static string Words(SeatKind seat) =>
        seat switch
        {
            SeatKind.Shoulder => "a shoulder",
            SeatKind.Clip => "a clip",
            _ => "its end against a stop",
        };
}
