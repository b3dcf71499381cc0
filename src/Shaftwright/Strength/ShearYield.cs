using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>Shear yield of shaft steels, MPa, as ranges where the steel is a guess.</summary>
/// <remarks>Two conversions from tension to shear, each where it belongs. With a hardness: the torsional yield of the
/// induction-hardened shaft table (about 0.6 × tensile yield). With no hardness, only a class of steel: tensile yield ÷ √3
/// (von Mises; 0.577, the lower of the two). Typical values, guaranteed by nobody.</remarks>
public static class ShearYield
{
    private const double VonMises = 1.7320508075688772;

    // HRC, torsional yield MPa. Fett, Heat Treating Progress, October 2009, from SAE J413. Its tensile column is not used.
    private static readonly (double Hrc, double Yield)[] Table =
    [
        (0, 221),
        (10, 303),
        (20, 366),
        (30, 503),
        (40, 690),
        (50, 917),
        (52, 966),
    ];

    /// <summary>Torsional yield at a hardness, straight lines between the rows of the table.</summary>
    /// <param name="hrc">Rockwell C. Below 0 the first row is taken, above 52 the last: nothing beyond the table is credited.
    /// Below 20 the scale is not meant for measuring; the table's rows there stand for Brinell 226 and less.</param>
    /// <returns>MPa.</returns>
    /// <remarks>Source: Fett, Heat Treating Progress, October 2009, from SAE J413. Check values: Published/torsional-yield.json.</remarks>
    public static double OfHardness(double hrc)
    {
        if (hrc <= Table[0].Hrc)
            return Table[0].Yield;
        for (var i = 1; i < Table.Length; i++)
        {
            var (a, b) = (Table[i - 1], Table[i]);
            if (hrc <= b.Hrc)
                return a.Yield + (b.Yield - a.Yield) * (hrc - a.Hrc) / (b.Hrc - a.Hrc);
        }
        return Table[^1].Yield;
    }

    /// <summary>The metal of the bar as bought, under any case.</summary>
    /// <param name="steel">What is known of it.</param>
    /// <returns>MPa. Medium carbon: tensile yield 310 (hot-rolled 1045) to 530 (cold-drawn 1045). Quenched and tempered alloy:
    /// 650 (42CrMo4 +QT, 40 to 100 mm, EN 10083-3 data sheets) to 990 (4140 tempered at 540 °C, from memory). Unknown: from the
    /// lowest of these to the highest.</returns>
    public static Band OfCore(SteelKnown steel)
    {
        ArgumentNullException.ThrowIfNull(steel);
        if (steel.CoreHrc is { } h)
            return new(OfHardness(h.Low), OfHardness(h.High));
        return steel.Class switch
        {
            SteelClass.MediumCarbon => FromTension(310, 530),
            SteelClass.QuenchedTemperedAlloy => FromTension(650, 990),
            _ => FromTension(310, 990),
        };
    }

    /// <summary>The hard case.</summary>
    /// <param name="steel">What is known of it.</param>
    /// <returns>MPa, by the surface hardness; when it was not measured, 50 to 52 HRC: what a file skates on is at least 50
    /// (common practice, no source), and the table ends at 52.</returns>
    public static Band OfCase(SteelKnown steel)
    {
        ArgumentNullException.ThrowIfNull(steel);
        var h = steel.SurfaceHrc ?? new Band(50, 52);
        return new(OfHardness(h.Low), OfHardness(h.High));
    }

    /// <summary>The metal beside a weld, its hardness gone: taken as normalised or annealed stock (common practice, no source).</summary>
    /// <param name="steel">What is known of it.</param>
    /// <returns>MPa, never above the core. Medium carbon: tensile yield 280 (normalised EN8) to 420 (normalised 1541), both from
    /// memory. Alloy: 415 (annealed 4140) to 655 (normalised 4140), both from memory. Unknown: from the lowest to the highest.</returns>
    public static Band Softened(SteelKnown steel)
    {
        ArgumentNullException.ThrowIfNull(steel);
        var stock = steel.Class switch
        {
            SteelClass.MediumCarbon => FromTension(280, 420),
            SteelClass.QuenchedTemperedAlloy => FromTension(415, 655),
            _ => FromTension(280, 655),
        };
        var core = OfCore(steel);
        return new(Math.Min(stock.Low, core.Low), Math.Min(stock.High, core.High));
    }

    /// <summary>The metal beside a weld as a sample's hardness says.</summary>
    /// <param name="hv">The softest reading with its ±, HV.</param>
    /// <returns>MPa, by way of HRC: the same table as for a core hardness.</returns>
    public static Band OfVickers(Band hv) =>
        new(OfHardness(VickersScale.ToHrc(hv.Low)), OfHardness(VickersScale.ToHrc(hv.High)));

    private static Band FromTension(double low, double high) =>
        new(low / VonMises, high / VonMises);
}
