using System.Text.Json.Nodes;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>The way up from older formats, shown with steps made up for the test: none is shipped yet.</summary>
public sealed class FormatHistoryTests
{
    /// <summary>Format −1 called the name "title"; format 0 kept the trial shaft's length at the top.</summary>
    private static readonly FormatHistory s_madeUp = new(
        JobJson.Format,
        [
            new(
                -1,
                d =>
                {
                    d["name"] = d["title"]?.DeepClone();
                    d.Remove("title");
                    return d;
                }
            ),
            new(
                0,
                d =>
                {
                    d["corner"] = new JsonObject { ["trialLength"] = d["trial"]?.DeepClone() };
                    d.Remove("trial");
                    return d;
                }
            ),
        ]
    );

    [Fact]
    public void Read_AnOlderFormat_ComesUpStepByStep()
    {
        var oldest = JobJson.Read("""{"format":-1,"title":"old","trial":"431 ± 1 mm"}""", s_madeUp);
        Assert.Empty(oldest.Refusals);
        Assert.Equal("old", oldest.Document!.Job.Name);
        Assert.Equal("431 ± 1 mm", oldest.Document.Job.Corner!.TrialLength!.Typed);
        var older = JobJson.Read("""{"format":0,"name":"old","trial":431}""", s_madeUp);
        Assert.Equal("431", older.Document!.Job.Corner!.TrialLength!.Typed);
        Assert.Contains("\"format\": 1,", JobJson.Write(older.Document), StringComparison.Ordinal);
    }

    [Fact]
    public void Bring_AnOlderDocument_LeavesItAsItWas()
    {
        var document = JsonNode.Parse("""{"format":0,"name":"old","trial":431}""")!.AsObject();
        var before = document.ToJsonString();
        var lifted = s_madeUp.Bring(document, out var refusal);
        Assert.Null(refusal);
        Assert.Equal(1, (int)lifted!["format"]!);
        Assert.Equal(before, document.ToJsonString());
    }

    [Theory]
    [InlineData(-2, "older", "-1 to 1")]
    [InlineData(2, "newer", "-1 to 1")]
    public void Bring_AFormatOutOfReach_IsRefusedWithWhatIsRead(
        int format,
        string problem,
        string accepted
    )
    {
        Assert.Null(s_madeUp.Bring(new JsonObject { ["format"] = format }, out var refusal));
        Assert.Contains(problem, refusal!.Problem, StringComparison.Ordinal);
        Assert.Equal(accepted, refusal.Accepted);
    }

    [Fact]
    public void History_WithAGap_IsAProgrammersMistake() =>
        Assert.Throws<ArgumentException>(() =>
            new FormatHistory(3, [new(0, d => d), new(2, d => d)])
        );

    [Fact]
    public void Shipped_Format1_IsTheFirst()
    {
        Assert.Equal(JobJson.Format, FormatHistory.Shipped.Current);
        Assert.Equal(1, FormatHistory.Shipped.Oldest);
    }
}
