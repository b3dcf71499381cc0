using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

// The sample.
public static partial class WeldTopics
{
    private static WeldTopic Sample() =>
        new(
            "sample",
            "The sample",
            "A sample cut and etched, to what the weld is worth.",
            [
                new(
                    new("alike", "Is it the shaft in small?"),
                    "sample",
                    (_, _) =>
                        [
                            AskedChoice.YesNo(
                                "steel",
                                "the sample's steel",
                                "Made of offcuts of both donors?",
                                j => j.Strength?.Sample?.SameSteel,
                                (j, v) => Sampled(j, s => s with { SameSteel = v })
                            ),
                            AskedChoice.YesNo(
                                "setup",
                                "the sample's set-up",
                                "Ground, heated and welded as the shaft will be?",
                                j => j.Strength?.Sample?.SameSetUp,
                                (j, v) => Sampled(j, s => s with { SameSetUp = v })
                            ),
                            AskedChoice.YesNo(
                                "cracked",
                                "a crack in it",
                                "Any crack on the etched face?",
                                j => j.Strength?.Sample?.Cracked,
                                (j, v) => Sampled(j, s => s with { Cracked = v })
                            ),
                            new AskedDay(),
                            new AskedPhoto(
                                "photo",
                                "the sample's etched face",
                                "The etched face, photographed",
                                j => j.Strength?.Sample?.Photo ?? "",
                                (j, t) => Sampled(j, s => s with { Photo = t })
                            ),
                        ]
                ),
                new(
                    new(
                        "fusion",
                        "How deep is it fused, round the section?",
                        "Then the low guess counts for the shaft."
                    ),
                    "etched",
                    (_, _) => WeldLists.Fusion
                ),
                new(
                    new(
                        "hardness",
                        "How hard is it, across the weld?",
                        "Then the metal by the weld is taken as soft as normalised stock."
                    ),
                    "row",
                    (job, draft) => WeldLists.Row(job, draft)
                ),
            ],
            r =>
                r.Job.Strength?.Sample is not { } sample ? null
                : sample.Cracked == true
                    ? new($"The sample cracked: do not weld the shaft this way.", null, null)
                : SampleReadings.Of(sample) is { Fusion: { } depth }
                    ? new(
                        $"Fused at least",
                        $"{Say.Length(depth.Low)}",
                        $"deep, and that counts.",
                        depth.Low
                    )
                : new(WeldAnswers.Sample(r)!, null, null),
            r =>
                (r.Strength?.Findings ?? []).Where(f =>
                    f.Code.StartsWith("sample-", StringComparison.Ordinal)
                )
        );
}
