using Shaftwright.JobFile;

namespace Shaftwright.Bench;

internal static class Demo
{
    public static Job Job { get; } =
        JobJson
            .Read(
                File.ReadAllText(
                    Path.Combine(
                        AppContext.BaseDirectory,
                        "examples",
                        "grass-track-left-rear.swjob.json"
                    )
                )
            )
            .Document!.Job;
}
