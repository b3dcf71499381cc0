using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

/// <summary>A shaft bent on purpose, and what a dial shows of it. The lines are written here anew, from their geometry.</summary>
internal static class BentShaft
{
    /// <summary>Two straight pieces meeting at w, less the line through two supports.</summary>
    public static Across Roof(Across kink, double w, double x, double a, double b) =>
        Seen(p => p < w ? 0 : -(p - w), x, a, b) * kink;

    /// <summary>A parabola, likewise.</summary>
    public static Across Curve(Across curvature, double x, double a, double b) =>
        Seen(p => -p * p / 2, x, a, b) * curvature;

    /// <summary>Two parallel pieces, likewise.</summary>
    public static Across Step(Across setOff, double w, double x, double a, double b) =>
        Seen(p => p > w ? 1 : 0, x, a, b) * setOff;

    private static double Seen(Func<double, double> line, double x, double a, double b)
    {
        var slope = (line(b) - line(a)) / (b - a);
        return line(x) - (line(a) + slope * (x - a));
    }

    /// <summary>Turns at stations, on vees, read exactly or with what is added.</summary>
    public static DialTurn[] Turns(
        double[] stations,
        (double First, double Second) vees,
        Func<double, double, double, Across> offset,
        int readings = 12,
        Func<double, double>? added = null
    )
    {
        return
        [
            .. stations.Select(x =>
            {
                var e = offset(x, vees.First, vees.Second);
                return DialTurns.At([
                    .. Enumerable
                        .Range(0, readings)
                        .Select(i => 360.0 * i / readings)
                        .Select(d =>
                        {
                            var t = d * Math.PI / 180;
                            return (
                                d,
                                Math.Round(
                                    0.5
                                        + e.Toward0 * Math.Cos(t)
                                        + e.Toward90 * Math.Sin(t)
                                        + (added?.Invoke(t) ?? 0),
                                    9
                                )
                            );
                        }),
                ]) with
                {
                    Id = "at-" + x.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Support = Support.Vees,
                    Station = DialTurns.Mm(x),
                    FirstSupportAt = DialTurns.Mm(vees.First),
                    SecondSupportAt = DialTurns.Mm(vees.Second),
                };
            }),
        ];
    }
}
