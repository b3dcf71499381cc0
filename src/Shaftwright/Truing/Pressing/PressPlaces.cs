namespace Shaftwright.Truing.Pressing;

/// <summary>Where ram and blocks stand, mm from the inner end.</summary>
/// <param name="Ram">Ram.</param>
/// <param name="First">First block.</param>
/// <param name="Second">Second block.</param>
/// <param name="Bridge">True when the ram stands over the weld.</param>
internal readonly record struct PressPlace(double Ram, double First, double Second, bool Bridge);

/// <summary>Finds places for ram and blocks: the ram at the bend or beside it, the blocks on either side of it, as far apart as the
/// press and the shaft allow, clear of everything that must not be pressed on.</summary>
internal static class PressPlaces
{
    private const double Step = 1;

    /// <summary>How far the ram may move from the bend, mm. Farther away it would make a second bend and not take out the first.
    /// Common practice, no source.</summary>
    private const double RamReach = 60;

    /// <summary>The nearest place to the bend where the ram may stand; null when there is none within reach.</summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="bend">Where it is bent.</param>
    /// <param name="towards">Of two places as near, the one on this side.</param>
    public static double? Ram(PressedShaft shaft, double bend, double towards)
    {
        var reach =
            shaft.Sleeve is { } sleeve && bend >= sleeve.Low && bend <= sleeve.High
                ? RamReach + Math.Max(bend - sleeve.Low, sleeve.High - bend)
                : RamReach;
        for (var off = 0.0; off <= reach; off += Step)
        {
            var side = towards >= bend ? off : -off;
            if (Free(shaft.RamOff, bend + side))
                return bend + side;
            if (Free(shaft.RamOff, bend - side))
                return bend - side;
        }
        return null;
    }

    /// <summary>Blocks on either side of the ram; null when there is no pair.</summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="ram">The ram.</param>
    /// <param name="shortest">Least distance of the blocks.</param>
    /// <param name="longest">Most.</param>
    public static PressPlace? Blocks(
        PressedShaft shaft,
        double ram,
        double shortest,
        double longest
    )
    {
        if (longest < shortest)
            return null;
        var left = Farthest(shaft, ram, -1, longest / 2);
        var right = Farthest(shaft, ram, +1, longest / 2);
        if (left is not { } a || right is not { } b)
            return null;
        // Alike on both sides if that can be had: the bend then comes out of the middle.
        if (a > b * 1.05 && Farthest(shaft, ram, -1, b) is { } shorter && shorter + b >= shortest)
            a = shorter;
        else if (b > a * 1.05 && Farthest(shaft, ram, +1, a) is { } less && less + a >= shortest)
            b = less;
        if (a + b < shortest - 1e-9 || Math.Min(a, b) < 0.2 * (a + b))
            return null;
        return new(ram, ram - a, ram + b, Bridges(shaft, ram));
    }

    /// <summary>Places that were pressed on before, if they may be pressed on again; else null.</summary>
    public static PressPlace? Standing(PressedShaft shaft, double ram, double first, double second)
    {
        if (first > second)
            (first, second) = (second, first);
        return
            first < ram - 20
            && second > ram + 20
            && Free(shaft.BlockOff, first)
            && Free(shaft.BlockOff, second)
            && Free(shaft.RamOff, ram)
            ? new(ram, first, second, Bridges(shaft, ram))
            : null;
    }

    private static bool Bridges(PressedShaft shaft, double ram) =>
        shaft is { WeldAt: { } weld, Sleeve: null } && Math.Abs(ram - weld) < PressLimits.ToeClear;

    private static double? Farthest(PressedShaft shaft, double ram, int side, double most)
    {
        for (var off = most; off >= 20; off -= Step)
        {
            if (Free(shaft.BlockOff, ram + side * off))
                return off;
        }
        return null;
    }

    private static bool Free(IReadOnlyList<KeepOff> off, double at)
    {
        foreach (var o in off)
        {
            if (at > o.From && at < o.To)
                return false;
        }
        return true;
    }

    /// <summary>Where the dial stood and what it turned on, what was not noted filled in so that a bend shows most.</summary>
    public static DialPlace Dial(TurnPlace place, double length, double ram)
    {
        var at = place.At ?? ram;
        var (first, second) = (place.First ?? 0, place.Second ?? length);
        if (Math.Abs(first - second) < 20)
            (first, second) = (0, length);
        return new(Math.Clamp(at, 0, length), Math.Min(first, second), Math.Max(first, second));
    }
}
