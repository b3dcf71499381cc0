using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Pages.Pictures;

namespace Shaftwright.Pages.Doors;

/// <summary>What holds the hub: its pivots one at a time, for a length without a trial shaft. Opened from the route card only.</summary>
public sealed partial class JobLinkage
{
    /// <summary>Its place in the address, after the job's.</summary>
    public const string Place = "linkage";

    private static readonly Option[] YesNo = [new("yes", "Yes"), new("no", "No")];

    private static readonly Option[] Arms =
    [
        new(nameof(LinkageKind.PivotedArm), "One arm", "that turns about one line"),
        new(nameof(LinkageKind.DoubleWishbone), "Two arms", "one above the other, two pivots each"),
        new(
            nameof(LinkageKind.FiveLink),
            "Four separate links",
            "a ball or bush at both ends of each"
        ),
    ];

    private static readonly Option[] Sides =
    [
        new("", "Yes"),
        new("mirrored", "No, on the other", "the car is alike on both"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "What holds the hub";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps =>
        [
            new("holds", "What holds the hub?"),
            new(
                "marks",
                "Where are your marks?",
                "Marks are for tapes: three or more whose places you know. Without them each point is measured forward, across and up."
            ),
            .. Asked.Select(p => new Step(
                p.ToString(),
                $"Where is the {LinkageFields.Words(p)}?",
                "Without it the linkage is not whole, and no length follows from it."
            )),
            new(
                "axes",
                "Which way do the flange and the hub look?",
                "Then both are taken as level and straight across the car."
            ),
            new("travel", "How far does the wheel go?"),
        ];

    /// <summary>What marks are called here; a job may have others, which stay.</summary>
    private static readonly string[] Marks = ["A", "B", "C", "D"];

    private bool HasMarks => Draft.Keys("mark/").Any();

    /// <summary>The points asked for, the wheel's centre first, then the joints.</summary>
    private IEnumerable<LinkagePoint> Asked =>
        Kind == LinkageKind.Unknown
            ? []
            :
            [
                LinkagePoint.WheelCentre,
                LinkagePoint.OuterJoint,
                LinkagePoint.InnerJoint,
                .. LinkageKinds.Needs(Kind).Skip(1),
            ];

    /// <summary>Worked out on the last screen only: a linkage with all its doubts takes a phone seconds, too long for every key.</summary>
    public override Answer? Answer => Answering ? LengthWords.Answer(Result) : null;

    /// <summary>The question in hand; nothing at the answer.</summary>
    private string Step => Index < Steps.Count ? Steps[Index].Slug : "";

    private LinkagePoint? InHand => Enum.TryParse<LinkagePoint>(Step, out var point) ? point : null;

    private LinkageKind Kind =>
        Draft["solid"] == "yes" ? LinkageKind.Beam
        : Draft["solid"] != "no" ? LinkageKind.Unknown
        : Draft["strut"] == "yes" ? LinkageKind.Strut
        : Draft["strut"] == "no" && Enum.TryParse<LinkageKind>(Draft["arms"], out var kind) ? kind
        : LinkageKind.Unknown;

    private static string KindWords(LinkageKind kind) =>
        kind switch
        {
            LinkageKind.DoubleWishbone => "Double wishbones.",
            LinkageKind.Strut => "A strut.",
            LinkageKind.PivotedArm => "An arm on one axis: trailing, semi-trailing or swing.",
            LinkageKind.FiveLink => "Five links, the steering link being the fifth.",
            _ => "A beam on four links.",
        };

    private Scaled? Sketch =>
        Job.Corner?.Linkage is { } linkage ? ToScale.Linkage(linkage, InHand) : null;

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (Draft.IsEmpty)
            return basis;
        var corner = basis.Corner ?? new CornerInput();
        var old = corner.Linkage ?? new LinkageInput();
        return basis with
        {
            Corner = corner with
            {
                Linkage = old with
                {
                    Kind = Kind,
                    Points = Points(old),
                    References = References(old),
                    InnerDirection = Direction("inner", old.InnerDirection),
                    OuterDirection = Direction("outer", old.OuterDirection),
                    Droop = Draft.Take("droop", LinkageFields.Droop, old.Droop),
                    Bump = Draft.Take("bump", LinkageFields.Bump, old.Bump),
                    RackLeft = Draft.Take("rackLeft", LinkageFields.RackLeft, old.RackLeft),
                    RackRight = Draft.Take("rackRight", LinkageFields.RackRight, old.RackRight),
                },
            },
        };
    }

    /// <summary>The job's own points in their order, with what was typed over them; then those it did not have.</summary>
    private List<PointInput> Points(LinkageInput old)
    {
        var points = new List<PointInput>();
        foreach (var held in old.Points)
            points.Add(Point(held.Point, held));
        foreach (var p in Enum.GetValues<LinkagePoint>())
        {
            if (old.Points.Any(h => h.Point == p) || !Draft.Keys(p + "/").Any())
                continue;
            points.Add(Point(p, new() { Point = p }));
        }
        return points;
    }

    private List<ReferenceInput> References(LinkageInput old)
    {
        var marks = new List<ReferenceInput>();
        foreach (var name in old.References.Select(r => r.Name).Concat(Marks).Distinct())
        {
            var held = old.References.FirstOrDefault(r => r.Name == name);
            if (!Marks.Contains(name))
            {
                marks.Add(held!);
                continue;
            }
            var mark = (held ?? new() { Name = name }) with
            {
                X = Draft.Take($"mark/{name}/x", LinkageFields.X, held?.X),
                Y = Draft.Take($"mark/{name}/y", LinkageFields.Y, held?.Y),
                Z = Draft.Take($"mark/{name}/z", LinkageFields.Z, held?.Z),
            };
            if (mark is not { X: null, Y: null, Z: null })
                marks.Add(mark);
        }
        return marks;
    }

    /// <summary>Tapes from the marks asked for, over those of the job; from others they stay.</summary>
    private List<TapeInput> Tapes(LinkagePoint p, PointInput held)
    {
        var tapes = new List<TapeInput>();
        foreach (var name in held.Tapes.Select(t => t.From).Concat(Marks).Distinct())
        {
            var old = held.Tapes.FirstOrDefault(t => t.From == name);
            var distance = Marks.Contains(name)
                ? Draft.Take($"{p}/tape/{name}", LinkageFields.Tape, old?.Distance)
                : old?.Distance;
            if (distance is not null || !Marks.Contains(name))
                tapes.Add((old ?? new() { From = name }) with { Distance = distance });
        }
        return tapes;
    }

    private PointInput Point(LinkagePoint p, PointInput held) =>
        held with
        {
            Tapes = Tapes(p, held),
            X = Draft.Take(p + "/x", LinkageFields.X, held.X),
            Y = Draft.Take(p + "/y", LinkageFields.Y, held.Y),
            Z = Draft.Take(p + "/z", LinkageFields.Z, held.Z),
            Mirrored = Draft[p + "/mirrored"] == "mirrored",
        };

    private DirectionInput? Direction(string end, DirectionInput? old)
    {
        var direction = (old ?? new()) with
        {
            Rise = Draft.Take(end + "/rise", LinkageFields.Rise, old?.Rise),
            Forward = Draft.Take(end + "/forward", LinkageFields.Forward, old?.Forward),
        };
        return direction == new DirectionInput() ? null : direction;
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Corner?.Linkage is not { } linkage)
            return;
        if (linkage.Kind != LinkageKind.Unknown)
            answers["solid"] = linkage.Kind == LinkageKind.Beam ? "yes" : "no";
        if (linkage.Kind is not (LinkageKind.Unknown or LinkageKind.Beam))
        {
            answers["strut"] = linkage.Kind == LinkageKind.Strut ? "yes" : "no";
            if (linkage.Kind != LinkageKind.Strut)
                answers["arms"] = linkage.Kind.ToString();
        }
        foreach (var p in linkage.Points)
        {
            Draft.Lay(answers, p.Point + "/x", p.X);
            Draft.Lay(answers, p.Point + "/y", p.Y);
            Draft.Lay(answers, p.Point + "/z", p.Z);
            foreach (var tape in p.Tapes.Where(t => Marks.Contains(t.From)))
                Draft.Lay(answers, $"{p.Point}/tape/{tape.From}", tape.Distance);
            if (p.Mirrored)
                answers[p.Point + "/mirrored"] = "mirrored";
        }
        foreach (var mark in linkage.References.Where(r => Marks.Contains(r.Name)))
        {
            Draft.Lay(answers, $"mark/{mark.Name}/x", mark.X);
            Draft.Lay(answers, $"mark/{mark.Name}/y", mark.Y);
            Draft.Lay(answers, $"mark/{mark.Name}/z", mark.Z);
        }
        Draft.Lay(answers, "inner/rise", linkage.InnerDirection?.Rise);
        Draft.Lay(answers, "inner/forward", linkage.InnerDirection?.Forward);
        Draft.Lay(answers, "outer/rise", linkage.OuterDirection?.Rise);
        Draft.Lay(answers, "outer/forward", linkage.OuterDirection?.Forward);
        Draft.Lay(answers, "droop", linkage.Droop);
        Draft.Lay(answers, "bump", linkage.Bump);
        Draft.Lay(answers, "rackLeft", linkage.RackLeft);
        Draft.Lay(answers, "rackRight", linkage.RackRight);
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.05
            ? null
            : Say.Length(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " longer than before" : " shorter than before");

    /// <inheritdoc/>
    public override string Called(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var parts = key.Split('/');
        if (Enum.TryParse<LinkagePoint>(parts[0], out var point))
            return $"the {LinkageFields.Words(point)}";
        return parts[0] switch
        {
            "mark" => $"the mark {parts[1]}",
            "inner" => "the inner joint's axis",
            "outer" => "the outer joint's axis",
            "droop" or "bump" => "how far the wheel goes",
            "rackLeft" or "rackRight" => "how far the rack goes",
            _ => "what holds the hub",
        };
    }

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        Option.Worded([.. YesNo, .. Arms, .. Sides], text);
}
