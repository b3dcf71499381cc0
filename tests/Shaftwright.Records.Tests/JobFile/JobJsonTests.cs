using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.Corner;
using Shaftwright.JobFile;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Records.Tests.JobFile;

public sealed class JobJsonTests
{
    [Fact]
    public void Read_AJob_KeepsEveryMeasureAsTyped()
    {
        var reading = JobJson.Read(ExampleJob.Text);

        Assert.Empty(reading.Refusals);
        var job = reading.Document!.Job;
        Assert.Equal("Trials machine, left rear", job.Name);
        Assert.Equal(Side.Left, job.Side);
        Assert.Equal("118 lbf·ft", job.Car!.EngineTorque!.Typed);
        Assert.Equal(1, job.Corner!.TrialLength!.PlusMinus);
        Assert.Equal(27.5, job.Corner.Readings[0].Out!.Value);
        Assert.Equal("-80", job.Corner.Readings[0].Travel!.Typed);
        Assert.Equal(9.525, job.Corner.Readings[1].In!.Value);
        Assert.Equal("24.0", job.Corner.Readings[1].Out!.Typed);
        Assert.Equal(Steering.Straight, job.Corner.Readings[1].Steering);
        Assert.True(job.Corner.Conditions.SpringOut);
        Assert.False(job.Corner.Conditions.DriverIn);
        Assert.Null(job.Corner.Conditions.ClipFelt);
        Assert.Equal(JointKind.PlungingTripod, job.Joints!.Inner!.Kind);
        Assert.Equal(3, job.Weld!.Blades.Count);
    }

    [Fact]
    public void Read_SignOffs_TheLastOneOfAnOperationCounts()
    {
        var records = ExampleJob.Document().Records;

        Assert.Equal(2, records.SignOffs.Count);
        Assert.Null(records.Standing("measure-corner"));
        Assert.Equal(TimeSpan.FromHours(2), records.SignOffs[1].At.Offset);
        var again = records with
        {
            SignOffs =
            [
                .. records.SignOffs,
                new("s3", "measure-corner", default, "Ines", "measured again"),
            ],
        };
        Assert.Equal("s3", again.Standing("measure-corner")!.Id);
        Assert.Null(again.Standing("cut"));
    }

    [Fact]
    public void Write_AWrittenFile_IsTheSameBytesAgain() =>
        Assert.Equal(ExampleJob.Text, JobJson.Write(ExampleJob.Document()));

    [Fact]
    public void Write_AnyJobThatIsRead_IsByteStableAndLosesNothing() =>
        RandomJob.Gen.Sample(
            json =>
            {
                var first = JobJson.Read(json);
                Assert.Empty(first.Refusals);
                var written = JobJson.Write(first.Document!);
                var second = JobJson.Read(written);
                Assert.Empty(second.Refusals);
                Assert.Equal(written, JobJson.Write(second.Document!));
                Assert.Empty(
                    Leaves(JsonNode.Parse(json)!).Except(Leaves(JsonNode.Parse(written)!))
                );
            },
            iter: 300
        );

    [Fact]
    public void WriteObject_AndText_AreTheSameDocument()
    {
        var node = JobJson.WriteObject(ExampleJob.Document());
        Assert.True(JsonNode.DeepEquals(ExampleJob.Object(), node));
        Assert.Equal(ExampleJob.Text, JobJson.Write(JobJson.Read(node).Document!));
    }

    [Fact]
    public void Read_APartThatIsThereButEmpty_IsNotAMissingPart()
    {
        var text = """{"format":1,"length":{}}""";
        var read = JobJson.Read(text).Document!;
        Assert.NotNull(read.Job.Length);
        Assert.NotNull(JobJson.Read(JobJson.Write(read)).Document!.Job.Length);
    }

    [Fact]
    public void Read_ANumberWithAnExponent_IsThePlainNumber()
    {
        var read = JobJson.Read("""{"format":1,"corner":{"trialLength":4.31e2}}""").Document!;
        Assert.Equal("431", read.Job.Corner!.TrialLength!.Typed);
    }

    [Fact]
    public void Read_AByteOrderMark_SaysNothing() =>
        Assert.NotNull(JobJson.Read("\uFEFF" + ExampleJob.Text).Document);

    /// <summary>A stage that gains an input must gain its line in JobShape, or the file would drop it.</summary>
    [Fact]
    public void Job_EveryInputOfEveryStage_HasItsPlaceInTheFile()
    {
        using var schema = JsonDocument.Parse(JobJson.Schema());
        var missing = new List<string>();
        Compare(typeof(Job), schema.RootElement, "", []);
        Assert.True(missing.Count == 0, "No line in JobShape for: " + string.Join(", ", missing));

        void Compare(Type type, JsonElement shape, string path, HashSet<Type> above)
        {
            if (!above.Add(type))
                return;
            foreach (
                var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                    .Where(p => p.SetMethod is not null)
            )
            {
                var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
                if (!shape.GetProperty("properties").TryGetProperty(name, out var member))
                {
                    missing.Add(path + name);
                    continue;
                }
                var inner = property.PropertyType;
                if (
                    inner.IsGenericType
                    && inner.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)
                )
                {
                    inner = inner.GenericTypeArguments[0];
                    member = member.GetProperty("items");
                }
                if (member.TryGetProperty("$ref", out var reference))
                    Compare(
                        inner,
                        schema
                            .RootElement.GetProperty("$defs")
                            .GetProperty(reference.GetString()!.Split('/')[^1]),
                        path + name + ".",
                        [.. above]
                    );
            }
        }
    }

    /// <summary>Every value of a document with its path, as text, "don't know" words and empty lists left out.</summary>
    private static SortedSet<string> Leaves(JsonNode node)
    {
        var found = new SortedSet<string>(StringComparer.Ordinal);
        Walk(node);
        return found;

        void Walk(JsonNode at)
        {
            foreach (
                var child in at is JsonObject o
                    ? o.Select(p => p.Value!)
                    : at.AsArray().Select(c => c!)
            )
            {
                if (child is JsonValue value)
                {
                    if (!RandomJob.IsSilent(value))
                        found.Add(value.GetPath() + " " + value);
                }
                else
                    Walk(child);
            }
        }
    }
}
