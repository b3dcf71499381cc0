namespace Shaftwright.Truing;

/// <summary>How the places that were read stand round the shaft.</summary>
/// <param name="Places">Number of different places.</param>
/// <param name="WidestGap">Largest angle between neighbours in which nothing was read, rad; a full turn for one place or none.</param>
/// <param name="GapFrom">Where it begins, rad.</param>
/// <param name="Even">True when all gaps are alike within 5°.</param>
internal readonly record struct Round(int Places, double WidestGap, double GapFrom, bool Even)
{
    /// <summary>True when the readings fix a direction: three places at least, and no half turn left out.</summary>
    public bool GoesRound => Places >= 3 && WidestGap < Math.PI - 1e-9;

    /// <summary>Where the widest gap ends, rad.</summary>
    public double GapTo => Across.Turn(GapFrom + WidestGap);

    /// <summary>Looks at angles.</summary>
    /// <param name="angles">rad, 0 to 2π.</param>
    /// <param name="same">Angles nearer than this are one place, rad.</param>
    public static Round Of(IReadOnlyList<double> angles, double same)
    {
        // A place counts where its first reading stands.
        double[] places = [.. Group(angles, a => a, same).Select(g => g[0]).Order()];
        if (places.Length == 0)
            return new(0, Math.Tau, 0, false);
        double widest = 0,
            narrowest = Math.Tau,
            from = 0;
        for (var i = 0; i < places.Length; i++)
        {
            var next = i + 1 < places.Length ? places[i + 1] : places[0] + Math.Tau;
            var gap = next - places[i];
            narrowest = Math.Min(narrowest, gap);
            if (gap > widest)
                (widest, from) = (gap, places[i]);
        }
        return new(places.Length, widest, from, widest - narrowest < 5 * Math.PI / 180);
    }

    /// <summary>Readings of the same place together, also across the full turn.</summary>
    public static List<List<T>> Group<T>(IEnumerable<T> items, Func<T, double> angle, double same)
    {
        var groups = new List<List<T>>();
        foreach (var item in items)
        {
            var found = groups.Find(g =>
                Math.Abs(Math.IEEERemainder(angle(g[0]) - angle(item), Math.Tau)) < same
            );
            if (found is null)
                groups.Add([item]);
            else
                found.Add(item);
        }
        return groups;
    }
}
