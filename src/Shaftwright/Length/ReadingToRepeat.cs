using Shaftwright.Corner;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>Which reading, taken again, would help most.</summary>
internal static class ReadingToRepeat
{
    /// <summary>The largest part of the uncertainty of the side most likely to be passed; null when nothing is uncertain.</summary>
    public static MeasureAgain? Of(CornerInput corner, List<Bound> bounds, double length)
    {
        var tightest = bounds
            .Where(b => b.StandardUncertainty > 0)
            .MinBy(b => b.Inside(length) / b.StandardUncertainty);
        if (tightest is null)
            return null;
        var largest = tightest.Parts.MaxBy(p => Math.Abs(p.Effect));
        var share =
            largest.Effect
            * largest.Effect
            / (tightest.StandardUncertainty * tightest.StandardUncertainty);
        if (largest.Value is not { } value)
        {
            Sentence between =
                $"one more reading {PositionWords.At(tightest.Travel, tightest.Set.Steering, tightest.Set.Place)}";
            return new MeasureAgain(null, "travel", share, between);
        }
        return new MeasureAgain(value.Reading, value.Field, share, Words(corner, value));
    }

    /// <summary>Which measure it is, as one would say it.</summary>
    public static Sentence Words(CornerInput corner, UncertainValue value)
    {
        if (value.Reading is not { } i)
            return Sentence.Plain(value.Words);
        var reading = corner.Readings[i];
        return $"{value.Words}, {PositionWords.At(reading.Travel!.Value, reading.Steering)}";
    }
}
