namespace Shaftwright.Strength;

/// <summary>Vickers to Rockwell C, for the steels of this program.</summary>
/// <remarks>Source: ASTM E140, Table 1, steels other than austenitic (from memory); rows below 20 HRC lie beyond the Rockwell scale
/// and carry on its curve. Each conversion is good to one or two points, no better.</remarks>
public static class VickersScale
{
    private static readonly (double Hv, double Hrc)[] s_rows =
    [
        (160, 0),
        (180, 6),
        (196, 10),
        (213, 14),
        (238, 20),
        (266, 25),
        (302, 30),
        (345, 35),
        (392, 40),
        (446, 45),
        (513, 50),
        (544, 52),
        (595, 55),
        (653, 58),
        (697, 60),
        (746, 62),
        (832, 65),
    ];

    /// <summary>HRC of a Vickers hardness, straight lines between the rows; the ends are kept beyond them.</summary>
    /// <param name="hv">HV.</param>
    public static double ToHrc(double hv)
    {
        if (hv <= s_rows[0].Hv)
            return s_rows[0].Hrc;
        for (var i = 1; i < s_rows.Length; i++)
        {
            var (a, b) = (s_rows[i - 1], s_rows[i]);
            if (hv <= b.Hv)
                return a.Hrc + (b.Hrc - a.Hrc) * (hv - a.Hv) / (b.Hv - a.Hv);
        }
        return s_rows[^1].Hrc;
    }
}
