using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>Two devices that change one field without knowing of each other.</summary>
public sealed class ConflictTests
{
    private const string Weld = """
        {"format":1,"name":"Heron","weld":{"innerDiameter":"26.2 mm","outerDiameter":"25.3 mm"},
         "corner":{"readings":[{"travel":"0 mm","steering":"straight","in":"10 mm","out":"16 mm"},
                               {"travel":"-90 mm","steering":"straight","in":"14 mm","out":"10 mm"}]}}
        """;

    private static readonly DateTimeOffset s_at = new(2026, 5, 3, 14, 20, 0, TimeSpan.Zero);

    private static JsonObject Job() => JsonNode.Parse(Weld)!.AsObject();

    /// <summary>An edit as a page makes it: with what it saw, in the document it was made on.</summary>
    private static Edit By(
        string device,
        JsonObject on,
        string path,
        string? value,
        params Guid[] settles
    )
    {
        var tokens = FieldPath.Tokens(path, 16)!;
        JsonNode? seen = on;
        foreach (var token in tokens)
            seen = seen is JsonArray list
                ? (int.TryParse(token, out var i) && i < list.Count ? list[i] : null)
                : seen?[token];
        return new(
            Guid.NewGuid(),
            "job-1",
            s_at,
            device,
            path,
            value is null ? null : JsonNode.Parse(value),
            seen?.DeepClone()
        )
        {
            WasEmpty = seen is null && tokens[^1] != "-",
            Entries = ListEntry.Of(on, tokens),
            Settles = settles.Length > 0 ? settles : null,
        };
    }

    private static JobDocument Read(JsonObject job) => JobJson.Read(job).Document!;

    private static Disagreement One(JsonObject job) => Assert.Single(Disagreements.Of(Read(job)));

    [Fact]
    public void TryApply_OverAValueNotSeen_KeepsWhatStandsAndTheOtherBesideIt()
    {
        var seen = Job();
        var job = Edits.Apply(
            seen,
            By("computer-00001111", seen, "/weld/innerDiameter", "\"27.30 mm\"")
        );
        var late = By("phone-1a2b3c4d", seen, "/weld/innerDiameter", "\"27.40 mm\"");
        job = Edits.TryApply(job, late, (path, value) => new("computer-00001111", s_at)).Document!;

        Assert.Equal("27.30 mm", (string?)job["weld"]!["innerDiameter"]);
        var one = One(job);
        Assert.Equal("weld, inner diameter", one.Field);
        Assert.Equal(("27.30 mm", "computer-00001111"), (one.Stands.Text, one.Stands.Device));
        var other = Assert.Single(one.Others);
        Assert.Equal(("27.40 mm", "phone-1a2b3c4d"), (other.Text, other.Device));
        Assert.Equal("26.2 mm", (string?)Read(job).Records.Conflicts[0].Was);
        // It is in the file, and the file gives the same bytes again.
        var text = JobJson.Write(Read(job));
        Assert.Equal(text, JobJson.Write(JobJson.Read(text).Document!));

        var next = RouteCard.Of(Read(job), Workflow.Evaluate(Read(job).Job)).Next;
        Assert.Equal(Disagreements.Place, next.Operation);
        Assert.Equal(
            "Two devices disagree on weld, inner diameter: computer 0000 says 27.30 mm, phone 1a2b says 27.40 mm. "
                + "Used until it is settled: 27.30 mm. Settle which counts.",
            next.Words.In(Display.Metric)
        );
        var finding = Assert.Single(Disagreements.Findings(Read(job)));
        Assert.Contains(
            "Used until it is settled: 27.30 mm",
            finding.Text.In(Display.Metric),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("27.30 mm", "\"27,30 mm\"")]
    [InlineData("27.30 mm", "27.3")]
    [InlineData("25.4 mm", "\"1 in\"")]
    public void TryApply_TheSameValueSpeltOtherwise_IsNoConflict(string first, string second)
    {
        var seen = Job();
        var job = Edits.Apply(seen, By("a", seen, "/weld/innerDiameter", $"\"{first}\""));
        job = Edits.Apply(job, By("b", seen, "/weld/innerDiameter", second));
        Assert.Equal(first, (string?)job["weld"]!["innerDiameter"]);
        Assert.False(job.ContainsKey("records"));
    }

    [Theory]
    [InlineData("\"27.40 mm\"", "27.40 mm")] // the other one
    [InlineData("\"27.30 mm\"", "27.30 mm")] // the one that stands
    [InlineData("\"27.35 mm\"", "27.35 mm")] // a third
    [InlineData(null, null)] // none of them
    public void TryApply_TheSettling_LeavesOneValueAndNoConflict(string? value, string? counts)
    {
        var job = TwoSay("27.30 mm", "27.40 mm");
        var field = One(job);
        var edit = Disagreements.Settle(
            "job-1",
            Read(job),
            field,
            value is null ? null : JsonNode.Parse(value),
            s_at,
            "c"
        );
        job = Edits.Apply(job, edit);
        Assert.Equal(counts, (string?)job["weld"]!["innerDiameter"]);
        Assert.Empty(Read(job).Records.Conflicts);
        Assert.False(job.ContainsKey("records"));
    }

    [Fact]
    public void TryApply_TwoSettleDifferently_IsAConflictAgain()
    {
        var job = TwoSay("27.30 mm", "27.40 mm");
        var field = One(job);
        var keeps = Disagreements.Settle("job-1", Read(job), field, field.Stands.Value, s_at, "a");
        var takes = Disagreements.Settle(
            "job-1",
            Read(job),
            field,
            field.Others[0].Value,
            s_at,
            "b"
        );
        job = Edits.Apply(Edits.Apply(job, keeps), takes);
        Assert.Equal("27.30 mm", (string?)job["weld"]!["innerDiameter"]);
        Assert.Equal("27.40 mm", Assert.Single(One(job).Others).Text);
    }

    [Fact]
    public void TryApply_BothFillAnEmptyField_IsAConflict()
    {
        var seen = Job();
        var job = Edits.Apply(seen, By("a", seen, "/weld/veeAngle", "\"90°\""));
        job = Edits.Apply(job, By("b", seen, "/weld/veeAngle", "\"120°\""));
        Assert.Equal(("90°", "120°"), (One(job).Stands.Text, One(job).Others[0].Text));
    }

    [Fact]
    public void TryApply_OneEmptiesWhatTheOtherChanged_IsAConflictWithNothing()
    {
        var seen = Job();
        var job = Edits.Apply(seen, By("a", seen, "/weld/innerDiameter", "\"27.30 mm\""));
        job = Edits.Apply(job, By("b", seen, "/weld/innerDiameter", null));
        Assert.Equal(("27.30 mm", "nothing"), (One(job).Stands.Text, One(job).Others[0].Text));
        job = Edits.Apply(job, Disagreements.Settle("job-1", Read(job), One(job), null, s_at, "a"));
        Assert.False(job["weld"]!.AsObject().ContainsKey("innerDiameter"));
    }

    [Fact]
    public void TryApply_OfOneReadingInAListThatMoved_FindsItByItsTravel()
    {
        var seen = Job();
        var job = Edits.Apply(seen, By("a", seen, "/corner/readings/0", null));
        var change = By("b", seen, "/corner/readings/1/in", "\"15 mm\"");
        job = Edits.Apply(job, change);
        Assert.Equal("15 mm", (string?)Assert.Single(job["corner"]!["readings"]!.AsArray())!["in"]);

        // Both of one reading, from different places in the list.
        job = Edits.Apply(job, By("c", seen, "/corner/readings/1/in", "\"13 mm\""));
        Assert.Equal("/corner/readings/0/in", One(job).Path);
        Assert.Equal("corner, readings (travel -90 mm, steering straight), in", One(job).Field);
        Assert.Equal(("15 mm", "13 mm"), (One(job).Stands.Text, One(job).Others[0].Text));
    }

    [Fact]
    public void TryApply_BothBeginOneStage_KeepsBothReadingsAndAsksOnlyWhatDiffers()
    {
        var seen = JsonNode.Parse("""{"format":1,"name":"Heron"}""")!.AsObject();
        var job = Edits.Apply(
            seen,
            By(
                "a",
                seen,
                "/corner",
                """{"trialLength":"412 mm","readings":[{"travel":"0 mm","in":"10 mm"}]}"""
            )
        );
        job = Edits.Apply(
            job,
            By(
                "b",
                seen,
                "/corner",
                """{"trialLength":"413 mm","readings":[{"travel":"70 mm","in":"13 mm"}]}"""
            )
        );
        Assert.Equal(
            ["0 mm", "70 mm"],
            job["corner"]!["readings"]!.AsArray().Select(r => (string?)r!["travel"])
        );
        Assert.Equal("corner, trial length", One(job).Field);
    }

    [Fact]
    public void TryApply_ReadingsUnderTheDialFromTwo_StandByTheirAngles()
    {
        var seen = JsonNode
            .Parse(
                """{"format":1,"name":"Heron","truing":{"turns":[{"id":"t1","moment":"tacked","readings":[{"angle":"0°","dial":"0.1 mm"},{"angle":"180°","dial":"0.3 mm"}]}]}}"""
            )!
            .AsObject();
        var job = Edits.Apply(
            seen,
            By("a", seen, "/truing/turns/0/readings/-", """{"angle":"270°","dial":"0.2 mm"}""")
        );
        job = Edits.Apply(
            job,
            By("b", seen, "/truing/turns/0/readings/-", """{"angle":"90°","dial":"0.4 mm"}""")
        );
        Assert.Equal(
            ["0°", "90°", "180°", "270°"],
            job["truing"]!["turns"]![0]!["readings"]!.AsArray().Select(r => (string?)r!["angle"])
        );
    }

    [Fact]
    public void TryApply_OfAnEntryTakenOutElsewhere_IsRefusedInWords()
    {
        var seen = JsonNode
            .Parse(
                """{"format":1,"name":"Heron","truing":{"turns":[{"id":"t1","moment":"tacked"}]}}"""
            )!
            .AsObject();
        var job = Edits.Apply(seen, By("a", seen, "/truing/turns/0", null));
        var outcome = Edits.TryApply(job, By("b", seen, "/truing/turns/0/station", "\"200 mm\""));
        Assert.Contains(
            "taken out elsewhere",
            Assert.Single(outcome.Refusals).Problem,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TryApply_AConflictWrittenByHandOrWithAnImpossibleValue_IsRefused()
    {
        var seen = Job();
        var job = TwoSay("27.30 mm", "27.40 mm");
        Assert.False(Edits.TryApply(job, By("x", job, "/records/conflicts", null)).Accepted);
        Assert.False(
            Edits.TryApply(job, By("x", seen, "/weld/innerDiameter", """{"x":1}""")).Accepted
        );
        Assert.False(
            Edits.TryApply(job, By("x", seen, "/weld/innerDiameter", "\"a lot\"")).Accepted
        );
    }

    [Fact]
    public void TryApply_AProgramThatLooksAtNothing_SetsTheField()
    {
        var job = TwoSay("27.30 mm", "27.40 mm");
        job = Edits.Apply(
            job,
            new(Guid.NewGuid(), "job-1", s_at, "program", "/weld/innerDiameter", "28 mm")
        );
        Assert.Equal(("28 mm", "program"), (One(job).Stands.Text, One(job).Stands.Device));
        Assert.Equal("27.40 mm", One(job).Others[0].Text);
    }

    private static JsonObject TwoSay(string first, string second)
    {
        var seen = Job();
        var job = Edits.Apply(seen, By("a", seen, "/weld/innerDiameter", $"\"{first}\""));
        return Edits.Apply(job, By("b", seen, "/weld/innerDiameter", $"\"{second}\""));
    }

    /// <summary>Three devices type, send and fetch in any order, each knowing only what it has fetched and typed itself. The laptop
    /// is a document and a history.</summary>
    private sealed class Shop(int devices)
    {
        private readonly List<Edit>[] _waiting =
        [
            .. Enumerable.Range(0, devices).Select(_ => new List<Edit>()),
        ];
        private readonly JsonObject[] _held = [.. Enumerable.Range(0, devices).Select(_ => Job())];

        public JsonObject Laptop { get; private set; } = Job();

        /// <summary>Every edit of the laptop's history.</summary>
        public List<Edit> History { get; } = [];

        public JsonObject Held(int device) => _held[device];

        public void Type(int device, string path, string? value)
        {
            var edit = By($"d{device}", _held[device], path, value) with
            {
                Settles = Disagreements.OpenAt(_held[device], path),
            };
            var outcome = Edits.TryApply(_held[device], edit);
            if (outcome.Document is not { } document)
                return; // The hand is told; nothing was kept.
            _held[device] = document;
            _waiting[device].Add(edit);
        }

        /// <summary>Sends what waits, and fetches. Anything may be sent twice.</summary>
        public void Meet(int device)
        {
            foreach (var edit in _waiting[device])
            {
                var outcome = Edits.TryApply(Laptop, edit);
                if (outcome.Document is not { } document)
                    Refused.Add(edit.Value?.ToJsonString() ?? "");
                else
                {
                    Laptop = document;
                    History.Add(edit);
                }
            }
            _waiting[device].Clear();
            _held[device] = JobJson.WriteObject(Read(Laptop));
        }

        public List<string> Refused { get; } = [];
    }

    [Fact]
    public void AnyInterleavingOfThreeDevices_LosesNothingAndEndsAlikeOnceSettled()
    {
        string[] fields =
        [
            "/weld/innerDiameter",
            "/weld/veeAngle",
            "/corner/readings/0/in",
            "/corner/readings/1/out",
            "/about",
        ];
        var move = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 7], Gen.Int[1, 99]);
        move.Array[4, 40]
            .Sample(
                moves =>
                {
                    var shop = new Shop(3);
                    var n = 0;
                    foreach (var (device, what, number) in moves)
                    {
                        n++;
                        if (what < fields.Length)
                        {
                            var value =
                                what == 1 ? $"\"{number}.{n:00}°\""
                                : what == 4 ? $"\"about {n}\""
                                : $"\"{number}.{n:00} mm\"";
                            if (number % 10 == 0)
                                shop.Type(device, fields[what], null);
                            else
                                shop.Type(device, fields[what], value);
                        }
                        else if (what == 5)
                            shop.Type(
                                device,
                                "/corner/readings/-",
                                $$"""{"travel":"{{number}}.{{n:00}} mm","steering":"straight","in":"{{n}} mm"}"""
                            );
                        else
                            shop.Meet(device);
                    }
                    for (var device = 0; device < 3; device++)
                        shop.Meet(device);

                    Assert.Empty(shop.Refused);
                    shop.Meet(0);
                    foreach (var edit in shop.History)
                        Assert.True(IsThere(edit, shop), $"{edit.Path} {edit.Value} was lost");

                    // Somebody settles all there is, each time on what came last.
                    while (Disagreements.Of(Read(shop.Held(0))) is [var field, ..])
                    {
                        var edit = Disagreements.Settle(
                            "job-1",
                            Read(shop.Held(0)),
                            field,
                            field.Others[^1].Value,
                            s_at,
                            "d0"
                        );
                        Assert.NotEmpty(edit.Settles!);
                        shop.Type(0, edit.Path, edit.Value?.ToJsonString());
                        shop.Meet(0);
                    }
                    for (var device = 0; device < 3; device++)
                        shop.Meet(device);
                    var ends = Enumerable
                        .Range(0, 3)
                        .Select(d => JobJson.Write(Read(shop.Held(d))))
                        .ToList();
                    Assert.All(ends, e => Assert.Equal(ends[0], e));
                    Assert.DoesNotContain("conflicts", ends[0], StringComparison.Ordinal);
                },
                iter: 80
            );
    }

    /// <summary>A value typed stands in the document, or in a conflict, or its own device or one that saw it has typed over it. Each
    /// number typed is another one, so that it can be told by its text.</summary>
    private static bool IsThere(Edit edit, Shop shop)
    {
        if (edit.Value is null)
            return true;
        var said = edit.Value is JsonObject entry ? (string)entry["travel"]! : (string)edit.Value!;
        return JobJson.Write(Read(shop.Laptop)).Contains($"\"{said}\"", StringComparison.Ordinal)
            || shop.History.Exists(later =>
                (later.Was is JsonValue was && (string?)was == said)
                || later.Settles?.Contains(edit.Id) == true
            );
    }
}
