using System.Globalization;
using Microsoft.AspNetCore.Components;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

/// <summary>The lists behind the weld's pages: a sample's depths and hardness row, the tacks, the layers.</summary>
internal static class WeldLists
{
    private const int FusionPlaces = 4;
    private const int Most = 14;

    // A reading this near to a place that is asked is that place, rad.
    private const double Near = 0.02;

    /// <summary>Fusion depth at four places round the section; readings at other angles stay as they are.</summary>
    public static IReadOnlyList<Asked> Fusion { get; } =
    [
        .. Enumerable
            .Range(0, FusionPlaces)
            .Select(i =>
            {
                var degrees = 360 / FusionPlaces * i;
                var angle = Measured<Angle>.Of(degrees, Angle.Degree);
                return new AskedMeasure<Distance>(
                    $"fusion/{i}",
                    $"the depth at {degrees}°",
                    $"Fused depth at {degrees}°",
                    SampleFields.Depth,
                    j => Of(j, angle)?.Depth,
                    (j, v) =>
                        WeldTopics.Sampled(
                            j,
                            s =>
                                s with
                                {
                                    Fusion = Replaced(
                                        s.Fusion,
                                        f => Is(f.Angle, angle),
                                        v is null ? null : new() { Angle = angle, Depth = v }
                                    ),
                                }
                        )
                );
            }),
    ];

    /// <summary>The hardness row: a place and a reading each, one more than there are.</summary>
    public static IEnumerable<Asked> Row(Job job, Draft draft)
    {
        var count = Math.Max(job.Strength?.Sample?.Hardness.Count ?? 0, Typed(draft, "row"));
        for (var n = 0; n < Math.Min(Most, count + 1); n++)
        {
            var i = n;
            yield return new AskedMeasure<Distance>(
                $"row/{i}/from",
                $"place {i + 1} of the row",
                $"Place {i + 1}: from the middle of the weld, inner side with a minus",
                SampleFields.From,
                j => At(j, i)?.From,
                (j, v) => SetRow(j, i, h => h with { From = v })
            );
            yield return new AskedMeasure<Vickers>(
                $"row/{i}/hv",
                $"the hardness at place {i + 1}",
                $"Hardness at place {i + 1}",
                SampleFields.Hardness,
                j => At(j, i)?.Hardness,
                (j, v) => SetRow(j, i, h => h with { Hardness = v })
            );
        }
    }

    /// <summary>Two places on one piece, tacked.</summary>
    public static IEnumerable<Asked> Tacks(ShaftEnd end)
    {
        var piece = end == ShaftEnd.Inner ? "inner" : "outer";
        for (var n = 0; n < 2; n++)
        {
            var i = n;
            var where = i == 0 ? "close to the joint" : "further out";
            yield return new AskedMeasure<Distance>(
                $"{piece}/{i}/from",
                $"the place {where}",
                $"Dial {where}: from the joint",
                DialNoteFields.FromJoint,
                j => Note(j, end, i)?.FromJoint,
                (j, v) => SetNote(j, end, i, t => t with { FromJoint = v })
            );
            yield return new AskedMeasure<Distance>(
                $"{piece}/{i}/runout",
                $"the run-out {where}",
                "Run-out there, highest less lowest",
                DialNoteFields.RunOut,
                j => Note(j, end, i)?.RunOut,
                (j, v) => SetNote(j, end, i, t => t with { RunOut = v })
            );
            yield return new AskedMeasure<Angle>(
                $"{piece}/{i}/high",
                $"the high point {where}",
                "Where it stands highest, from the mark",
                DialNoteFields.HighPoint,
                j => Note(j, end, i)?.HighPoint,
                (j, v) => SetNote(j, end, i, t => t with { HighPoint = v })
            );
        }
    }

    /// <summary>The dial after tacking and after each layer so far, one more than was noted.</summary>
    public static IEnumerable<Asked> Layers(Job job, Draft draft)
    {
        var count = Math.Max(
            job.Weld?.Layers.Select(l => l.Layers + 1).DefaultIfEmpty().Max() ?? 0,
            Typed(draft, "layer")
        );
        for (var n = 0; n <= Math.Min(Most, count); n++)
        {
            var layers = n;
            var when =
                layers == 0
                    ? "after tacking"
                    : "after layer " + layers.ToString(CultureInfo.InvariantCulture);
            yield return new AskedMeasure<Distance>(
                $"layer/{layers}/runout",
                $"the run-out {when}",
                $"Run-out {when}",
                DialNoteFields.RunOut,
                j => After(j, layers)?.RunOut,
                (j, v) => SetLayer(j, layers, l => l with { RunOut = v })
            );
            yield return new AskedMeasure<Angle>(
                $"layer/{layers}/high",
                $"the high point {when}",
                $"Where it stands highest {when}",
                DialNoteFields.HighPoint,
                j => After(j, layers)?.HighPoint,
                (j, v) => SetLayer(j, layers, l => l with { HighPoint = v })
            );
            foreach (var bead in Beads(job, draft, layers))
                yield return bead;
            if (layers > 0)
                yield return new AskedMeasure<Angle>(
                    $"layer/{layers}/begun",
                    $"where layer {layers} began",
                    $"Where layer {layers} began, if not as proposed",
                    DialNoteFields.BegunAt,
                    j => After(j, layers)?.BegunAt,
                    (j, v) => SetLayer(j, layers, l => l with { BegunAt = v })
                );
        }
    }

    /// <summary>The dial after each bead of the layer on top of so many: of one that is under way, and of any that was read so.</summary>
    private static IEnumerable<Asked> Beads(Job job, Draft draft, int layers)
    {
        var noted = job.Weld?.Layers.Where(l => l.Layers == layers).Max(l => (int?)l.Beads) ?? 0;
        var typed = draft
            .Keys($"bead/{layers}/")
            .Select(k => int.Parse(k.Split('/')[2], CultureInfo.InvariantCulture))
            .DefaultIfEmpty()
            .Max();
        var on = Math.Max(noted, typed);
        // One more than there are, and the first of a layer under way: whoever reads layer by layer leaves it empty.
        if (on == 0 && (After(job, layers) is null || After(job, layers + 1) is not null))
            yield break;
        for (var b = 1; b <= Math.Min(DialNoteFields.MostBeads, on + 1); b++)
        {
            var beads = b;
            var when =
                $"after bead {beads.ToString(CultureInfo.InvariantCulture)} of layer {(layers + 1).ToString(CultureInfo.InvariantCulture)}";
            yield return new AskedMeasure<Distance>(
                $"bead/{layers}/{beads}/runout",
                $"the run-out {when}",
                $"Run-out {when}, if you read it bead by bead",
                DialNoteFields.RunOut,
                j => After(j, layers, beads)?.RunOut,
                (j, v) => SetLayer(j, layers, l => l with { RunOut = v }, beads)
            );
            yield return new AskedMeasure<Angle>(
                $"bead/{layers}/{beads}/high",
                $"the high point {when}",
                $"Where it stands highest {when}",
                DialNoteFields.HighPoint,
                j => After(j, layers, beads)?.HighPoint,
                (j, v) => SetLayer(j, layers, l => l with { HighPoint = v }, beads)
            );
            yield return new AskedMeasure<Angle>(
                $"bead/{layers}/{beads}/at",
                $"where bead {beads} of layer {layers + 1} lies",
                $"Where that bead lies, if not as proposed",
                DialNoteFields.BegunAt,
                j => After(j, layers, beads)?.BegunAt,
                (j, v) => SetLayer(j, layers, l => l with { BegunAt = v }, beads)
            );
        }
    }

    private static int Typed(Draft draft, string list) =>
        draft
            .Keys(list + "/")
            .Select(k =>
                int.TryParse(k.Split('/')[1], CultureInfo.InvariantCulture, out var i) ? i + 1 : 0
            )
            .DefaultIfEmpty()
            .Max();

    private static bool Is(Measured<Angle>? a, Measured<Angle> b) =>
        a is not null && Math.Abs(Math.IEEERemainder(a.Value - b.Value, Math.Tau)) < Near;

    private static SampleFusion? Of(Job j, Measured<Angle> angle) =>
        j.Strength?.Sample?.Fusion.FirstOrDefault(f => Is(f.Angle, angle));

    private static SampleHardness? At(Job j, int i) =>
        j.Strength?.Sample?.Hardness.ElementAtOrDefault(i);

    private static Job SetRow(Job j, int i, Func<SampleHardness, SampleHardness> f) =>
        WeldTopics.Sampled(
            j,
            s =>
            {
                var row = s.Hardness.ToList();
                while (row.Count <= i)
                    row.Add(new());
                row[i] = f(row[i]);
                // What is left empty at the end is no reading.
                while (row.Count > 0 && row[^1] is { From: null, Hardness: null })
                    row.RemoveAt(row.Count - 1);
                return s with { Hardness = row };
            }
        );

    private static TackNote? Note(Job j, ShaftEnd end, int i) =>
        j.Weld?.Tacks.Where(t => t.Piece == end).ElementAtOrDefault(i);

    private static Job SetNote(Job j, ShaftEnd end, int i, Func<TackNote, TackNote> f) =>
        WeldTopics.Welded(
            j,
            w =>
            {
                var here = w.Tacks.Where(t => t.Piece == end).ToList();
                while (here.Count <= i)
                    here.Add(new() { Piece = end });
                here[i] = f(here[i]);
                while (
                    here.Count > 0 && here[^1] is { FromJoint: null, RunOut: null, HighPoint: null }
                )
                    here.RemoveAt(here.Count - 1);
                var there = w.Tacks.Where(t => t.Piece != end);
                return w with
                {
                    Tacks = end == ShaftEnd.Inner ? [.. here, .. there] : [.. there, .. here],
                };
            }
        );

    private static LayerNote? After(Job j, int layers, int beads = 0) =>
        j.Weld?.Layers.LastOrDefault(l => l.Layers == layers && l.Beads == beads);

    private static Job SetLayer(Job j, int layers, Func<LayerNote, LayerNote> f, int beads = 0) =>
        WeldTopics.Welded(
            j,
            w =>
            {
                var note = f(After(j, layers, beads) ?? new() { Layers = layers, Beads = beads });
                return w with
                {
                    Layers = Replaced(
                        w.Layers,
                        l => l.Layers == layers && l.Beads == beads,
                        note is { RunOut: null, HighPoint: null, BegunAt: null } ? null : note
                    ),
                };
            }
        );

    /// <summary>A list with what matches replaced in its place, added when there was none, or taken out.</summary>
    private static List<T> Replaced<T>(IReadOnlyList<T> list, Func<T, bool> which, T? by)
        where T : class
    {
        var replaced = new List<T>();
        var done = by is null;
        foreach (var one in list)
        {
            if (!which(one))
                replaced.Add(one);
            else if (!done)
            {
                replaced.Add(by!);
                done = true;
            }
        }
        if (!done)
            replaced.Add(by!);
        return replaced;
    }
}

/// <summary>The day a sample was measured.</summary>
internal sealed class AskedDay() : Asked("day", "the day")
{
    private const string Form = "yyyy-MM-dd";

    public override Job Lay(Job job, Draft draft)
    {
        var text = draft[Key];
        if (text == Text(job))
            return job;
        DateTimeOffset? at = DateTime.TryParseExact(
            text,
            Form,
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var day
        )
            ? new DateTimeOffset(day, TimeSpan.Zero)
            : null;
        return at is null && text.Length > 0
            ? job
            : WeldTopics.Sampled(job, s => s with { At = at });
    }

    public override void Unlay(Job job, IDictionary<string, string> answers)
    {
        if (Text(job) is { Length: > 0 } text)
            answers[Key] = text;
    }

    public override RenderFragment Box =>
        builder =>
        {
            builder.OpenComponent<TextBox>(0);
            builder.SetKey(Key);
            builder.AddComponentParameter(1, "Key", Key);
            builder.AddComponentParameter(2, "Label", "Day it was measured");
            builder.AddComponentParameter(3, "Kind", "date");
            builder.CloseComponent();
        };

    private static string Text(Job job) =>
        job.Strength?.Sample?.At?.ToString(Form, CultureInfo.InvariantCulture) ?? "";
}
