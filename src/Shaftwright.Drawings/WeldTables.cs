using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Drawings;

/// <summary>The weld's tables, which pages, sheet and command line share.</summary>
public static class WeldTables
{
    /// <summary>The heat in numbers; null when there is none.</summary>
    public static Table? Heat(WeldResult? weld, Display display)
    {
        if (weld?.Heat is not { } heat)
            return null;
        var rows = new List<IReadOnlyList<string>>();
        foreach (var steel in heat.Steels)
        {
            var end = steel.End == ShaftEnd.Inner ? "inner" : "outer";
            rows.Add([
                $"Carbon equivalent, {end} piece",
                Range(steel.CarbonEquivalent, Say.Content, display),
                steel.Words,
            ]);
            rows.Add([$"CET, {end} piece", Range(steel.Cet, Say.Content, display), ""]);
        }
        rows.Add([
            "Preheat by the handbooks",
            Range(heat.Preheat, Say.Temperature, display),
            "the more demanding piece",
        ]);
        if (heat.Diameter is not null)
            rows.Add([
                "Preheat by method B",
                Range(heat.MethodB, Say.Temperature, display),
                heat.MethodBLimits.Count == 0
                    ? "inside its limits"
                    : "outside: " + string.Join(", ", heat.MethodBLimits.Select(MethodB.NameOf)),
            ]);
        rows.Add([
            "Heat input",
            Range(heat.HeatInput, Say.Factor, display) + " kJ/mm",
            heat.HeatInputKnown ? "from the meter" : "taken",
        ]);
        if (heat.Cooling is { } t)
            rows.Add([
                "From 800 to 500 °C",
                $"{One(t.Low)} to {One(t.High)} s",
                "plate formulas, a guide",
            ]);
        if (heat is { Dueren: { } a, Yurioka: { } b })
            rows.Add([
                "Hardness as welded",
                Range(new(Math.Min(a.Low, b.Low), Math.Max(a.High, b.High)), Say.Vickers, display),
                "two methods together",
            ]);
        if (heat.LapWarming is { } lap)
            rows.Add([
                "One lap warms the bar",
                $"{Whole(lap.Low)} to {Whole(lap.High)} °C",
                $"between runs at most {Say.Temperature(heat.InterpassLimit).In(display)}",
            ]);
        foreach (var s in heat.Softened)
            rows.Add([
                $"Softened, {(s.End == ShaftEnd.Inner ? "inner" : "outer")} piece",
                Range(s.Length, Say.Length, display),
                s.How,
            ]);
        foreach (var p in heat.Places)
            rows.Add([
                $"Can come to, {(p.End == ShaftEnd.Inner ? "inner" : "outer")} {p.Words}",
                Range(p.Comes, Say.Temperature, display),
                $"at most {Say.Temperature(p.Allowed).In(display)}; {Say.Length(p.FromWeld).In(display)} away",
            ]);
        return new("Heat of the weld", ["What", "How much", "Known from"], rows);
    }

    /// <summary>The ways of packing and their mistakes; null when there are none.</summary>
    public static Table? Packing(WeldResult? weld, Display display)
    {
        if (weld?.Packing is not { } plan)
            return null;
        var rows = new List<IReadOnlyList<string>>();
        foreach (var c in plan.Choices)
        {
            rows.Add([NameOf(c.Way), Amount(c, display), ""]);
            rows.AddRange(
                c.Mistakes.Select(m =>
                    (IReadOnlyList<string>)
                        ["", m.Words, "axis " + Say.Fine(m.Off).In(display) + " off"]
                )
            );
        }
        return new("Ways of packing", ["Way", "Right, and the slips", "Leaves"], rows);
    }

    /// <summary>The beads to come; null when there is no plan.</summary>
    public static Table? Beads(BeadPlan? plan, Display display) =>
        plan is null
            ? null
            : new(
                "Order of the beads",
                ["Layer", "Bead", "At", "Way"],
                [
                    .. plan
                        .Tacks.Where(_ => plan.NextLayer == 1)
                        .Concat(plan.All)
                        .Select(b =>
                            (IReadOnlyList<string>)
                                [
                                    b.Layer == 0
                                        ? "tacks"
                                        : b.Layer.ToString(CultureInfo.InvariantCulture),
                                    b.Number.ToString(CultureInfo.InvariantCulture),
                                    Say.Bearing(b.At).In(display),
                                    b.Layer == 0 ? ""
                                    : b.Backwards ? "against the numbering"
                                    : "with the numbering",
                                ]
                        ),
                ]
            );

    /// <summary>A way's name.</summary>
    public static string NameOf(PackingWay way) =>
        way switch
        {
            PackingWay.BothFaces => "Both faces",
            PackingWay.OneFace => "One face",
            PackingWay.UnderBlock => "Under the block",
            _ => "Not decided",
        };

    /// <summary>What is right for a way.</summary>
    public static string Amount(PackingChoice choice, Display display)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var pack = Say.Fine(choice.Pack).In(display);
        return choice.Way switch
        {
            PackingWay.BothFaces => pack + " on each face",
            PackingWay.UnderBlock => pack + " under the whole block",
            _ =>
                $"{pack} on one face, block moved {Say.Fine(choice.BlockAside).In(display)} towards the pack",
        };
    }

    private static string Range(Band band, Func<double, Shown> say, Display display)
    {
        var (low, high) = (say(band.Low).In(display), say(band.High).In(display));
        return low == high ? low : $"{low} to {high}";
    }

    private static string One(double x) => x.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Whole(double x) => x.ToString("0", CultureInfo.InvariantCulture);
}
