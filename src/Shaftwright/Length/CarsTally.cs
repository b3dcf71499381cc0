using System.Globalization;

namespace Shaftwright.Length;

/// <summary>What a slice of cars came to. Whole numbers only, so that slices merge to the same bits in any order.</summary>
/// <remarks>Lengths are counted in millionths of a millimetre from the length judged, deviations in 2⁻²⁴ of their half-width.</remarks>
public sealed class CarsTally
{
    internal const double Micro = 1e6;
    internal const double Share = 1 << 24;

    /// <summary>Bins of 0.01 mm either side of the length judged; the outermost hold all beyond.</summary>
    internal const int HalfBins = 4000;

    internal const double BinWidth = 0.01;

    /// <summary>Places among the counts.</summary>
    internal const int Cars = 0,
        Violated = 1,
        Plunge = 2,
        InnerAngle = 3,
        OuterAngle = 4,
        Contact = 5,
        NoWindow = 6,
        Solved = 7,
        Counts = 8;

    internal CarsTally(int inputs, int better)
    {
        Count = new long[Counts];
        Better = new long[better];
        Cross = new Int128[inputs];
        Drawn = new Int128[inputs];
        DrawnSquared = new Int128[inputs];
        Bins = new long[2 * HalfBins];
    }

    internal long[] Count { get; }

    /// <summary>Cars that pass a limit if one measure were twice as good, for each that is tried.</summary>
    internal long[] Better { get; }

    internal Int128 Sum { get; set; }

    internal Int128 SumOfSquares { get; set; }

    /// <summary>Sum of deviation × length for each uncertain value.</summary>
    internal Int128[] Cross { get; }

    /// <summary>Sum of the deviations of each, over the cars that have a length.</summary>
    internal Int128[] Drawn { get; }

    /// <summary>Sum of their squares.</summary>
    internal Int128[] DrawnSquared { get; }

    internal long[] Bins { get; }

    /// <summary>How many cars it holds.</summary>
    public long Size => Count[Cars];

    /// <summary>Adds another slice of the same run.</summary>
    /// <param name="other">The slice.</param>
    /// <exception cref="ArgumentException">It is of another run.</exception>
    public void Add(CarsTally other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Cross.Length != Cross.Length || other.Better.Length != Better.Length)
            throw new ArgumentException("That slice is of another run.", nameof(other));
        Plus(Count, other.Count);
        Plus(Better, other.Better);
        Plus(Bins, other.Bins);
        Sum += other.Sum;
        SumOfSquares += other.SumOfSquares;
        for (var i = 0; i < Cross.Length; i++)
        {
            Cross[i] += other.Cross[i];
            Drawn[i] += other.Drawn[i];
            DrawnSquared[i] += other.DrawnSquared[i];
        }
    }

    /// <summary>The slice as a text, to be sent. Empty bins are left out.</summary>
    public string ToText()
    {
        var bins = Enumerable
            .Range(0, Bins.Length)
            .Where(i => Bins[i] != 0)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"{i}:{Bins[i]}"));
        return string.Join(
            ';',
            Row(Count),
            Row(Better),
            Row([Sum, SumOfSquares]),
            Row(Cross),
            Row(Drawn),
            Row(DrawnSquared),
            string.Join(' ', bins)
        );
    }

    /// <summary>Reads <see cref="ToText"/> into a blank slice of the same run.</summary>
    /// <param name="text">The text.</param>
    /// <param name="blank">What <see cref="LengthCars.Blank"/> gave; filled where the text can be read.</param>
    /// <returns>False when it is no slice of that run.</returns>
    public static bool TryRead(string text, CarsTally blank)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(blank);
        var rows = text.Split(';');
        Span<Int128> sums = stackalloc Int128[2];
        if (
            rows.Length != 7
            || !TryRow(rows[0], blank.Count)
            || !TryRow(rows[1], blank.Better)
            || !TryRow<Int128>(rows[2], sums)
            || !TryRow<Int128>(rows[3], blank.Cross)
            || !TryRow<Int128>(rows[4], blank.Drawn)
            || !TryRow<Int128>(rows[5], blank.DrawnSquared)
        )
            return false;
        (blank.Sum, blank.SumOfSquares) = (sums[0], sums[1]);
        foreach (var bin in rows[6].Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (
                bin.Split(':') is not [var at, var count]
                || !int.TryParse(at, NumberStyles.None, CultureInfo.InvariantCulture, out var i)
                || i >= blank.Bins.Length
                || !long.TryParse(
                    count,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out blank.Bins[i]
                )
            )
                return false;
        }
        return true;
    }

    private static void Plus(long[] to, long[] from)
    {
        for (var i = 0; i < to.Length; i++)
            to[i] += from[i];
    }

    private static string Row<T>(IEnumerable<T> numbers)
        where T : IFormattable =>
        string.Join(' ', numbers.Select(n => n.ToString(null, CultureInfo.InvariantCulture)));

    private static bool TryRow<T>(string text, Span<T> into)
        where T : ISpanParsable<T>
    {
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != into.Length)
            return false;
        for (var i = 0; i < parts.Length; i++)
        {
            if (!T.TryParse(parts[i], CultureInfo.InvariantCulture, out var number))
                return false;
            into[i] = number;
        }
        return true;
    }
}
