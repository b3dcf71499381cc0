using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>The files in examples/, which the demo serves and the README quotes.</summary>
public sealed class ExampleFilesTests
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "examples");

    public static TheoryData<string> Files() =>
        new(Directory.GetFiles(Folder, "*.swjob.json").Select(f => Path.GetFileName(f)!));

    [Theory]
    [MemberData(nameof(Files))]
    public void Example_IsReadIsValidAndIsWrittenBackByteForByte(string file)
    {
        var text = File.ReadAllText(Path.Combine(Folder, file));
        var reading = JobJson.Read(text);
        Assert.Empty(reading.Refusals);
        Assert.Equal(text, JobJson.Write(reading.Document!));
        Assert.True(SchemaTests.Valid(text));
    }
}
