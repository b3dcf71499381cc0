using Shaftwright.Donors;

namespace Shaftwright.Cut.Search;

/// <summary>Divides the sound cuts of a piece at every break.</summary>
/// <remarks>What the heat reaches is a window that moves with the cut. Its thinnest place is where the window begins or ends in a
/// stretch, or where two stretches meet inside it, so it is the least of a few straight lines between the cuts at which a window's
/// edge passes an end of a stretch; where two of these lines cross, the span is divided once more.</remarks>
internal static class CutSpans
{
    /// <summary>The spans of a piece, in order, from the seat of its joint.</summary>
    public static List<CutSpan> Of(Piece piece, JoinPlan plan, double stub)
    {
        var spans = new List<CutSpan>();
        foreach (var run in piece.Runs)
        {
            if (!run.Sound)
                continue;
            var marks = Marks(piece, plan, run);
            for (var i = 0; i + 1 < marks.Count || i == 0; i++)
                Add(marks[i], marks[Math.Min(i + 1, marks.Count - 1)], run);
        }
        return spans;

        void Add(double a, double b, BarRun run)
        {
            if (piece.BarAt((a + b) / 2) is not { } bar)
                return;
            var lines = ThinLines(piece, plan, a, b);
            var at = a;
            foreach (var t in Crossings(lines))
            {
                Push(at, a + (b - a) * t);
                at = a + (b - a) * t;
            }
            Push(at, b);

            void Push(double from, double to)
            {
                double Share(double c) => b > a ? (c - a) / (b - a) : 0;
                double Least(double c) => lines.Min(l => l.A + (l.B - l.A) * Share(c));
                var span = new CutSpan(
                    from - stub,
                    to - stub,
                    new(bar.At(from), bar.At(to)),
                    new(bar.At(from) - bar.DiameterDoubt, bar.At(to) - bar.DiameterDoubt),
                    new(Least(from), Least(to)),
                    new(
                        Math.Max(0, piece.HardenedOverlap(from) ?? 0),
                        Math.Max(0, piece.HardenedOverlap(to) ?? 0)
                    ),
                    run.Earliest - stub
                );
                if (spans.Count > 0 && spans[^1].Joined(span) is { } joined)
                    spans[^1] = joined;
                else
                    spans.Add(span);
            }
        }
    }

    private static List<double> Marks(Piece piece, JoinPlan plan, BarRun run)
    {
        var marks = new List<double> { run.SoundFrom, run.To };
        var windows = Windows(plan);
        foreach (var s in piece.Donor.Stretches)
            AddAll(s.To);
        foreach (var h in piece.Donor.Hardened)
        {
            AddAll(h.From);
            AddAll(h.To);
            AddInside(h.From + plan.HeatBand);
            AddInside(h.To + plan.HeatBand);
        }
        marks.Sort();
        for (var i = marks.Count - 1; i > 1; i--)
        {
            if (marks[i] - marks[i - 1] <= Piece.Rounding)
                marks.RemoveAt(i - 1);
        }
        return marks;

        void AddAll(double place)
        {
            AddInside(place);
            foreach (var (from, to) in windows)
            {
                AddInside(place + from);
                AddInside(place + to);
            }
        }
        void AddInside(double c)
        {
            if (c > run.SoundFrom + Piece.Rounding && c < run.To - Piece.Rounding)
                marks.Add(c);
        }
    }

    /// <summary>What the heat reaches on the piece, mm back from the cut.</summary>
    private static (double From, double To)[] Windows(JoinPlan plan)
    {
        // The band counts from the middle of the weld, which stands half of what is left of the gap beyond the cut.
        var weld = (Math.Max(Piece.Rounding, plan.HeatBand - plan.GapLeft / 2), 0.0);
        return plan.SleeveHalf is null
            ? [weld]
            :
            [
                weld,
                (
                    plan.SleeveHalf.Value - plan.GapLeft / 2 + plan.HeatBand,
                    Math.Max(0, plan.SleeveHalf.Value - plan.GapLeft / 2 - plan.HeatBand)
                ),
            ];
    }

    private static List<Line> ThinLines(Piece piece, JoinPlan plan, double a, double b)
    {
        var lines = new List<Line>();
        foreach (var (back, upTo) in Windows(plan))
        {
            foreach (var s in piece.Donor.Stretches)
            {
                if (s.Guessed)
                    continue;
                var middle = (a + b) / 2;
                if (s.To <= middle - back || s.From >= middle - upTo)
                    continue;
                double Thin(double c)
                {
                    var d = s.RootDiameter is { } root
                        ? root - s.RootDoubt
                        : s.At(c) - s.DiameterDoubt;
                    return d;
                }
                lines.Add(new(Thin(Math.Max(s.From, a - back)), Thin(Math.Max(s.From, b - back))));
                lines.Add(new(Thin(Math.Min(s.To, a - upTo)), Thin(Math.Min(s.To, b - upTo))));
            }
        }
        return lines;
    }

    private static SortedSet<double> Crossings(List<Line> lines)
    {
        var at = new SortedSet<double>();
        for (var i = 0; i < lines.Count; i++)
        {
            for (var j = i + 1; j < lines.Count; j++)
            {
                var (da, db) = (lines[i].A - lines[j].A, lines[i].B - lines[j].B);
                if (da * db < 0 && da / (da - db) is > 1e-9 and < 1 - 1e-9 and var t)
                    at.Add(t);
            }
        }
        return at;
    }
}
