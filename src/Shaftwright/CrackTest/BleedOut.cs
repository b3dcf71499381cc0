using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Measures a bleed-out in a photo, for a person to correct. It never accepts a mark.</summary>
/// <remarks>
/// <para>Redness (R − (G + B)/2)/max(R, G, B), or lightness over a smooth background, both of which uneven light leaves alone.
/// In a window round the place pointed at, doubled until it holds the whole mark, a threshold by Otsu parts mark and surroundings;
/// pixels over it that touch, corners counted, are the mark. Length and width are the largest and smallest distance across its
/// convex outline (Feret), a pixel's own width added. Source: N. Otsu, A threshold selection method from gray-level histograms,
/// IEEE Trans. SMC 9 (1979) 62–66; rotating calipers for the distances, a textbook method.</para>
/// <para>In a large window only every second pixel or fewer is read, so that a photo of any size is answered on a telephone; the
/// bound widens with that step.</para>
/// <para>Bound: one and a half pixels for a length and the scale's own error; for an area one pixel along its edge. It holds for
/// a flat mark seen square on. On a round bar what lies off the crown is seen too narrow: 30° round from it, 13 %.</para>
/// <para>The mark is the bleed-out, larger than the flaw, and grows with time.</para>
/// </remarks>
public static class BleedOut
{
    /// <summary>Source of the method.</summary>
    public const string Source =
        "Otsu, IEEE Trans. SMC 9 (1979) 62–66; Feret distances; own bound, docs/crack-test.md";

    private const int FirstWindow = 16;

    // Half a window, in places read: a mark that fills a third of it is then known to a hundredth.
    private const int MostHalf = 256;
    private const double LeastContrast = 4;
    private const double LeastStep = 0.06;
    private const int SeedReach = 4;

    /// <summary>Measures the mark at a place.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="scale">Its scale.</param>
    /// <param name="seed">A place in the mark, or within 4 pixels of it.</param>
    /// <param name="look">How the mark stands out.</param>
    public static BleedOutResult Measure(
        Photo photo,
        PhotoScale scale,
        PhotoPoint seed,
        MarkLook look
    )
    {
        if (!photo.IsWhole || (look == MarkLook.RedOnWhite && photo.BytesPerPixel == 1))
            return Nothing(
                BleedOutOutcome.NoPhoto,
                photo.IsWhole
                    ? (Sentence)
                        $"This photo has no colour, so red cannot be told. Take dark on light instead."
                    : $"The photo cannot be read."
            );
        if (!(scale.Pixels >= 10 && scale.Across > 0 && double.IsFinite(scale.Across)))
            return Nothing(
                BleedOutOutcome.NoScale,
                $"Mark both edges of something whose width you know, such as a steel rule beside the mark."
            );
        var x = (int)Math.Round(seed.X);
        var y = (int)Math.Round(seed.Y);
        if (x < 0 || y < 0 || x >= photo.Width || y >= photo.Height)
            return Nothing(BleedOutOutcome.NothingThere, $"Point at the mark in the photo.");

        var signal = new MarkSignal(photo, look);
        for (var half = FirstWindow; ; half *= 2)
        {
            var window = Window.Round(photo, x, y, half);
            var step = Math.Max(1, half / MostHalf);
            var found = MarkShape.Find(
                signal,
                window,
                step,
                (x, y),
                SeedReach,
                LeastContrast,
                LeastStep
            );
            // A mark that fills its window leaves too little round it to tell it from.
            if (found is not null && !found.Touches(window) && found.Boxed <= 0.6 * window.Size)
                return Size(found, scale);
            if (!window.IsWhole(photo))
                continue;
            return found is null
                    ? Nothing(
                        BleedOutOutcome.NothingThere,
                        $"Nothing stands out there. That is no proof that nothing is there: look with your own eyes."
                    )
                : found.Touches(window)
                    ? Nothing(
                        BleedOutOutcome.CutOff,
                        $"The mark reaches the edge of the photo. Take one that shows all of it."
                    )
                : Size(found, scale);
        }
    }

    private static BleedOutResult Size(MarkShape found, PhotoScale scale)
    {
        var s = scale.PerPixel;
        var hull = found.Outline();
        var (longest, direction) = Feret.Largest(hull);
        // Between the middles of the pixels read; each stands for half a step beyond.
        var step = found.Step;
        var (length, width) = (longest + step, Feret.Smallest(hull) + step);
        var edge = (Feret.Around(hull) + 4 * step) * step;
        var bound = 1.5 * step * s + length * s * scale.RelativeError;
        var area = (double)found.Pixels * step * step * s * s;
        return new(
            BleedOutOutcome.Measured,
            area,
            edge * s * s + 2 * area * scale.RelativeError,
            length * s,
            width * s,
            bound,
            direction,
            found.Pixels,
            found.Contrast,
            hull,
            $"The mark looks {Say.Fine(length * s)} long and {Say.Fine(width * s)} wide, give or take {Say.Fine(bound)}. Correct that against a rule on the part. A photo measures; it accepts nothing."
        );
    }

    private static BleedOutResult Nothing(BleedOutOutcome outcome, Sentence words) =>
        new(outcome, 0, 0, 0, 0, 0, 0, 0, 0, [], words);
}
