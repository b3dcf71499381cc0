using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>Donor shafts as far as they have been walked, and where they are cut.</summary>
public static class DonorDrawing
{
    /// <summary>One donor, its joint end to the left. It grows as zones are entered; an empty one shows where to begin.</summary>
    /// <param name="donor">The donor.</param>
    /// <param name="cutAt">Where it is cut, from its joint end, mm; null for nowhere yet.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="donor"/> is null.</exception>
    public static Drawing Of(
        DonorProfile donor,
        double? cutAt = null,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(donor);
        var board = new Board(width);
        var reach = Math.Max(Math.Max(donor.Length, cutAt ?? 0), 60);
        var k = (width - 2 * Side - Tail) / reach;
        var times = Metal.Exaggeration(k, Thickest(donor));
        board.Words(Ink.Strong, Board.Edge, 20, NameOf(donor), Board.Big);
        var y = Draw(board, donor, cutAt, mm => Side + mm * k, k * times, 34, display, false);
        y = Finish(board, y, [donor], times);
        return board.Done(
            "donor",
            NameOf(donor),
            Describe(donor, cutAt, display),
            y,
            k,
            TableOf([(donor, cutAt)], display)
        );
    }

    /// <summary>Both donors at one scale, the inner end's with its joint to the left, the outer end's with its joint to the
    /// right, as they will lie in the car.</summary>
    /// <param name="donors">The donors.</param>
    /// <param name="cut">Where they are cut; null for nowhere yet.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="donors"/> is null.</exception>
    public static Drawing TwoDonors(
        DonorsResult donors,
        CutResult? cut = null,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(donors);
        var inner = donors.InnerEnd ?? Nothing("Inner-end donor");
        var outer = donors.OuterEnd ?? Nothing("Outer-end donor");
        var board = new Board(width);
        var reach = new[]
        {
            inner.Length,
            outer.Length,
            cut?.InnerAt ?? 0,
            cut?.OuterAt ?? 0,
            60,
        }.Max();
        var k = (width - 2 * Side - Tail) / reach;
        var times = Metal.Exaggeration(k, Math.Max(Thickest(inner), Thickest(outer)));
        board.Words(Ink.Strong, Board.Edge, 20, NameOf(inner) + ": inner end");
        var y = Draw(
            board,
            inner,
            cut?.InnerAt,
            mm => Side + mm * k,
            k * times,
            34,
            display,
            false
        );
        board.Words(
            Ink.Strong,
            width - Board.Edge,
            y + 24,
            NameOf(outer) + ": outer end",
            anchor: Anchor.End
        );
        y = Draw(
            board,
            outer,
            cut?.OuterAt,
            mm => width - Side - mm * k,
            k * times,
            y + 38,
            display,
            true
        );
        y = Finish(board, y, [inner, outer], times);
        return board.Done(
            "two-donors",
            "The two donors and their cuts",
            Describe(inner, cut?.InnerAt, display) + " " + Describe(outer, cut?.OuterAt, display),
            y,
            k,
            TableOf([(inner, cut?.InnerAt), (outer, cut?.OuterAt)], display)
        );
    }

    private const double Side = 12;

    /// <summary>Room beyond the last zone, where the shaft still goes on.</summary>
    private const double Tail = 26;

    private static DonorProfile Nothing(string name) =>
        new(name, [], [], new(SteelClass.Unknown, null, null));

    private static string NameOf(DonorProfile donor) =>
        donor.Name.Length == 0 ? "A donor shaft" : donor.Name;

    private static double Thickest(DonorProfile donor) =>
        donor.Stretches.Count == 0
            ? 24
            : donor.Stretches.Max(s => Math.Max(s.Diameter, s.EndDiameter));

    private static double Draw(
        Board board,
        DonorProfile donor,
        double? cutAt,
        Func<double, double> at,
        double across,
        double top,
        Display display,
        bool mirrored
    )
    {
        var half = Thickest(donor) / 2 * across;
        var middle = top + (cutAt is null ? 10 : 28) + half;
        var metal = new Metal(board, at, middle, across);
        board.Add(new Line(Ink.Axis, new(0, middle), new(board.Width, middle)));
        var end = donor.Length;
        var kept = cutAt is { } c ? Math.Min(c, end) : end;
        metal.Body(Metal.Between(donor.Stretches, kept, double.MaxValue), Ink.Gone);
        var keptStretches = Metal.Between(donor.Stretches, 0, kept);
        metal.Body(keptStretches);
        metal.Hard(donor.Stretches, donor.Hardened);
        metal.Diameters(keptStretches, display, []);
        if (end <= 0)
        {
            board.Add(new Line(Ink.Cut, new(at(0), middle - half), new(at(0), middle + half)));
            board.Words(
                Ink.Note,
                at(0) + (mirrored ? -12 : 12),
                middle - 8,
                "Nothing walked yet. Begin at the joint end.",
                anchor: mirrored ? Anchor.End : Anchor.Start
            );
            return middle + half + 8;
        }

        // A broken end: the shaft goes on, it has only not been measured further.
        var last = donor.Stretches[^1].EndDiameter / 2 * across;
        var (x, out1) = (at(end), mirrored ? -1 : 1);
        board.Add(
            new Polyline(
                Ink.Gone,
                [
                    new(x, middle - last),
                    new(x + out1 * 10, middle - last),
                    new(x + out1 * 4, middle - last / 3),
                    new(x + out1 * 12, middle + last / 3),
                    new(x + out1 * 6, middle + last),
                    new(x, middle + last),
                ]
            )
        );
        var y = middle + half + 30;
        if (cutAt is { } cut)
        {
            board.Add(
                new Line(Ink.Cut, new(at(cut), middle - half - 12), new(at(cut), middle + half + 6))
            );
            board.Words(
                Ink.Strong,
                at(cut),
                middle - half - 18,
                "cut at " + Say.Length(cut).In(display),
                anchor: Anchor.Middle
            );
            var (a, b) = mirrored ? (at(cut), at(0)) : (at(0), at(cut));
            board.Dimension(a, b, y, "keep " + Say.Length(cut).In(display));
        }
        else
        {
            var (a, b) = mirrored ? (x, at(0)) : (at(0), x);
            board.Dimension(a, b, y, Say.Length(end).In(display) + " walked");
        }
        return y + 8;
    }

    private static double Finish(
        Board board,
        double y,
        IReadOnlyList<DonorProfile> donors,
        int times
    )
    {
        var legend = new Legend(board).Below(y);
        if (donors.Any(d => d.Hardened.Count > 0))
            legend.Line("hardened", Ink.Hard);
        ShaftDrawing.MetalLegend(board, legend, [.. donors.SelectMany(d => d.Stretches)]);
        return board.Paragraph(Ink.Note, legend.Bottom + 14, Metal.ScaleWords(times)) - 8;
    }

    private static string Describe(DonorProfile donor, double? cutAt, Display display)
    {
        if (donor.Length <= 0)
            return $"{NameOf(donor)}: nothing walked yet.";
        var words =
            $"{NameOf(donor)}: {donor.Stretches.Count} stretches walked, {Say.Length(donor.Length).In(display)} from the joint end.";
        return cutAt is { } c ? words + $" Cut at {Say.Length(c).In(display)}." : words;
    }

    private static Table TableOf(
        IReadOnlyList<(DonorProfile Donor, double? CutAt)> donors,
        Display display
    )
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (donor, cutAt) in donors)
        {
            foreach (var s in donor.Stretches)
                rows.Add([
                    NameOf(donor),
                    .. ShaftDrawing.Row(
                        Metal.NameOf(s.Kind),
                        s.From,
                        s.To,
                        Metal.DiameterOf(s, display),
                        display
                    ),
                ]);
            foreach (var h in donor.Hardened)
                rows.Add([
                    NameOf(donor),
                    .. ShaftDrawing.Row("hardened", h.From, h.To, "", display),
                ]);
            if (cutAt is { } c)
                rows.Add([NameOf(donor), "cut", Say.Length(c).In(display), "", ""]);
        }
        return new(
            "Donors, from their joint ends",
            ["Donor", "What", "From", "To", "Diameter"],
            rows
        );
    }
}
