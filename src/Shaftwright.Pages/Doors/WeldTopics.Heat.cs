using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

// Heat: steel, arc and preheat; between runs and after.
public static partial class WeldTopics
{
    private static WeldTopic Preheat() =>
        new(
            "preheat",
            "Preheat",
            "Steel, filler and arc to a preheat.",
            [
                Steel("inner", ShaftEnd.Inner),
                Steel("outer", ShaftEnd.Outer),
                new(
                    new("arc", "How is the arc run?", "Then usual heat and hydrogen are taken."),
                    "arc",
                    (_, _) =>
                        [
                            new AskedChoice(
                                "process",
                                "the process",
                                "Process",
                                s_processes,
                                j => Name(j.Weld?.Arc?.Process, ArcProcess.Unknown),
                                (j, t) =>
                                    Arced(
                                        j,
                                        a =>
                                            a with
                                            {
                                                Process =
                                                    t.Length == 0
                                                        ? ArcProcess.Unknown
                                                        : Pick<ArcProcess>(t),
                                            }
                                    )
                            ),
                            new AskedMeasure<Voltage>(
                                "volts",
                                "the voltage",
                                "Arc voltage",
                                ArcFields.Volts,
                                j => j.Weld?.Arc?.Volts,
                                (j, v) => Arced(j, a => a with { Volts = v })
                            ),
                            new AskedMeasure<Current>(
                                "amps",
                                "the current",
                                "Current",
                                ArcFields.Amps,
                                j => j.Weld?.Arc?.Amps,
                                (j, v) => Arced(j, a => a with { Amps = v })
                            ),
                            new AskedMeasure<TravelSpeed>(
                                "speed",
                                "the speed",
                                "Speed along the joint",
                                ArcFields.Speed,
                                j => j.Weld?.Arc?.Speed,
                                (j, v) => Arced(j, a => a with { Speed = v })
                            ),
                            new AskedChoice(
                                "hydrogen",
                                "the hydrogen scale",
                                "Hydrogen of the filler, EN 1011-2",
                                s_hydrogen,
                                j => Name(j.Weld?.Arc?.Hydrogen, HydrogenScale.Unknown),
                                (j, t) =>
                                    Arced(j, a => a with { Hydrogen = Pick<HydrogenScale>(t) })
                            ),
                        ]
                ),
                new(
                    new(
                        "chosen",
                        "What will you heat to, and over what length?",
                        "Then the band above stands, over 100 mm of bar."
                    ),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "preheat",
                                "the preheat",
                                "Preheat",
                                HeatFields.Preheat,
                                j => j.Weld?.Heat?.Preheat,
                                (j, v) => Heated(j, h => h with { Preheat = v })
                            ),
                            new AskedMeasure<Distance>(
                                "heated",
                                "the heated length",
                                "Length of bar heated in all",
                                HeatFields.HeatedLength,
                                j => j.Weld?.Heat?.HeatedLength,
                                (j, v) => Heated(j, h => h with { HeatedLength = v })
                            ),
                        ]
                ),
            ],
            r =>
                r.Weld?.Heat is { } heat
                    ? new(
                        $"Preheat to at least",
                        $"{Say.Temperature(heat.Preheat.Low)}",
                        $"and at most {Say.Temperature(heat.Preheat.High)}{WeldAnswers.Formula(heat)}",
                        heat.Preheat.Low
                    )
                    : null,
            r => r.Weld?.Heat?.PreheatFindings ?? []
        );

    private static WeldScreen Steel(string key, ShaftEnd end)
    {
        WeldSteel? Of(Job j) => end == ShaftEnd.Inner ? j.Weld?.InnerSteel : j.Weld?.OuterSteel;
        Job With(Job j, Func<WeldSteel, WeldSteel> f) =>
            end == ShaftEnd.Inner
                ? Welded(j, w => w with { InnerSteel = f(w.InnerSteel ?? new()) })
                : Welded(j, w => w with { OuterSteel = f(w.OuterSteel ?? new()) });
        AskedMeasure<Content> Element(
            string part,
            string label,
            Field<Content> field,
            Func<WeldSteel, Measured<Content>?> get,
            Func<WeldSteel, Measured<Content>?, WeldSteel> set
        ) =>
            new(
                $"{key}/{part}",
                $"the {key} piece's {part}",
                label,
                field,
                j => Of(j) is { } s ? get(s) : null,
                (j, v) => With(j, s => set(s, v))
            );
        return new(
            new(
                key + "-steel",
                $"What is the {key} piece made of?",
                "Then the most demanding steel it can be counts."
            ),
            "steel",
            (_, _) =>
                [
                    new AskedChoice(
                        $"{key}/family",
                        $"the {key} piece's steel",
                        "Family",
                        s_families,
                        j => Name(Of(j)?.Family, SteelFamily.Unknown),
                        (j, t) => With(j, s => s with { Family = Pick<SteelFamily>(t) })
                    ),
                    Element(
                        "carbon",
                        "Carbon, if it was analysed",
                        WeldSteelFields.Carbon,
                        s => s.Carbon,
                        (s, v) => s with { Carbon = v }
                    ),
                    Element(
                        "manganese",
                        "Manganese",
                        WeldSteelFields.Manganese,
                        s => s.Manganese,
                        (s, v) => s with { Manganese = v }
                    ),
                    Element(
                        "chromium",
                        "Chromium",
                        WeldSteelFields.Chromium,
                        s => s.Chromium,
                        (s, v) => s with { Chromium = v }
                    ),
                    Element(
                        "molybdenum",
                        "Molybdenum",
                        WeldSteelFields.Molybdenum,
                        s => s.Molybdenum,
                        (s, v) => s with { Molybdenum = v }
                    ),
                    Element(
                        "nickel",
                        "Nickel",
                        WeldSteelFields.Nickel,
                        s => s.Nickel,
                        (s, v) => s with { Nickel = v }
                    ),
                    Element(
                        "silicon",
                        "Silicon",
                        WeldSteelFields.Silicon,
                        s => s.Silicon,
                        (s, v) => s with { Silicon = v }
                    ),
                    Element(
                        "copper",
                        "Copper",
                        WeldSteelFields.Copper,
                        s => s.Copper,
                        (s, v) => s with { Copper = v }
                    ),
                    Element(
                        "vanadium",
                        "Vanadium",
                        WeldSteelFields.Vanadium,
                        s => s.Vanadium,
                        (s, v) => s with { Vanadium = v }
                    ),
                ]
        );
    }

    private static WeldTopic Temper() =>
        new(
            "temper",
            "Between runs and after",
            "How hot it got, and how it is tempered.",
            [
                new(
                    new("interpass", "How hot did it get between runs?"),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "interpass",
                                "the highest between runs",
                                "Highest temperature read between runs",
                                HeatFields.Interpass,
                                j => j.Weld?.Heat?.Interpass,
                                (j, v) => Heated(j, h => h with { Interpass = v })
                            ),
                        ]
                ),
                new(
                    new(
                        "temper",
                        "How will it be tempered?",
                        "Then the band above stands, for an hour or more."
                    ),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "temper",
                                "the temper",
                                "Tempering temperature",
                                HeatFields.Temper,
                                j => j.Weld?.Heat?.Temper,
                                (j, v) => Heated(j, h => h with { Temper = v })
                            ),
                            new AskedMeasure<Duration>(
                                "time",
                                "the time",
                                "Time at it",
                                HeatFields.TemperTime,
                                j => j.Weld?.Heat?.TemperTime,
                                (j, v) => Heated(j, h => h with { TemperTime = v })
                            ),
                            new AskedMeasure<Temperature>(
                                "inner/tempered",
                                "what the inner piece was tempered at",
                                "The inner piece was tempered by its maker at",
                                WeldSteelFields.TemperedAt,
                                j => j.Weld?.InnerSteel?.TemperedAt,
                                (j, v) =>
                                    Welded(
                                        j,
                                        w =>
                                            w with
                                            {
                                                InnerSteel = (w.InnerSteel ?? new()) with
                                                {
                                                    TemperedAt = v,
                                                },
                                            }
                                    )
                            ),
                            new AskedMeasure<Temperature>(
                                "outer/tempered",
                                "what the outer piece was tempered at",
                                "The outer piece was tempered by its maker at",
                                WeldSteelFields.TemperedAt,
                                j => j.Weld?.OuterSteel?.TemperedAt,
                                (j, v) =>
                                    Welded(
                                        j,
                                        w =>
                                            w with
                                            {
                                                OuterSteel = (w.OuterSteel ?? new()) with
                                                {
                                                    TemperedAt = v,
                                                },
                                            }
                                    )
                            ),
                        ]
                ),
            ],
            r =>
                r.Weld?.Heat is { } heat
                    ? new(
                        $"Temper at",
                        $"{Say.Temperature(heat.Temper.Low)}",
                        $"to {Say.Temperature(heat.Temper.High)} for {Say.Time(heat.TemperTime)}, before it is pressed.",
                        heat.Temper.Low
                    )
                    : null,
            r => r.Weld?.Heat?.TemperFindings ?? []
        );
}
