using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>A crack test with a phone: clocks that are right whatever the phone did meanwhile, and marks that stop the job.</summary>
[Collection(PageTests.Name)]
public partial class CrackTestPageTests(Bench bench)
{
    private const string Steps = "One step at a time.";
    private static readonly DateTime s_noon = new(2026, 11, 25, 12, 0, 0, DateTimeKind.Utc);

    /// <summary>Counts what would be heard and felt.</summary>
    private const string Ears = """
        window.rung = 0;
        navigator.vibrate = () => { window.rung++; return true; };
        """;

    [Fact]
    public async Task Dwell_NetworkCutPageClosedAndTimePassing_IsRightAndItsStepsArriveLater()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, tested in the dark");
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await phone.Context.AddInitScriptAsync(Ears);
        await BeginDwell(phone, job);
        var at = new Uri(phone.Page.Url).PathAndQuery.TrimStart('/');
        Assert.InRange(await Left(phone), 14 * 60 + 30, 15 * 60);
        await phone.Look("crack-dwell");

        await CutTheLaptop(phone);
        await phone.Context.Clock.FastForwardAsync(5 * 60 * 1000);
        await Until(phone, left => left is > 9 * 60 and <= 10 * 60);
        await phone.Close();
        await phone.Open(at);
        await phone.Asked(Steps);
        await Until(phone, left => left is > 8 * 60 and <= 10 * 60);
        Assert.Equal(0, await phone.Page.EvaluateAsync<int>("window.rung"));

        // Its time comes while the phone sleeps; awake again it says so, and can be heard until somebody touches it.
        await Sleep(phone, TimeSpan.FromMinutes(12));
        await Phone
            .Expect(phone.Page.Locator(".clock"))
            .ToContainTextAsync("time is up. It may stay");
        await Phone
            .Expect(phone.Page.Locator(".clock .do"))
            .ToContainTextAsync("Take the penetrant off now");
        await phone.Page.WaitForFunctionAsync("window.rung > 0");
        await phone.Press("The excess is off");
        await Phone.Expect(phone.Page.Locator(".clock")).ToHaveCountAsync(0);
        Assert.Equal([], StepsOf(await laptop.Document(job)).Where(s => s == "removed"));

        await JoinTheLaptop(phone);
        var arrived = await laptop.Until(job, d => StepsOf(d).Contains("removed"));
        Assert.Equal(["cleaned", "dried", "penetrantOn", "removed"], StepsOf(arrived));
        var steps = arrived["crackTest"]!["tests"]![0]!["steps"]!.AsArray();
        var dwelt =
            DateTimeOffset.Parse((string)steps[3]!["at"]!, null)
            - DateTimeOffset.Parse((string)steps[2]!["at"]!, null);
        Assert.InRange(dwelt.TotalMinutes, 17, 20);
    }

    [Fact]
    public async Task Dwell_SleptPastItsLongest_SaysHowLongOverAndBeginsAgainKeepingTheRecord()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, slept over");
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await BeginDwell(phone, job);
        await Sleep(phone, TimeSpan.FromMinutes(65));
        var clock = phone.Page.Locator(".clock");
        await Phone.Expect(clock).ToContainTextAsync("too long by");
        await Phone.Expect(clock).ToContainTextAsync("over the 60 min that are allowed");
        Assert.InRange(await Left(phone), 5 * 60, 6 * 60);
        await Phone.Expect(clock.Locator(".do")).ToContainTextAsync("begin again");
        await phone.Look("crack-over");

        await phone.Press("It is cleaned right down: begin again");
        await Phone.Expect(phone.Page.GetByText("What was noted before stays")).ToBeVisibleAsync();
        var document = await laptop.Until(job, d => StepsOf(d).Count == 4);
        Assert.Equal(["cleaned", "dried", "penetrantOn", "cleaned"], StepsOf(document));
    }

    [Fact]
    public async Task Dwell_ClockOfThePhoneSetBack_SaysSoByHowMuch()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, clock set back");
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await BeginDwell(phone, job);
        await phone.Context.Clock.FastForwardAsync(3 * 60 * 1000);
        await Until(phone, left => left < 13 * 60);
        await phone.Context.Clock.SetSystemTimeAsync(s_noon.AddMinutes(-37));
        await Phone.Expect(phone.Page.GetByText(SetBack())).ToBeVisibleAsync();
        // A step that lies in the future of this clock is said, not counted down to.
        await Phone
            .Expect(phone.Page.GetByText("Set the clock right, or correct the step").First)
            .ToBeVisibleAsync();
    }

    [Fact]
    public async Task StepTime_Corrected_StandsBesideTheOldOneInTheRecord()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, put right");
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await BeginDwell(phone, job);
        await phone
            .Page.GetByRole(AriaRole.Button, new() { Name = "Correct: Penetrant on" })
            .ClickAsync();
        await phone.Type("It was done at (hours:minutes:seconds)", "11:52:00");
        await phone.Look("crack-correct");
        await phone.Press("Put that right");
        await Until(phone, left => left < 8 * 60);
        var document = await laptop.Until(job, d => StepsOf(d).Count == 4);
        var steps = document["crackTest"]!["tests"]![0]!["steps"]!.AsArray();
        Assert.Equal((string)steps[2]!["id"]!, (string)steps[3]!["corrects"]!);
        Assert.Contains("T11:52:00", (string)steps[3]!["at"]!, StringComparison.Ordinal);

        // Undo is no eraser either: it corrects the correction.
        await phone.Press("Undo");
        await Until(phone, left => left > 12 * 60);
        document = await laptop.Until(job, d => StepsOf(d).Count == 5);
        steps = document["crackTest"]!["tests"]![0]!["steps"]!.AsArray();
        Assert.Equal((string)steps[3]!["id"]!, (string)steps[4]!["corrects"]!);
    }

    [Fact]
    public async Task Mark_ALineInTheButt_StopsTheJobOnTheRouteCardUntilSeenTo()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, with a line");
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await BeginDwell(phone, job);
        await phone.Context.Clock.FastForwardAsync(16 * 60 * 1000);
        foreach (
            var done in (string[])
                ["The excess is off", "It is dry again", "Developer is on", "Looked once"]
        )
            await phone.Press(done);
        await phone.Context.Clock.FastForwardAsync(12 * 60 * 1000);
        await phone.Press("Looked, all round");
        await phone.Press("Next");
        await phone.Asked("Where did you look, and what shows?");
        await phone.Look("crack-marks-empty");
        // The middle of the picture is the butt.
        await phone.Page.Locator(".strip svg").ClickAsync();
        await phone.Type("How long", "4.5");
        await phone.Type("How wide", "0.8");
        await phone.Look("crack-mark");
        await phone.Press("Note this mark");
        await Phone.Expect(phone.Page.Locator(".answer")).ToContainTextAsync("Stop.");
        await phone.Look("crack-marks");

        var document = await laptop.Until(job, d => MarksOf(d).Count == 1);
        Assert.Equal("buttWeld", (string?)MarksOf(document)[0]["place"]);
        Assert.Equal("4.5 mm", (string?)MarksOf(document)[0]["length"]);
        await phone.Follow("job/" + job);
        await Phone.Expect(phone.Page.Locator("#crack-test-butt h2")).ToContainTextAsync("stopped");
        await Phone
            .Expect(phone.Page.Locator(".next"))
            .ToContainTextAsync("Crack-test the butt is stopped");
        await Phone
            .Expect(phone.Page.Locator("#crack-test-butt"))
            .Not.ToContainTextAsync("Clean at");
        await phone.Look("crack-card");

        // Dressed out, it waits for another test, of the same place and with an id of its own.
        await phone.Page.GotoAsync(
            $"job/{job}/weld-to-test/marks?test="
                + (string)document["crackTest"]!["tests"]![0]!["id"]!
        );
        await phone.Press("Dressed out");
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Test it again" }).ClickAsync();
        await phone.Asked(Steps);
        await phone.Press("It is clean");
        document = await laptop.Until(job, d => d["crackTest"]!["tests"]!.AsArray().Count == 2);
        Assert.Contains("for=crack-test-butt", phone.Page.Url, StringComparison.Ordinal);
        Assert.Equal("dressed", (string?)document["crackTest"]!["decisions"]![0]!["what"]);
        Assert.Equal(
            "buttWeld",
            (string?)document["crackTest"]!["tests"]![1]!["notes"]![0]!["places"]![0]
        );
    }

    [Fact]
    public async Task Door_WithoutAJob_GivesClockAndVerdictAndIsKeptAsAJob()
    {
        await using var phone = await bench.Phone();
        await phone.Context.Clock.InstallAsync(new() { TimeDate = s_noon });
        await phone.Door("A weld to test");
        await phone.Asked("How do you look for cracks?");
        await phone.Look("crack-method");
        await phone.Next("What times does the can ask for?");
        await phone.Type("Penetrant stays on, at least", "10");
        await phone.Look("crack-maker");
        await phone.Next("How warm is the part, and how light is it?");
        await phone.Type("The part is at", "18");
        await phone.Type("White light at the part", "700");
        await phone.Look("crack-conditions");
        await phone.Next(Steps);
        await phone.Look("crack-first-step");
        foreach (var done in (string[])["It is clean", "It is dry", "Penetrant is on"])
            await phone.Press(done);
        Assert.InRange(await Left(phone), 9 * 60, 10 * 60);
        await phone.Follow("weld-to-test/answer");
        await Phone
            .Expect(phone.Page.Locator(".answer"))
            .ToContainTextAsync("Take the excess off at");
        await phone.Look("crack-answer");
        await phone.Type("A name for the job", "Heron, tested");
        await phone.Press("Keep as a new job");
        await phone.Asked("Heron, tested");
        await Phone
            .Expect(phone.Page.GetByText("All of it is sent to the laptop"))
            .ToBeVisibleAsync();
        using var laptop = new Laptop(bench.Address);
        var document = await laptop.Document(new Uri(phone.Page.Url).Segments[^1]);
        Assert.Equal(["cleaned", "dried", "penetrantOn"], StepsOf(document));
        Assert.Equal(
            "10 min",
            (string?)document["crackTest"]!["tests"]![0]!["notes"]![0]!["makersDwell"]
        );
    }

    private static async Task BeginDwell(Phone phone, string job)
    {
        await phone.Open("job/" + job);
        await phone.Follow($"job/{job}/weld-to-test/steps", redirects: true);
        await phone.Asked(Steps);
        foreach (var done in (string[])["It is clean", "It is dry", "Penetrant is on"])
            await phone.Press(done);
        await Phone.Expect(phone.Page.Locator(".clock")).ToContainTextAsync("left of 15 min");
    }

    /// <summary>As a phone in a pocket: frozen, while time goes on.</summary>
    private static async Task Sleep(Phone phone, TimeSpan time)
    {
        var devtools = await phone.Context.NewCDPSessionAsync(phone.Page);
        await devtools.SendAsync("Page.setWebLifecycleState", new() { ["state"] = "frozen" });
        await phone.Context.Clock.FastForwardAsync((long)time.TotalMilliseconds);
        await devtools.SendAsync("Page.setWebLifecycleState", new() { ["state"] = "active" });
        await devtools.DetachAsync();
    }

    private static async Task CutTheLaptop(Phone phone) =>
        await phone.Context.RouteAsync("**/api/**", route => route.AbortAsync());

    private static async Task JoinTheLaptop(Phone phone)
    {
        await phone.Context.UnrouteAllAsync();
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
    }

    /// <summary>The big number of the clock, s.</summary>
    private static async Task<int> Left(Phone phone)
    {
        var parts = (await phone.Page.Locator(".clock strong").InnerTextAsync()).Split(':');
        return parts.Aggregate(
            0,
            (sum, p) => sum * 60 + int.Parse(p, System.Globalization.CultureInfo.InvariantCulture)
        );
    }

    private static async Task Until(Phone phone, Func<int, bool> isSo)
    {
        for (var i = 0; ; i++)
        {
            var left = await Left(phone);
            if (isSo(left))
                return;
            Assert.True(i < 150, $"The clock stays at {left} s.");
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
    }

    private static List<string> StepsOf(JsonNode document) =>
        [
            .. (document["crackTest"]?["tests"]?[0]?["steps"]?.AsArray() ?? []).Select(s =>
                (string)s!["step"]!
            ),
        ];

    private static List<JsonNode> MarksOf(JsonNode document) =>
        [.. (document["crackTest"]?["tests"]?[0]?["indications"]?.AsArray() ?? []).Select(m => m!)];

    [GeneratedRegex("was set back (39|40) min")]
    private static partial Regex SetBack();
}
