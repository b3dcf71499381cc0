using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>Two shafts on the bench: where to cut?</summary>
public sealed partial class TwoShafts
{
    /// <summary>Its place in the address.</summary>
    public const string Place = "two-shafts";

    private static readonly Option[] Sleeves = [new("no", "No sleeve"), new("yes", "A sleeve")];

    /// <summary>For each end, whether the job holds hardened stretches of which the boxes stand for none.</summary>
    private readonly Dictionary<string, bool> _none = [];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "Two shafts on the bench";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new("inner-end", "Walk the shaft that gives the inner (power unit) end."),
        new("outer-end", "Walk the shaft that gives the outer (wheel) end."),
        new(
            "overall",
            "How long must the finished shaft be?",
            "Without it there is no second cut, only where the two are most alike."
        ),
        new("sleeve", "Is there a sleeve?", "Then none is drawn, and its ends are not checked."),
    ];

    /// <inheritdoc/>
    public override Answer? Answer =>
        Result.Cut is { InnerAt: { } inner, OuterAt: { } outer }
            ? new(
                $"Cut the inner-end shaft at",
                $"{Say.Length(inner)}",
                $", the outer-end shaft at {Say.Length(outer)}, each from its own joint end.",
                inner
            )
            {
                Unsettled = $"the inner-end shaft would be cut at",
            }
            : null;

    private bool WithSleeve =>
        Draft["sleeve"] is var said
        && (said == "yes" || (said.Length == 0 && Draft.Has("sleeve/length")));

    private IReadOnlyList<string> Taken
    {
        get
        {
            string L(double mm) => Say.Length(mm).In(Preferences.Display);
            var lines = new List<string>();
            if (Job.Cut?.RootGap is null)
                lines.Add(
                    $"A gap of {L(CutFields.UsualRootGap)} between the faces (common practice, no source)."
                );
            if (Job.Cut?.Shrinkage is null)
                lines.Add(
                    $"The weld draws the ends together by {L(CutFields.UsualShrinkage)}; a welded sample of your own says better."
                );
            if (Job.Cut?.HeatBand is null && Result.Cut?.Heat is null)
                lines.Add(
                    $"Heat changes the steel {L(CutFields.UsualHeatBand)} to each side of a weld (common practice, no source)."
                );
            if (Job.Cut?.BootSlideRoom is null)
                lines.Add(
                    $"A boot needs {L(CutFields.UsualBootSlideRoom)} to slide back (common practice, no source)."
                );
            return lines;
        }
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var inner = Shaft("inner", basis.Donors?.InnerEnd);
        var outer = Shaft("outer", basis.Donors?.OuterEnd);
        var old = basis.Cut ?? new();
        var cut = old with
        {
            OverallLength = Draft.Take("overall", CutFields.OverallLength, old.OverallLength),
            InnerCutAt = Draft.Take("cut", CutFields.InnerCutAt, old.InnerCutAt),
            SleeveLength = WithSleeve
                ? Draft.Take("sleeve/length", CutFields.SleeveLength, old.SleeveLength)
                : null,
            SleeveOutside = WithSleeve
                ? Draft.Take("sleeve/outside", CutFields.SleeveOutside, old.SleeveOutside)
                : null,
        };
        return basis with
        {
            Donors =
                inner is null && outer is null
                    ? basis.Donors
                    : (basis.Donors ?? new()) with
                    {
                        InnerEnd = inner,
                        OuterEnd = outer,
                    },
            Cut = cut == new CutInput() ? null : cut,
        };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Cut is { } cut)
        {
            Draft.Lay(answers, "overall", cut.OverallLength);
            Draft.Lay(answers, "cut", cut.InnerCutAt);
            Draft.Lay(answers, "sleeve/length", cut.SleeveLength);
            Draft.Lay(answers, "sleeve/outside", cut.SleeveOutside);
            if (cut.SleeveLength is not null || cut.SleeveOutside is not null)
                answers["sleeve"] = "yes";
        }
        UnlayShaft("inner", job.Donors?.InnerEnd, answers);
        UnlayShaft("outer", job.Donors?.OuterEnd, answers);
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.05
            ? null
            : Say.Length(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " further in than before" : " nearer the joint than before");

    /// <inheritdoc/>
    public override string Called(string key) =>
        key.Split('/') switch
        {
            ["overall"] => "the finished length",
            ["cut"] => "where the inner-end shaft is cut",
            ["sleeve"] => "whether there is a sleeve",
            ["sleeve", "length", ..] => "the length of the sleeve",
            ["sleeve", ..] => "the outside of the sleeve",
            [var piece, "name"] => $"what the {piece}-end shaft is called",
            [var piece, "hard", ..] => $"where the {piece}-end shaft is hard",
            [var piece, var n, var what, ..] when int.TryParse(n, out var number) => (
                PlacesOf(piece).IndexOf(number) is >= 0 and var i
                    ? $"the {piece}-end shaft's place {i + 1}, "
                    : $"a place of the {piece}-end shaft that is no longer in the job, "
            )
                + what switch
                {
                    "kind" => "what is there",
                    "until" => "where it ends",
                    "end" => "the diameter where it ends",
                    "root" => "the diameter at the root",
                    _ => "its diameter",
                },
            _ => base.Called(key),
        };

    private DonorShaft? Shaft(string piece, DonorShaft? old)
    {
        IReadOnlyList<ShaftZone> held = old?.Zones ?? [];
        var numbers = NumbersOf(piece, held);
        List<(int Number, ShaftZone Zone)> places = PlacesOf(piece, numbers)
            .ConvertAll(n =>
                (n, Zone($"{piece}/{n}/", numbers.IndexOf(n) is >= 0 and var i ? held[i] : null))
            );
        // A place that has been opened here and not yet been given its end or its diameter is not part of the shaft. One that the
        // job holds so is: its box is empty, and nobody has emptied it.
        while (
            places is [.., var (last, zone)]
            && !numbers.Contains(last)
            && (zone.Until is null || zone.Diameter is null)
        )
            places.RemoveAt(places.Count - 1);
        if (Keeping && JobId is not null)
            _pins[piece].Lay(places);
        List<ShaftZone> zones = [.. places.Select(p => p.Zone)];
        var hardened = new List<HardenedZone>();
        var asked = Asked(piece, old);
        if (Hard(piece, asked) is { } hard)
            hardened.Add(hard);
        var asks = hardened.Count;
        hardened.AddRange(old?.Hardened.Skip(asked is null ? 0 : 1) ?? []);
        if (Keeping && JobId is not null)
            _none[piece] = asks == 0 && hardened.Count > 0;
        if (zones.Count == 0 && hardened.Count == 0 && old is null)
            return null;
        return (old ?? new()) with
        {
            Name = Draft[$"{piece}/name"],
            Zones = zones,
            Hardened = hardened,
        };
    }

    /// <summary>A place along a shaft, over the one that the job holds there. What its kind does not ask for goes when the kind
    /// is picked, and not otherwise.</summary>
    private ShaftZone Zone(string at, ShaftZone? old)
    {
        var kind = Enum.TryParse<ZoneKind>(Draft[at + "kind"], out var named)
            ? named
            : ZoneKind.Plain;
        var same = kind == old?.Kind;
        return new()
        {
            Kind = kind,
            Until = Draft.Take(at + "until", DonorFields.Until, old?.Until),
            Diameter = Draft.Take(at + "diameter", DonorFields.Diameter, old?.Diameter),
            EndDiameter =
                kind == ZoneKind.Taper || same
                    ? Draft.Take(at + "end", DonorFields.EndDiameter, old?.EndDiameter)
                    : null,
            RootDiameter =
                kind == ZoneKind.Spline || same
                    ? Draft.Take(at + "root", DonorFields.RootDiameter, old?.RootDiameter)
                    : null,
        };
    }

    /// <summary>The hardened stretch of a job that is asked for: its first. When it was emptied here, none is: the next one is
    /// not handed the empty boxes.</summary>
    private HardenedZone? Asked(string piece, DonorShaft? shaft) =>
        _none.GetValueOrDefault(piece) || shaft is not { Hardened: [var first, ..] } ? null : first;

    /// <inheritdoc/>
    protected override void Moves(Job basis, bool opens)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (opens)
            _none.Clear();
        if (JobId is null)
            return;
        foreach (var piece in s_pieces)
        {
            if (opens)
                _pins[piece].Open(ZonesOf(basis, piece), Words, FoundOf(piece));
            else
                _pins[piece].Move(ZonesOf(basis, piece));
        }
    }

    /// <summary>The hardened stretch that is asked for, over the first that the job holds.</summary>
    private HardenedZone? Hard(string piece, HardenedZone? old)
    {
        var hard = (old ?? new()) with
        {
            From = Draft.Take($"{piece}/hard/from", DonorFields.From, old?.From),
            To = Draft.Take($"{piece}/hard/to", DonorFields.To, old?.To),
        };
        if (hard == new HardenedZone())
            return null;
        // One typed here needs both its ends; one of the job may have had one only. Out of order it waits to be put right.
        return hard switch
        {
            { From: { } from, To: { } to } => to.Value > from.Value ? hard : old,
            _ => old is null ? null : hard,
        };
    }

    private void UnlayShaft(string piece, DonorShaft? shaft, IDictionary<string, string> answers)
    {
        if (shaft is null)
            return;
        answers[$"{piece}/name"] = shaft.Name;
        foreach (var (number, zone) in NumbersOf(piece, shaft.Zones).Zip(shaft.Zones))
            UnlayZone($"{piece}/{number}/", zone, answers);
        if (Asked(piece, shaft) is { } hard)
        {
            Draft.Lay(answers, $"{piece}/hard/from", hard.From);
            Draft.Lay(answers, $"{piece}/hard/to", hard.To);
        }
    }
}
