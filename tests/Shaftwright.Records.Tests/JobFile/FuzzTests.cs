using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>Files as they come in: cut short, mangled, edited by hand at midnight. Reading answers, it never throws.</summary>
public sealed class FuzzTests
{
    private static readonly string[] s_scraps =
    [
        "{",
        "}",
        "[",
        "]",
        ",",
        ":",
        "\"",
        "null",
        "true",
        "1e999",
        "-",
        "0",
        "\\",
        "\\ud800",
        "\0",
        "±",
        "\u2212",
        "//",
        "\"in\":",
        "\"format\":1,",
        "\"format\":9",
        "999999999999999999999999999999",
        "\"1/0 in\"",
        "\"12° 61′\"",
        "\uFEFF",
        "\ud83d",
        "{\"a\":{\"a\":{\"a\":",
        "1.",
        ".5",
        "+3",
        "NaN",
        "\"−5 mm\"",
    ];

    [Fact]
    public void Read_TextMangledAtRandom_IsADocumentOrRefusals()
    {
        var (read, refused) = (0, 0);
        Gen.Select(Gen.Int[1, 6], Gen.Int)
            .Sample(
                (cuts, seed) =>
                {
                    var whole = seed % 3 == 0 ? KeptRecordsTests.Tested : ExampleJob.Text;
                    var text = Mangle(whole, cuts, new Random(seed));
                    if (Answers(JobJson.Read(text)))
                        Interlocked.Increment(ref read);
                    else
                        Interlocked.Increment(ref refused);
                },
                iter: 4000
            );
        // Both happen, or the mangling proves nothing.
        Assert.True(read > 40 && refused > 400, $"{read} read, {refused} refused");
    }

    [Theory]
    [InlineData("{\"format\":1,\"\":\"x\"}", "\"\"")]
    [InlineData("{\"format\":1,\"corner\":{\"\":1}}", "corner.\"\"")]
    public void Read_AMemberWithoutAName_IsStillRefusedByName(string text, string field) =>
        Assert.Equal(field, Assert.Single(JobJson.Read(text).Refusals).Field);

    [Fact]
    public void Read_NodesSwappedAtRandom_IsADocumentOrRefusals() =>
        Gen.Select(Gen.Int, Gen.Int)
            .Sample(
                (seed, other) =>
                {
                    var random = new Random(other);
                    var job = RandomJob.Of(seed);
                    for (var i = random.Next(1, 4); i > 0; i--)
                        Swap(job, RandomJob.Of(random.Next()), random);
                    Answers(JobJson.Read(job));
                    Answers(JobJson.Read(job.ToJsonString()));
                },
                iter: 1000
            );

    [Fact]
    public void Read_EveryPrefixOfAFile_IsRefused()
    {
        for (var length = 0; length < ExampleJob.Text.TrimEnd().Length; length++)
            Assert.Null(JobJson.Read(ExampleJob.Text[..length]).Document);
    }

    private static bool Answers(JobReading reading)
    {
        Assert.Equal(reading.Document is null, reading.Refusals.Count > 0);
        Assert.All(
            reading.Refusals,
            r =>
            {
                Assert.NotEmpty(r.Field);
                Assert.NotEmpty(r.Problem);
                Assert.NotEmpty(r.Accepted);
            }
        );
        if (reading.Document is not { } document)
            return false;
        var written = JobJson.Write(document);
        Assert.Equal(written, JobJson.Write(JobJson.Read(written).Document!));
        return true;
    }

    private static string Mangle(string text, int cuts, Random random)
    {
        var mangled = new StringBuilder(text);
        for (var i = 0; i < cuts; i++)
        {
            var at = random.Next(mangled.Length);
            switch (random.Next(5))
            {
                case 0:
                    mangled.Remove(at, Math.Min(random.Next(1, 12), mangled.Length - at));
                    break;
                case 1:
                    mangled.Insert(at, s_scraps[random.Next(s_scraps.Length)]);
                    break;
                case 2:
                    mangled[at] = (char)random.Next(32, 127);
                    break;
                case 3:
                    var digit = random.Next(mangled.Length);
                    while (digit < mangled.Length - 1 && !char.IsAsciiDigit(mangled[digit]))
                        digit++;
                    mangled[digit] = (char)('0' + random.Next(10));
                    break;
                default:
                    var from = random.Next(mangled.Length - 20);
                    mangled.Insert(at, mangled.ToString(from, random.Next(1, 20)));
                    break;
            }
        }
        return mangled.ToString();
    }

    /// <summary>Puts a part of one job in some place of another.</summary>
    private static void Swap(JsonObject job, JsonObject donor, Random random)
    {
        var place = Somewhere(job, random);
        var part = Somewhere(donor, random).DeepClone();
        if (place.Parent is JsonArray list)
            list[list.IndexOf(place)] = part;
        else if (place.Parent is JsonObject owner)
            owner[random.Next(4) == 0 ? "x" : place.GetPropertyName()] = part;
    }

    private static JsonNode Somewhere(JsonNode at, Random random)
    {
        while (true)
        {
            var children = at switch
            {
                JsonObject o => o.Select(p => p.Value!).ToList(),
                JsonArray a => a.Select(n => n!).ToList(),
                _ => [],
            };
            if (children.Count == 0 || (at.Parent is not null && random.Next(3) == 0))
                return at;
            at = children[random.Next(children.Count)];
        }
    }
}
