using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>One bead, or tack, in the order of welding.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Layer">Layer from 1; 0 for the tacks.</param>
/// <param name="At">Middle of it from the painted mark, rad, 0 to 2π.</param>
/// <param name="Backwards">True when the torch goes against the direction of numbering.</param>
/// <param name="Words">"Bead 3 of 8: at 90°, opposite to the last."</param>
public sealed record Bead(int Number, int Layer, double At, bool Backwards, Sentence Words);

/// <summary>How far the axis stands off, read between layers.</summary>
/// <param name="Layers">How many layers were on.</param>
/// <param name="BegunAt">Where the last of them began, rad; null when not said.</param>
/// <param name="Offset">Distance of the axis from the turning line, mm: half the run-out.</param>
/// <param name="OffsetUncertainty">Standard uncertainty of it, mm.</param>
/// <param name="HighPoint">Where it stands highest, rad.</param>
public sealed record AxisReading(
    int Layers,
    double? BegunAt,
    double Offset,
    double OffsetUncertainty,
    double HighPoint
);

/// <summary>What a layer of this shaft was seen to do.</summary>
/// <param name="PerLayer">How far one layer moves the axis away from where it began, mm.</param>
/// <param name="Uncertainty">Expanded uncertainty of it, k = 2, mm.</param>
/// <param name="Aside">How far it moved it across that, mm: what the model does not explain.</param>
/// <param name="Layers">Over how many layers it was learned.</param>
public sealed record LayerPull(double PerLayer, double Uncertainty, double Aside, int Layers)
{
    /// <summary>True when it is larger than its uncertainty.</summary>
    public bool IsSure => Math.Abs(PerLayer) > Uncertainty;
}

/// <summary>The order of the beads, from the tacks on.</summary>
public sealed record BeadPlan
{
    /// <summary>The four tacks.</summary>
    public required IReadOnlyList<Bead> Tacks { get; init; }

    /// <summary>The beads of the next layer.</summary>
    public required IReadOnlyList<Bead> Next { get; init; }

    /// <summary>Number of the next layer, from 1.</summary>
    public required int NextLayer { get; init; }

    /// <summary>Fewest layers the groove takes; null until it is known.</summary>
    public int? FewestLayers { get; init; }

    /// <summary>Most layers the groove takes.</summary>
    public int? MostLayers { get; init; }

    /// <summary>All beads still to come, for the fewest layers planned; the next layer alone when that is not known.</summary>
    public required IReadOnlyList<Bead> All { get; init; }

    /// <summary>Where the next layer begins, rad.</summary>
    public required double StartsAt { get; init; }

    /// <summary>True when it was proposed from the dial, false when it only follows the pattern.</summary>
    public required bool FromDial { get; init; }

    /// <summary>Run-out expected after the next layer, mm, with what was learned; null when nothing sure was.</summary>
    public Band? Expected { get; init; }

    /// <summary>What was learned of this shaft; null when nothing yet.</summary>
    public LayerPull? Pull { get; init; }

    /// <summary>The last reading that counts; null when there is none.</summary>
    public AxisReading? Last { get; init; }

    /// <summary>What to know of it.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}

/// <summary>Where each bead goes, and on which side the next layer begins.</summary>
/// <remarks>
/// <para>Four tacks at 0, 180, 90 and 270°; then quarter beads in the same opposite order, each layer begun 45° on and welded the
/// other way round (common practice, no source; welding on opposite sides is general guidance, TWI notes).</para>
/// <para>A bead shrinks and draws the ends towards its own side, so the joint moves away from it. The first bead of a layer pulls
/// most, the joint being least stiff. So a layer is begun where the shaft stands highest.</para>
/// <para>What a layer does is learned from this shaft only: between two readings one layer apart the axis moved by a vector; its
/// part against the place where that layer began is the pull, averaged over layers. Its uncertainty is that of the readings, or
/// the scatter between layers if that is more. Model and derivation are ours.</para>
/// </remarks>
public static class BeadSolver
{
    private const string Practice = "common practice, no source";
    private const string Model =
        "own model: each bead draws the ends towards its side, the first of a layer most";

    private static readonly double[] s_opposite = [0, 180, 90, 270];

    /// <summary>Plans the beads.</summary>
    /// <param name="readings">Readings between layers, in the order taken; the last at each count of layers counts.</param>
    /// <param name="preparation">The groove, for the number of layers; null when unknown.</param>
    public static BeadPlan Solve(
        IReadOnlyList<AxisReading> readings,
        PreparationNumbers? preparation
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        var findings = new List<Finding>();
        void Add(Severity severity, string code, Sentence text, Sentence action, string source) =>
            findings.Add(new(severity, Stage.Weld, code, text, action, source));
        var byLayer = new SortedDictionary<int, AxisReading>();
        foreach (var r in readings)
            byLayer[r.Layers] = r;
        var last = byLayer.Count == 0 ? null : byLayer.Values.Last();
        var starts = Starts(byLayer);
        var pull = Learn(byLayer, starts);
        var done = last?.Layers ?? 0;
        var (start, fromDial) = Begin(last, pull, done);
        var more = Math.Max(1, (preparation?.FewestRuns ?? 0) - done);
        var next = Layer(done + 1, start, more, 0);
        var all = new List<Bead>();
        for (var k = 0; k < more; k++)
            all.AddRange(Layer(done + 1 + k, start + k * Math.PI / 4, more, k));
        Band? expected = null;
        if (last is not null && pull is { IsSure: true } sure)
        {
            var left = Math.Abs(last.Offset - Math.Abs(sure.PerLayer));
            var give = sure.Uncertainty + 2 * last.OffsetUncertainty;
            expected = new(2 * Math.Max(0, left - give), 2 * (left + give));
        }
        Speak(last, pull, start, fromDial, done, expected, Add);
        return new()
        {
            Tacks = Tacks(),
            Next = next,
            NextLayer = done + 1,
            FewestLayers = preparation?.FewestRuns,
            MostLayers = preparation?.MostRuns,
            All = all,
            StartsAt = start,
            FromDial = fromDial,
            Expected = expected,
            Pull = pull,
            Last = last,
            Findings = findings,
        };
    }

    private static void Speak(
        AxisReading? last,
        LayerPull? pull,
        double start,
        bool fromDial,
        int done,
        Band? expected,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        if (last is null)
            add(
                Severity.Note,
                "beads-not-read",
                $"The run-out was not read after tacking, so the first layer begins at the mark.",
                $"Turn it under the dial and find the high point: the first bead goes there.",
                Practice
            );
        else if (fromDial)
            add(
                Severity.Note,
                "beads-start",
                $"After {Layers(done)} it runs out {Say.Fine(2 * last.Offset)}, highest at {Say.Bearing(last.HighPoint)}. A bead draws its own side in, so the next layer begins at {Say.Bearing(start)}.",
                $"Weld the layer, let it come down to the same warmth, and read again at the same place.",
                Model
            );
        else
            add(
                Severity.Note,
                "beads-even",
                $"After {Layers(done)} the dial cannot tell a high side ({Say.Fine(2 * last.Offset)} of run-out).",
                $"Go on with the pattern: the next layer begins at {Say.Bearing(start)}.",
                Practice
            );
        if (pull is null)
            return;
        if (!pull.IsSure)
            add(
                Severity.Note,
                "pull-unsure",
                $"What a layer does to this shaft is not sure yet: {Say.Fine(pull.PerLayer)} away from where it began, give or take {Say.Fine(pull.Uncertainty)}.",
                $"Read after every layer.",
                Model
            );
        else
        {
            add(
                pull.PerLayer < 0 ? Severity.Caution : Severity.Note,
                "pull-learned",
                pull.PerLayer < 0
                    ? (Sentence)
                        $"On this shaft a layer moved the axis {Say.Fine(-pull.PerLayer)} towards where it began, give or take {Say.Fine(pull.Uncertainty)}: the other way than usual, so the next one begins opposite the high point."
                    : $"On this shaft a layer moved the axis {Say.Fine(pull.PerLayer)} away from where it began, give or take {Say.Fine(pull.Uncertainty)} (from {Layers(pull.Layers)}).",
                expected is { } e
                    ? (Sentence)
                        $"After the next layer expect {HeatAdvice.To(e, Say.Fine)} of run-out. It was learned from this shaft and holds for no other."
                    : $"It holds for this shaft only.",
                Model
            );
            if (last is not null && Math.Abs(pull.PerLayer) > 2 * last.Offset + pull.Uncertainty)
                add(
                    Severity.Caution,
                    "pull-overshoots",
                    $"A whole layer moves it more than it is off: it would end on the other side.",
                    $"Weld this layer in eighths, first and last on opposite sides, or with less heat, and read after each half.",
                    Model
                );
        }
    }

    private static string Layers(int n) =>
        n switch
        {
            0 => "tacking",
            1 => "1 layer",
            _ => n.ToString(System.Globalization.CultureInfo.InvariantCulture) + " layers",
        };

    /// <summary>The four tacks.</summary>
    public static IReadOnlyList<Bead> Tacks() =>
        [
            .. s_opposite.Select(
                (d, i) =>
                    new Bead(
                        i + 1,
                        0,
                        d * Math.PI / 180,
                        false,
                        $"Tack {i + 1} of 4: at {Say.Bearing(d * Math.PI / 180)}{(i % 2 == 1 ? ", opposite to the last" : "")}."
                    )
            ),
        ];

    private static List<Bead> Layer(int layer, double start, int more, int before)
    {
        var list = new List<Bead>();
        var backwards = layer % 2 == 0;
        for (var i = 0; i < 4; i++)
        {
            var at = Turned(start + s_opposite[i] * Math.PI / 180);
            var number = before * 4 + i + 1;
            Sentence way =
                i == 0
                    ? (Sentence)$", {(backwards ? "against the numbering" : "with the numbering")}"
                    : $"";
            list.Add(
                new(
                    number,
                    layer,
                    at,
                    backwards,
                    $"Bead {number} of {more * 4}: at {Say.Bearing(at)}{(i % 2 == 1 ? ", opposite to the last" : "")}{way}."
                )
            );
        }
        return list;
    }

    /// <summary>Where each layer that was read began: as said, else as it would have been proposed.</summary>
    private static Dictionary<int, double> Starts(SortedDictionary<int, AxisReading> read)
    {
        var starts = new Dictionary<int, double>();
        foreach (var (layer, r) in read)
        {
            if (layer == 0)
                continue;
            if (r.BegunAt is { } said)
                starts[layer] = said;
            else if (read.TryGetValue(layer - 1, out var before))
                starts[layer] = Begin(before, Learn(Up(read, layer - 1), starts), layer - 1).Start;
        }
        return starts;
    }

    private static SortedDictionary<int, AxisReading> Up(
        SortedDictionary<int, AxisReading> read,
        int layer
    ) => new(read.Where(r => r.Key <= layer).ToDictionary(r => r.Key, r => r.Value));

    private static (double Start, bool FromDial) Begin(AxisReading? last, LayerPull? pull, int done)
    {
        var pattern = Turned(done * Math.PI / 4);
        if (last is null || last.Offset <= 2 * last.OffsetUncertainty)
            return (pattern, false);
        var against = pull is { IsSure: true, PerLayer: < 0 };
        return (Turned(last.HighPoint + (against ? Math.PI : 0)), true);
    }

    private static LayerPull? Learn(
        SortedDictionary<int, AxisReading> read,
        Dictionary<int, double> starts
    )
    {
        var pulls = new List<(double Along, double Aside, double U2)>();
        foreach (var (layer, after) in read)
        {
            if (
                !read.TryGetValue(layer - 1, out var before)
                || !starts.TryGetValue(layer, out var start)
            )
                continue;
            var (ax, ay) = Vector(after);
            var (bx, by) = Vector(before);
            var (sin, cos) = Math.SinCos(start);
            var (dx, dy) = (ax - bx, ay - by);
            pulls.Add(
                (
                    -(dx * cos + dy * sin),
                    dy * cos - dx * sin,
                    after.OffsetUncertainty * after.OffsetUncertainty
                        + before.OffsetUncertainty * before.OffsetUncertainty
                )
            );
        }
        if (pulls.Count == 0)
            return null;
        var mean = pulls.Average(p => p.Along);
        var n = pulls.Count;
        var read2 = pulls.Average(p => p.U2) / n;
        var scatter2 =
            n > 1 ? pulls.Sum(p => (p.Along - mean) * (p.Along - mean)) / (n - 1) / n : 0;
        // What went aside in one layer says how far the model can be trusted.
        var aside = pulls.Max(p => Math.Abs(p.Aside));
        var u = 2 * Math.Sqrt(Math.Max(read2, scatter2));
        return new(mean, n == 1 ? Math.Max(u, aside) : u, aside, n);
    }

    private static (double X, double Y) Vector(AxisReading r)
    {
        var (sin, cos) = Math.SinCos(r.HighPoint);
        return (r.Offset * cos, r.Offset * sin);
    }

    private static double Turned(double angle)
    {
        var turned = angle % Math.Tau;
        if (turned < 0)
            turned += Math.Tau;
        // A hair under a whole turn is the mark itself.
        return Math.Tau - turned < 1e-9 ? 0 : turned;
    }
}
