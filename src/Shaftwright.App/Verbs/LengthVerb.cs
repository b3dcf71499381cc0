using Shaftwright.Corner;
using Shaftwright.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>length</c>: the length to make, its window, and what is left at each reading.</summary>
internal static class LengthVerb
{
    /// <summary>What the verb does.</summary>
    public const string Description =
        "How long the shaft is made, from the readings or the linkage of the car.";

    /// <summary>The verb, with the length judged on many cars where that is asked for.</summary>
    /// <param name="cars">How many; 0 for none.</param>
    /// <param name="seed">Seed of the run.</param>
    /// <param name="cancel">Stops it.</param>
    public static StageVerb With(long cars, ulong seed, CancellationToken cancel)
    {
        if (cars == 0)
            return Verb;
        // Asked for twice, run once.
        LengthSpread? known = null;
        LengthSpread? Spread(JobResult r)
        {
            if (known is null && r.CarsDrawn(seed) is { } drawn)
                known = drawn.Answer(CarsRun.Run(drawn, 0, cars, cancel));
            return known;
        }
        return Verb with
        {
            Show = (r, display, text) =>
            {
                Show(r, display, text);
                if (Spread(r) is { } spread)
                    Show(spread, display, text);
            },
            Write = (r, json, writer) =>
            {
                Verb.Write(r, json, writer);
                json.Write(writer, "spread", Spread(r));
            },
        };
    }

    /// <summary>The verb itself.</summary>
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "length",
            Description = Description,
            Lacks = r =>
                r.Job.Corner is not { Readings.Count: > 0 } and not { Linkage: not null }
                    ? "it holds no readings of a corner (\"corner.readings\") and no linkage (\"corner.linkage\")."
                    : null,
            Answer = StageAnswers.Length,
            NoAnswer = "No length yet.",
            Show = Show,
            Findings = r =>
                [
                    .. r.Corner?.Findings ?? [],
                    .. r.Joints?.Findings ?? [],
                    .. r.Length?.Findings ?? [],
                ],
            Write = (r, json, writer) => json.Write(writer, "result", r.Length),
        };

    private static void Show(JobResult result, Display display, TextWriter text)
    {
        var length = result.Length!;
        var rows = new List<IReadOnlyList<string>>();
        void End(string name, WindowEnd? end)
        {
            if (end is not null)
                rows.Add([
                    name,
                    Say.Length(end.Length).In(display),
                    "± " + Say.Length(2 * end.StandardUncertainty).In(display),
                    end.Place is { } place
                        ? $"{Does(end.Forbids)} {PositionWords.At(end.Travel, place).In(display)}"
                        : $"{Does(end.Forbids)} at {Words.Travel(end.Travel, display)}, {Words.NameOf(end.Steering)}",
                ]);
        }
        End("Shortest", length.Shortest);
        End("Longest", length.Longest);
        PlainText.Table(text, rows);
        PlainText.Table(
            text,
            [
                .. length.Choices.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            NameOf(c.Aim),
                            Say.Length(c.Length).In(display),
                            "± " + Say.Length(2 * c.StandardUncertainty).In(display),
                            c.Works
                                ? $"passes a limit: {Say.Chance(c.ChanceOfViolation).In(display)}"
                                : "outside the window",
                        ]
                ),
            ]
        );
        if (length.Make is not null && length.HasWindow)
        {
            text.WriteLine();
            text.WriteLine(
                PlainText.Spaced(
                    $"Chance of passing a limit with its margin: {Say.Chance(length.ChanceOfViolation).In(display)}; of reaching a stop: {Say.Chance(length.ChanceOfContact).In(display)}."
                )
            );
        }
        if (length.MeasureAgain is { } again)
            text.WriteLine(
                PlainText.Spaced($"Worth measuring again first: {again.Words.In(display)}.")
            );

        if (length.Sweep.Count > 0)
        {
            Sweep(length, display, text);
            return;
        }
        var read = length.Positions.Where(p => p.Read).ToList();
        if (read.Count == 0)
            return;
        var loads = JointColumns.Of(length);
        List<IReadOnlyList<string>> table =
        [
            [
                "Travel",
                "Steering",
                "Left in",
                "Left out",
                "Inner angle",
                .. loads.Select(c => c.Head),
            ],
        ];
        table.AddRange(
            read.Select(p =>
                (IReadOnlyList<string>)
                    [
                        Words.Travel(p.Travel, display),
                        Words.NameOf(p.Steering),
                        Say.Length(p.LeftIn).In(display),
                        Say.Length(p.LeftOut).In(display),
                        p.InnerAngle is { } a ? Say.Angle(a).In(display) : "not read",
                        .. loads.Select(c => c.Cell(p, display)),
                    ]
            )
        );
        PlainText.Table(text, table);
    }

    private static void Sweep(LengthResult length, Display display, TextWriter text)
    {
        string Long(double? mm) => mm is { } v ? Say.Length(v).In(display) : "";
        string Turned(double? rad) => rad is { } v ? Say.Angle(v).In(display) : "";
        List<IReadOnlyList<string>> table =
        [
            ["Travel", "Rack", "Power unit", "Distance", "Plunge", "Inner angle", "Outer angle"],
        ];
        table.AddRange(
            length.Sweep.Select(p =>
                (IReadOnlyList<string>)
                    [
                        Words.Travel(p.Travel, display),
                        Long(p.Rack),
                        Words.NameOf(p.PowerUnit),
                        p.Reached ? Long(p.Distance) : "not reached",
                        Long(p.Plunge),
                        Turned(p.InnerAngle),
                        Turned(p.OuterAngle),
                    ]
            )
        );
        PlainText.Table(text, table);
    }

    private static string Does(Forbids forbids) =>
        forbids switch
        {
            Forbids.JointBottoms => "bottoms",
            Forbids.JointPullsOut => "pulls out",
            Forbids.OuterAngle => "passes its outer angle",
            _ => "passes its inner angle",
        };

    private static string NameOf(Aim aim) =>
        aim switch
        {
            Aim.Centred => "Centred at ride height",
            Aim.EquallySure => "Ends equally sure",
            Aim.MostLikely => "Most likely to survive",
            _ => "Balanced",
        };

    private static void Show(LengthSpread spread, Display display, TextWriter text)
    {
        text.WriteLine();
        text.WriteLine(PlainText.Spaced(StageAnswers.Spread(spread).In(display)));
        if (spread.Disagreement is { } differs)
            text.WriteLine(PlainText.Spaced(differs.In(display)));
        List<IReadOnlyList<string>> table =
        [
            ["Measure", "Share of the doubt", "First order", "Passes a limit if twice as good"],
        ];
        table.AddRange(
            spread
                .Shares.Where(s => s.ShareOfVariance >= 0.01 || s.ChanceIfTwiceAsGood is not null)
                .Take(10)
                .Select(s =>
                    (IReadOnlyList<string>)
                        [
                            s.Words.In(display),
                            Say.Share(s.ShareOfVariance).In(display),
                            Say.Share(s.FirstOrderShare).In(display),
                            s.ChanceIfTwiceAsGood is { } p ? Say.Chance(p).In(display) : "",
                        ]
                )
        );
        PlainText.Table(text, table);
    }
}
