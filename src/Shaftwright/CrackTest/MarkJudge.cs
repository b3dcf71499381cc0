using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Judges the marks of one test: put together where they lie close, by the level, and by the floor above it.</summary>
internal sealed class MarkJudge(TestRun run, AcceptanceLevel level, MadeShaft? made)
{
    public IReadOnlyList<MarkResult> Judge()
    {
        var marks = Entries.Standing(run.Indications);
        var placed = marks.Where(m => m.Position is not null && m.Length is not null).ToList();
        var results = new List<(int At, MarkResult Mark)>();
        foreach (var (members, length) in Groups(placed))
        {
            Indication[] group = [.. members.Select(i => placed[i])];
            results.Add((IndexOf(group[0]), One(group, length)));
        }
        foreach (var mark in marks.Where(m => !placed.Contains(m)))
            results.Add((IndexOf(mark), One([mark], mark.Length?.Value)));
        return [.. results.OrderBy(r => r.At).Select(r => r.Mark)];

        int IndexOf(Indication mark) => marks.TakeWhile(m => !ReferenceEquals(m, mark)).Count();
    }

    private IReadOnlyList<(IReadOnlyList<int> Members, double Length)> Groups(
        List<Indication> placed
    )
    {
        // The thinnest diameter among them, and no separation round the shaft where an angle is missing: both bring marks nearer
        // together than they may be, which errs towards judging them as one.
        var thinnest = placed.Select(m => DiameterAt(m.Position!.Value)).Min();
        var flat = thinnest is null || placed.Any(m => m.Angle is null);
        return MarkGroups.Of(
            [
                .. placed.Select(m => new FlatMark(
                    m.Position!.Value,
                    flat ? 0 : m.Angle!.Value * thinnest!.Value / 2,
                    m.Length!.Value,
                    m.Direction?.Value ?? double.NaN
                )),
            ],
            flat ? double.PositiveInfinity : Math.PI * thinnest!.Value
        );
    }

    private double? DiameterAt(double x)
    {
        if (
            made is { SleeveFrom: { } from, SleeveTo: { } to, SleeveOutside: { } outside }
            && x >= from
            && x <= to
        )
            return outside;
        return made
            ?.Stretches.Where(s => x >= s.From && x <= s.To)
            .Select(s => (double?)s.At(x))
            .FirstOrDefault();
    }

    private MarkResult One(Indication[] group, double? length)
    {
        var place = group.Min(m => PlaceOf(m));
        var crack = group.Any(m => m.Crack == true);
        double? width = group.Any(m => m.Width is null) ? null : group.Max(m => m.Width!.Value);
        // The larger of the two is the length, whichever way it was noted.
        if (length is { } l && width is { } w && w > l)
            (length, width) = (w, l);
        // One line among them is enough: a round mark beside it does not make it round.
        var linear =
            length is not { } size
            || Acceptance.IsLinear(size, width)
            || group.Any(m => m.Length is { } own && IsLine(own.Value, m.Width?.Value));
        var nowhere = group.Any(IsNowhere);
        bool? accepted =
            crack ? false
            : nowhere ? null
            : length is { } known
                ? known <= Acceptance.Largest(run.Method, level, linear) + Acceptance.Hair
            : null;
        var stops =
            crack
            || nowhere
            || place != Place.Bar
            || (length is not null && linear)
            || accepted == false;
        var positions = group.Select(m => m.Position?.Value).OfType<double>().ToList();
        return new(
            run.Id,
            [.. group.Select(m => m.Id)],
            place,
            positions.Count == 0 ? null : positions.Average(),
            group.Select(m => m.Angle?.Value).FirstOrDefault(a => a is not null),
            length,
            width,
            linear,
            crack,
            accepted,
            stops,
            Words(group, place, length, width, linear, crack, accepted, stops, nowhere)
        );
    }

    private static bool IsLine(double length, double? width) =>
        width is { } w
            ? Acceptance.IsLinear(Math.Max(length, w), Math.Min(length, w))
            : Acceptance.IsLinear(length, null);

    /// <summary>The place that counts: what was noted as plain bar but lies in the heat of a weld or in a spline counts as that.</summary>
    private Place PlaceOf(Indication mark)
    {
        if (mark.Place != Place.Bar || mark.Position is not { } position || made is null)
            return mark.Place;
        var x = position.Value;
        // As far as it may reach: half of it to either side, whichever way it lies, and what the reading can be off.
        var reach =
            (mark.Length?.Value ?? 0) / 2
            + (position.PlusMinus ?? CrackTestFields.Position.UsualPlusMinus);
        if (Math.Abs(x - made.WeldAt) - reach <= made.HeatBand)
            return Place.ButtWeld;
        if (made.SleeveFrom is { } from && Math.Abs(x - from) - reach <= made.HeatBand)
            return Place.SleeveInnerEnd;
        if (made.SleeveTo is { } to && Math.Abs(x - to) - reach <= made.HeatBand)
            return Place.SleeveOuterEnd;
        if (
            made.Stretches.Any(s =>
                s.Kind == ZoneKind.Spline && x + reach >= s.From && x - reach <= s.To
            )
        )
            return x < made.WeldAt ? Place.InnerSpline : Place.OuterSpline;
        return Place.Bar;
    }

    /// <summary>Whether a mark said to be on plain bar cannot be told from one at a weld or a spline, because nobody noted where.</summary>
    private bool IsNowhere(Indication mark) =>
        mark is { Place: Place.Bar, Position: null } && made is not null;

    private Sentence Words(
        Indication[] group,
        Place place,
        double? length,
        double? width,
        bool linear,
        bool crack,
        bool? accepted,
        bool stops,
        bool nowhere
    )
    {
        Sentence size = (length, width) switch
        {
            ({ } l, { } w) => $"{Say.Length(l)} × {Say.Length(w)}",
            ({ } l, null) => $"{Say.Length(l)} long",
            _ => (Sentence)$"not measured",
        };
        Sentence what =
            group.Length > 1
                ? (Sentence)$"{group.Length} marks that count as one, {size}"
                : $"A mark, {size}";
        Sentence at = $"{what}, at {PlaceWords.At(place)}";
        if (crack)
            return $"{at}: a crack. No level accepts one.";
        if (!stops)
            return length is null
                ? (Sentence)$"{at}: measure it."
                : $"{at}: round, and no larger than level {PlaceWords.Level(level)} accepts.";
        if (nowhere)
            return $"{at}: it is not noted where, and beside a weld or in a spline any mark stops the job. Measure where it is.";
        if (place != Place.Bar)
            return $"{at}: any mark there stops the job.";
        return linear
            ? (Sentence)
                $"{at}: a line{(width is null && length is not null ? ", as long as its width is not measured" : "")}. Any line stops the job."
            : $"{at}: larger than level {PlaceWords.Level(level)} accepts, {Say.Length(Acceptance.Largest(run.Method, level, linear))}.";
    }
}
