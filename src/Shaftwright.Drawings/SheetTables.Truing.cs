using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Drawings;

public static partial class SheetTables
{
    /// <summary>Every turn under the dial, in the order taken.</summary>
    public static Table? Turns(TruingResult? truing, Display display)
    {
        if (truing is not { Turns.Count: > 0 })
            return null;
        return new(
            "Turns under the dial",
            [
                "Moment",
                "Station",
                "Run-out",
                "Limit",
                "Verdict",
                "Axis off",
                "High at",
                "Oval, lobes",
            ],
            [
                .. truing.Turns.Select(t =>
                    (IReadOnlyList<string>)
                        [
                            Moment(t.Moment, t.Layer, t.AfterStroke),
                            t.Station is { } s ? Say.Length(s).In(display) : "not noted",
                            t.RunOut is { } r
                                ? $"{Say.Fine(r).In(display)} ± {Say.Fine(t.RunOutUncertainty).In(display)}"
                                : "not known",
                            Say.Fine(t.Limit).In(display),
                            Verdict(t.Verdict),
                            t.Offset is { } e ? Say.Fine(e).In(display) : "not known",
                            t.HighPoint is { } h ? Say.Bearing(h).In(display) : "no one side",
                            t.Form > 0 ? Say.Fine(t.Form).In(display) : "none told",
                        ]
                ),
            ]
        );
    }

    /// <summary>The bow along the shaft as last read, about every line that is known.</summary>
    public static Table? Shapes(TruingResult? truing, Display display)
    {
        if (truing?.Shape is not { } shape)
            return null;
        return new(
            "Run-out of the bow, about each line",
            ["About", "From", "To", "Run-out", "At", "High at", "Could be"],
            [
                .. shape.Lines.Select(l =>
                    (IReadOnlyList<string>)
                        [
                            l.Line switch
                            {
                                TurningLine.AsRead => "the supports last read on",
                                TurningLine.Ends => "centres in the ends",
                                _ => "the joint centres",
                            },
                            Say.Length(l.From).In(display),
                            Say.Length(l.To).In(display),
                            Say.Fine(l.RunOut).In(display),
                            Say.Length(l.At).In(display),
                            l.RunOut > 0 ? Say.Bearing(l.HighPoint).In(display) : "no one side",
                            $"{Say.Fine(l.Low).In(display)} to {Say.Fine(l.High).In(display)}",
                        ]
                ),
            ]
        );
    }

    /// <summary>A moment of the making in words.</summary>
    internal static string Moment(Moment moment, int? layer, int? stroke)
    {
        var words = moment switch
        {
            Truing.Moment.BeforeWelding => "before welding",
            Truing.Moment.Tacked => "tacked",
            Truing.Moment.ButtWelded => "butt welded",
            Truing.Moment.Sleeved => "sleeved",
            _ => "after the first run",
        };
        if (layer is { } l)
            words += ", layer " + l.ToString(CultureInfo.InvariantCulture);
        return stroke is { } n
            ? words + ", stroke " + n.ToString(CultureInfo.InvariantCulture)
            : words;
    }

    private static string Verdict(RunOutVerdict verdict) =>
        verdict switch
        {
            RunOutVerdict.Inside => "inside",
            RunOutVerdict.TooCloseToCall => "too close to call",
            RunOutVerdict.ReadAgain => "read again",
            RunOutVerdict.Over => "over",
            _ => "not known",
        };
}
