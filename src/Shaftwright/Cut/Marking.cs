using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>Turns a cut into lines to scribe and lengths to check.</summary>
internal static class Marking
{
    /// <summary>Change of diameter that a caliper's jaw holds against, mm. Common practice, no source.</summary>
    private const double Edge = 0.5;

    /// <summary>What a caliper reaches, mm. Common practice, no source.</summary>
    private const double CaliperReach = 150;

    /// <summary>Bar that must lie bare beside the weld so that the torch gets all round it, mm. Common practice, no source.</summary>
    private const double TorchRoom = 60;

    /// <summary>The marks of a cut; null when a piece ends where nothing was measured.</summary>
    public static CutMarks? Of(Piece inner, Piece outer, double x, double y, JoinPlan plan)
    {
        if (inner.StretchAt(x) is null || outer.StretchAt(y) is null)
            return null;
        var overall = x + y + plan.GapLeft;
        return new(
            Mark(inner, x, plan),
            Mark(outer, y, plan),
            x + y,
            x + y + plan.Gap,
            new Band(overall - plan.PlusMinus, overall + plan.PlusMinus),
            Sleeve(inner, outer, x, y, plan)
        );
    }

    private static PieceMark Mark(Piece piece, double c, JoinPlan plan)
    {
        var scribe = c + plan.Facing;
        MarkFace? near = null;
        var stretches = piece.Donor.Stretches;
        for (var i = 1; i < stretches.Count && stretches[i].From < c; i++)
        {
            var (before, here) = (stretches[i - 1], stretches[i]);
            if (
                before.Guessed
                || here.Guessed
                || Math.Abs(before.EndDiameter - here.Diameter) < Edge
            )
                continue;
            var away = scribe - here.From;
            if (away <= CaliperReach)
                near = new(
                    before.EndDiameter > here.Diameter
                        ? $"the end of {Words(before.Kind)}"
                        : $"the beginning of {Words(here.Kind)}",
                    here.From,
                    away
                );
        }
        return new(piece.End, scribe, scribe + plan.Kerf, c, near);
    }

    private static SleeveMake? Sleeve(Piece inner, Piece outer, double x, double y, JoinPlan plan)
    {
        if (plan.SleeveHalf is not { } half)
            return null;
        var bore =
            Math.Max(Thickest(inner, x, plan.SleeveReach), Thickest(outer, y, plan.SleeveReach))
            + plan.SleeveFit;
        var room = Math.Max(Room(inner, x, bore), Room(outer, y, bore));
        return new(
            2 * half,
            plan.SleeveOutside,
            bore,
            plan.SleeveFit,
            room < TorchRoom + 2 * half,
            room
        );
    }

    private static double Thickest(Piece piece, double c, double reach)
    {
        var most = 0.0;
        foreach (var s in piece.Donor.Stretches)
        {
            var (from, to) = (Math.Max(s.From, c - reach), Math.Min(s.To, c));
            if (from < to)
                most = Math.Max(most, Math.Max(s.At(from), s.At(to)));
        }
        return most;
    }

    /// <summary>How far back from the face the sleeve's bore passes over the piece.</summary>
    private static double Room(Piece piece, double c, double bore)
    {
        for (var i = piece.Donor.Stretches.Count - 1; i >= 0; i--)
        {
            var s = piece.Donor.Stretches[i];
            if (s.From >= c)
                continue;
            var to = Math.Min(s.To, c);
            if (s.At(to) > bore || s.Kind is ZoneKind.SensorRing or ZoneKind.Damper)
                return c - to;
            if (s.Diameter > bore)
                return c - (s.From + (to - s.From) * (s.Diameter - bore) / (s.Diameter - s.At(to)));
        }
        return c;
    }

    private static string Words(ZoneKind kind) =>
        kind switch
        {
            ZoneKind.Spline => "the spline",
            ZoneKind.Groove => "the groove",
            ZoneKind.BootSeat => "the boot seat",
            ZoneKind.SensorRing => "the sensor ring",
            ZoneKind.Damper => "the damper",
            ZoneKind.Step => "the shoulder",
            ZoneKind.Taper => "the taper",
            _ => "the bar",
        };
}
