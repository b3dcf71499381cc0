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
/// <param name="Beads">How many beads of the next layer were on besides; then <paramref name="BegunAt"/> is where the last of them
/// lies.</param>
public sealed record AxisReading(
    int Layers,
    double? BegunAt,
    double Offset,
    double OffsetUncertainty,
    double HighPoint,
    int Beads = 0
);

/// <summary>What one bead of a layer was seen to do.</summary>
/// <param name="Number">Which bead of its layer, 1 to 4: the first finds the joint least stiff.</param>
/// <param name="Away">How far it moves the axis away from where it lies, mm.</param>
/// <param name="Uncertainty">Expanded uncertainty of it, k = 2, mm.</param>
/// <param name="Aside">How far at most it moved it across that, mm.</param>
/// <param name="Beads">From how many beads it was learned.</param>
public sealed record BeadMove(int Number, double Away, double Uncertainty, double Aside, int Beads)
{
    /// <summary>True when it is larger than its uncertainty.</summary>
    public bool IsSure => Math.Abs(Away) > Uncertainty;
}

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

    /// <summary>The beads of the next layer; of one that is begun, those still to come.</summary>
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

    /// <summary>Run-out expected after the next layer, or within one after the next bead, mm, with what was learned; null when nothing sure was.</summary>
    public Band? Expected { get; init; }

    /// <summary>What was learned of this shaft; null when nothing yet.</summary>
    public LayerPull? Pull { get; init; }

    /// <summary>What single beads did, where it was read bead by bead; by their number in the layer.</summary>
    public IReadOnlyList<BeadMove> ByBead { get; init; } = [];

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
/// <para>Read bead by bead it is the same with beads: each is learned by its number in the layer, and of the quarters still open the
/// one nearest the high point comes next.</para>
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
        var byBead = new SortedDictionary<(int Layers, int Beads), AxisReading>();
        foreach (var r in readings)
        {
            byBead[(r.Layers, r.Beads)] = r;
            if (r.Beads == 0)
                byLayer[r.Layers] = r;
        }
        var last = byBead.Count == 0 ? null : byBead.Values.Last();
        var pull = Learn(byLayer, Starts(byLayer));
        var within = new LayerWalk(byBead, byLayer);
        var moves = within.Moves();
        var done = last?.Layers ?? 0;
        var more = Math.Max(1, (preparation?.FewestRuns ?? 0) - done);
        var begun = last is { Beads: > 0 };
        var (start, fromDial) = begun
            ? (within.Open(done)[0], Tells(last!))
            : Begin(last, pull, done);
        var next = begun ? Rest(within, done, more) : Layer(done + 1, start, more, 0);
        var all = new List<Bead>(next);
        var first = begun ? within.Places(done)[0] : start;
        for (var k = 1; k < more; k++)
            all.AddRange(Layer(done + 1 + k, first + k * Math.PI / 4, more, k));
        Band? Expect(double move, double uncertainty)
        {
            var left = Math.Abs(last!.Offset - Math.Abs(move));
            var give = uncertainty + 2 * last.OffsetUncertainty;
            return new(2 * Math.Max(0, left - give), 2 * (left + give));
        }
        Band? expected =
            last is null ? null
            : begun
                ? moves.FirstOrDefault(m => m.Number == last.Beads + 1) is { IsSure: true } move
                        ? Expect(move.Away, move.Uncertainty)
                    : null
            : pull is { IsSure: true } sure ? Expect(sure.PerLayer, sure.Uncertainty)
            : null;
        if (begun)
            SpeakWithin(last!, start, fromDial, expected, Add);
        else
            Speak(last, pull, start, fromDial, done, expected, Add);
        foreach (var m in moves)
            Add(
                Severity.Note,
                m.IsSure ? "bead-pull-learned" : "bead-pull-unsure",
                $"On this shaft bead {m.Number} of a layer moved the axis {Say.Fine(Math.Abs(m.Away))} {(m.Away < 0 ? "towards" : "away from")} where it lies, give or take {Say.Fine(m.Uncertainty)} (from {m.Beads} {(m.Beads == 1 ? "bead" : "beads")}).",
                $"It holds for this shaft only. Read after each bead at the same place and the same warmth.",
                Model
            );
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
            ByBead = moves,
            Last = last,
            Findings = findings,
        };
    }

    private static void SpeakWithin(
        AxisReading last,
        double next,
        bool fromDial,
        Band? expected,
        Action<Severity, string, Sentence, Sentence, string> add
    ) =>
        add(
            Severity.Note,
            "beads-within",
            fromDial
                ? $"After bead {last.Beads} of layer {last.Layers + 1} it runs out {Say.Fine(2 * last.Offset)}, highest at {Say.Bearing(last.HighPoint)}. Of the quarters still open the one at {Say.Bearing(next)} lies nearest to that, and comes next."
                : (Sentence)
                    $"After bead {last.Beads} of layer {last.Layers + 1} the dial cannot tell a high side. The next bead goes to {Say.Bearing(next)} by the pattern.",
            expected is { } e
                ? (Sentence)
                    $"After it expect {HeatAdvice.To(e, Say.Fine)} of run-out. It was learned from this shaft and holds for no other."
                : $"Weld it, let it come down to the same warmth, and read again at the same place.",
            Model
        );

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

    /// <summary>The beads still to come of a layer that is begun.</summary>
    private static List<Bead> Rest(LayerWalk within, int done, int more)
    {
        var list = new List<Bead>();
        var places = within.Places(done);
        var on = 4 - within.Open(done).Count;
        var before = places[on - 1];
        foreach (var at in within.Open(done))
        {
            var number = on + list.Count + 1;
            var opposite =
                Math.Abs(Math.IEEERemainder(at - before - Math.PI, Math.Tau)) < Math.PI / 8;
            list.Add(
                new(
                    number,
                    done + 1,
                    at,
                    (done + 1) % 2 == 0,
                    $"Bead {number} of {more * 4}: at {Say.Bearing(at)}{(opposite ? ", opposite to the last" : "")}."
                )
            );
            before = at;
        }
        return list;
    }

    private static bool Tells(AxisReading reading) =>
        reading.Offset > 2 * reading.OffsetUncertainty;

    /// <summary>Where the beads of layers lie that were read bead by bead: as said, else as they would have been proposed.</summary>
    private sealed class LayerWalk(
        SortedDictionary<(int Layers, int Beads), AxisReading> read,
        SortedDictionary<int, AxisReading> byLayer
    )
    {
        /// <summary>The four places of the layer on top of so many, in order of welding, as far as it is known or proposed.</summary>
        public List<double> Places(int layers) => Walk(layers);

        /// <summary>Those of them that are still open after the last reading within the layer.</summary>
        public IReadOnlyList<double> Open(int layers)
        {
            var on = read.Keys.Where(k => k.Layers == layers).Select(k => k.Beads).Max();
            return [.. Walk(layers).Skip(on)];
        }

        /// <summary>What each bead did that was read before and after, by its number in the layer.</summary>
        public List<BeadMove> Moves()
        {
            var seen = new List<(int Number, double Along, double Aside, double U2)>();
            foreach (var ((layers, beads), before) in read)
            {
                var next =
                    beads == DialNoteFields.MostBeads ? (layers + 1, 0) : (layers, beads + 1);
                // Of a layer that was read only as a whole nothing is known of its beads.
                if (!read.TryGetValue(next, out var after))
                    continue;
                var (sin, cos) = Math.SinCos(Places(layers)[beads]);
                var (ax, ay) = Vector(after);
                var (bx, by) = Vector(before);
                var (dx, dy) = (ax - bx, ay - by);
                seen.Add(
                    (
                        beads + 1,
                        -(dx * cos + dy * sin),
                        Math.Abs(dy * cos - dx * sin),
                        after.OffsetUncertainty * after.OffsetUncertainty
                            + before.OffsetUncertainty * before.OffsetUncertainty
                    )
                );
            }
            return
            [
                .. seen.GroupBy(s => s.Number)
                    .OrderBy(g => g.Key)
                    .Select(g =>
                    {
                        var (n, mean) = (g.Count(), g.Average(s => s.Along));
                        var readings = g.Average(s => s.U2) / n;
                        var scatter =
                            n > 1
                                ? g.Sum(s => (s.Along - mean) * (s.Along - mean)) / (n - 1) / n
                                : 0;
                        var aside = g.Max(s => s.Aside);
                        var u = 2 * Math.Sqrt(Math.Max(readings, scatter));
                        // What went aside with one bead says how far the model can be trusted.
                        return new BeadMove(g.Key, mean, n == 1 ? Math.Max(u, aside) : u, aside, n);
                    }),
            ];
        }

        private List<double> Walk(int layers)
        {
            read.TryGetValue((layers, 1), out var one);
            byLayer.TryGetValue(layers + 1, out var whole);
            byLayer.TryGetValue(layers, out var under);
            var pull = Learn(Up(byLayer, layers), Starts(Up(byLayer, layers)));
            var first = one?.BegunAt ?? whole?.BegunAt ?? Begin(under, pull, layers).Start;
            List<double> open = [.. s_opposite.Select(d => Turned(first + d * Math.PI / 180))];
            var places = new List<double>();
            for (var k = 0; k < 4; k++)
            {
                read.TryGetValue((layers, k), out var before);
                read.TryGetValue((layers, k + 1), out var after);
                var quarter =
                    k == 0 ? open[0]
                    : after?.BegunAt is { } said ? Nearest(open, said)
                    : before is { Beads: > 0 } && Tells(before)
                        ? Nearest(
                            open,
                            before.HighPoint
                                + (pull is { IsSure: true, PerLayer: < 0 } ? Math.PI : 0)
                        )
                    // The opposite of the last while it is open, then the pattern.
                    : open.Exists(o => IsOpposite(o, places[^1]))
                        ? open.First(o => IsOpposite(o, places[^1]))
                    : open[0];
                open.Remove(quarter);
                places.Add(after?.BegunAt is { } at && k > 0 ? Turned(at) : quarter);
            }
            return places;
        }

        private static bool IsOpposite(double a, double b) =>
            Math.Abs(Math.IEEERemainder(a - b - Math.PI, Math.Tau)) < Math.PI / 8;

        private static double Nearest(List<double> open, double to) =>
            open.MinBy(o => Math.Abs(Math.IEEERemainder(o - to, Math.Tau)));
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
