using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Drawings;

/// <summary>The tables that the sheet and the command line share.</summary>
public static partial class SheetTables
{
    /// <summary>Every section judged, with the donor's yardstick beside its margin.</summary>
    public static Table? Margins(StrengthResult? strength, Display display)
    {
        if (strength is not { Sections.Count: > 0 })
            return null;
        return new(
            "Margins: yield torque ÷ torque in the shaft, and new torque ÷ what the donor was made for",
            ["Place", "At", "Diameter", "Shear yield", "Yields at", "Margin", "New ÷ donor"],
            [
                .. strength.Sections.Select(s =>
                    (IReadOnlyList<string>)
                        [
                            s.Words
                                + s.End switch
                                {
                                    ShaftEnd.Inner => ", inner piece",
                                    ShaftEnd.Outer => ", outer piece",
                                    _ => "",
                                }
                                + (s.Softened ? " (softened)" : "")
                                + (s == strength.Weakest ? " (weakest)" : ""),
                            Say.Length(s.At).In(display),
                            Say.Length(s.Diameter).In(display),
                            Range(s.ShearYield, Say.Stress, display),
                            Range(s.YieldTorque, Say.Torque, display),
                            s.Margin is { } m ? Range(m, Say.Factor, display) : "not known",
                            s.NewOverDonor is { } d ? Range(d, Say.Factor, display) : "not known",
                        ]
                ),
            ]
        );
    }

    /// <summary>Every crack test that stands, and what each mark means.</summary>
    public static Table? CrackTests(Job job, CrackTestResult? tests, Display display)
    {
        if (tests is null || tests.Runs.Count + tests.Marks.Count == 0)
            return null;
        var standing = Entries.Standing(job.CrackTest?.Tests ?? []);
        return new(
            "Crack tests",
            ["Looked at", "Where", "What was found"],
            [
                .. tests.Runs.Select(
                    (run, i) =>
                        (IReadOnlyList<string>)
                            [
                                run.LookedAt is { } at
                                    ? at.ToString(
                                        "d MMM yyyy, HH:mm zzz",
                                        CultureInfo.InvariantCulture
                                    )
                                    : "",
                                string.Join(
                                    ", ",
                                    TestConditions.Of(standing[i]).Places.Select(PlaceWords.At)
                                ),
                                run.Words.In(display),
                            ]
                ),
                .. tests.Marks.Select(m =>
                    (IReadOnlyList<string>)
                        [
                            "",
                            PlaceWords.At(m.Place),
                            (m.Stops ? "Stops the job. " : "") + m.Words.In(display),
                        ]
                ),
            ]
        );
    }

    /// <summary>How many rules at the cut are shown; the others hold with more room.</summary>
    private const int TightestRules = 8;

    /// <summary>The rules at the cut: those that fail, then the tightest.</summary>
    public static Table? CutRules(CutResult? cut, Display display)
    {
        if (cut is not { Checks.Count: > 0 })
            return null;
        var ordered = cut.Tightest();
        var shown = ordered.TakeWhile((c, i) => i < TightestRules || !c.Holds).ToList();
        List<IReadOnlyList<string>> rows =
        [
            .. shown.Select(c =>
                (IReadOnlyList<string>)
                    [
                        c.Rule,
                        c.End == ShaftEnd.Inner ? "inner" : "outer",
                        Say.Length(c.Has).In(display),
                        Say.Length(c.Needs).In(display),
                        c.Holds ? "holds"
                        : c.Heavy ? "FAILS"
                        : "a cost",
                    ]
            ),
        ];
        if (ordered.Count > shown.Count)
            rows.Add([
                (ordered.Count - shown.Count).ToString(
                    System.Globalization.CultureInfo.InvariantCulture
                ) + " more rules hold with more room",
                "",
                "",
                "",
                "",
            ]);
        return new(
            "Rules at the cut, the tightest first",
            ["Rule", "Piece", "Has", "Needs", "Verdict"],
            rows
        );
    }

    /// <summary>What was read at the corner, as it was typed.</summary>
    public static Table? Readings(Job job)
    {
        if (job.Corner is not { Readings.Count: > 0 } corner)
            return null;
        var trial = corner.TrialLength is { } t ? $", trial shaft {t.Typed}" : "";
        return new(
            "Readings at the corner as typed" + trial,
            ["Travel", "Steering", "In", "Out", "Distance", "Inner angle", "Outer angle"],
            [
                .. corner.Readings.Select(r =>
                    (IReadOnlyList<string>)
                        [
                            r.Travel?.Typed ?? "",
                            PlungeDrawing.NameOf(r.Steering).ToLowerInvariant(),
                            r.In?.Typed ?? "",
                            r.Out?.Typed ?? "",
                            r.Distance?.Typed ?? "",
                            r.InnerAngle?.Typed ?? "",
                            r.OuterAngle?.Typed ?? "",
                        ]
                ),
            ]
        );
    }

    /// <summary>A range in words; one number when both ends read alike.</summary>
    private static string Range(Band band, Func<double, Shown> say, Display display)
    {
        var (low, high) = (say(band.Low).In(display), say(band.High).In(display));
        if (low == high)
            return low;
        // "391 to 586 N·m": one unit serves both.
        var unit = high.LastIndexOf('\u00a0');
        return unit > 0 && low.EndsWith(high[unit..], StringComparison.Ordinal)
            ? $"{low[..^(high.Length - unit)]} to {high}"
            : $"{low} to {high}";
    }
}
