using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>The bow in space as one would say it aloud.</summary>
internal static class ShapeWords
{
    public static Sentence Of(ShaftShape shape)
    {
        var bend = shape.Likeliest;
        if (bend.Kind == BendKind.Straight)
            return $"Straight as far as {Stations(shape)} can tell.{Elsewhere(shape)}";
        Sentence what = shape.Told
            ? Named(bend, shape)
            : (Sentence)$"{Stations(shape, capital: true)} cannot tell {Which(shape)}.";
        Sentence where = shape.HighPoint is { } high
            ? $" It stands out towards {Say.Bearing(high)} from your mark."
            : (Sentence)$"";
        return $"{what}{where}{Elsewhere(shape)}";
    }

    /// <summary>A bend's name in a few words.</summary>
    public static string Name(BendKind kind) =>
        kind switch
        {
            BendKind.Kink => "a kink at the weld",
            BendKind.Sweep => "a sweep along the whole shaft",
            BendKind.SetOff => "a set-off at the weld",
            BendKind.KinkAndSweep => "a kink at the weld and a sweep",
            BendKind.KinkAndSetOff => "a kink and a set-off at the weld",
            _ => "no bend",
        };

    private static Sentence Named(Bend bend, ShaftShape shape)
    {
        Sentence kink = $"a kink at the weld of {Say.Fine(1000 * bend.Kink.Size)} in a metre";
        Sentence sweep = $"a sweep of {Say.Fine(Sag(bend, shape))} along the shaft";
        Sentence setOff =
            $"a set-off at the weld of {Say.Fine(bend.SetOff.Size)}, which no press takes out";
        return bend.Kind switch
        {
            BendKind.Kink => $"It is {kink}.",
            BendKind.Sweep when double.IsNaN(bend.WeldAt) =>
                $"It bends by {Say.Fine(Sag(bend, shape))} along the shaft if it is one even sweep; where the weld is has not been noted.",
            BendKind.Sweep => $"It is {sweep}, no kink at the weld.",
            BendKind.SetOff => $"It is {setOff}.",
            BendKind.KinkAndSweep => $"It is {kink} and {sweep}.",
            _ => (Sentence)$"It is {kink} and {setOff}.",
        };
    }

    /// <summary>Sag of the sweep over the shaft's length, or as far as was read, mm.</summary>
    private static double Sag(Bend bend, ShaftShape shape)
    {
        var length =
            shape.Overall
            ?? shape.Stations.Max(s => Math.Max(s.Station, s.SecondSupport))
                - shape.Stations.Min(s => Math.Min(s.Station, s.FirstSupport));
        return bend.Sweep.Size * length * length / 8;
    }

    private static string Which(ShaftShape shape) =>
        string.Join(" from ", shape.Possible.Select(b => Name(b.Kind)));

    private static string Stations(ShaftShape shape, bool capital = false)
    {
        var n = shape.Stations.Count;
        if (n == 1)
            return capital ? "One station" : "one station";
        return (capital ? "These " : "these ")
            + n.ToString(System.Globalization.CultureInfo.InvariantCulture)
            + " stations";
    }

    private static Sentence Elsewhere(ShaftShape shape)
    {
        var car = shape.Lines.FirstOrDefault(l => l.Line == TurningLine.JointCentres);
        var ends = shape.Lines.FirstOrDefault(l => l.Line == TurningLine.Ends);
        return (car ?? ends) is { } line
            ? $" {(line.Line == TurningLine.JointCentres ? "On the car, about the joint centres," : "Between centres in its ends")} it would run out {Band(line)}, most at {Say.Length(line.At)} from the inner end."
            : (Sentence)$"";
    }

    private static Sentence Band(LineRunOut line) =>
        line.Low <= 0
            ? $"up to {Say.Fine(line.High)}"
            : (Sentence)
                $"{Say.Fine(line.RunOut)} (from {Say.Fine(line.Low)} to {Say.Fine(line.High)})";
}
