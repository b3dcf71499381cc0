using System.Text.Json.Nodes;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Every page for every hand and eye: no serious finding of the axe rules, nothing that needs a pointer, nothing that
/// must be scrolled sideways on a phone.</summary>
[Collection(PageTests.Name)]
public class AccessTests(Bench bench)
{
    private static readonly (string Door, string Questions)[] s_doors =
    [
        ("car-on-stands", "trial-shaft droop ride-height bump play margin answer"),
        ("two-shafts", "inner-end outer-end overall sleeve answer"),
        ("ends-in-a-vee", "diameters blades angle answer"),
        ("under-the-dial", "moment supports station readings limit answer"),
        ("weld-to-test", "method maker conditions steps marks answer"),
    ];

    private static readonly (string Subject, string Questions)[] s_weld =
    [
        ("groove", "shape filler answer"),
        ("vees", "way inner answer"),
        ("preheat", "inner-steel arc chosen answer"),
        ("sample", "alike fusion hardness answer"),
        ("tacks", "inner answer"),
        ("beads", "layers answer"),
        ("temper", "interpass temper answer"),
        ("sleeve", "seams closed answer"),
    ];

    [Fact]
    public async Task EveryPageOfTheWeld_OfTheDemo_HasNoSeriousAxeFinding()
    {
        await using var phone = await bench.Phone();
        await RouteCardPageTests.OpenDemo(phone);
        foreach (var (subject, questions) in s_weld)
        {
            foreach (var question in (string[])[questions.Split(' ')[0], "answer"])
            {
                await phone.Follow($"{RouteCardPageTests.Demo}/weld/{subject}/{question}");
                await IsSound(phone, $"weld/{subject}/{question}");
            }
        }
    }

    [Fact]
    public async Task Home_AndTheRouteCard_HaveNoSeriousAxeFindingAndFit()
    {
        await using var phone = await bench.Phone();
        await RouteCardPageTests.OpenDemo(phone);
        await IsSound(phone, "the route card");
        // All of it, as a hand would open it.
        var folded = phone.Page.Locator(".op.folded h2 button");
        while (await folded.CountAsync() is > 0 and var left)
        {
            await folded.First.ClickAsync();
            await Phone.Expect(folded).ToHaveCountAsync(left - 1);
        }
        await IsSound(phone, "the route card, open");
        await phone.Follow("");
        await phone.Asked("What is in front of you?");
        await IsSound(phone, "home");
        await phone.Follow("nowhere");
        await IsSound(phone, "a page that is not there");
    }

    [Fact]
    public async Task EveryDoor_EmptyAndAnswered_HasNoSeriousAxeFinding()
    {
        await using var phone = await bench.Phone();
        await RouteCardPageTests.OpenDemo(phone);
        foreach (var (door, _) in s_doors)
        {
            await phone.Follow(door);
            await IsSound(phone, door);
            // The same door on a job that has everything, with its answer and pictures.
            await phone.Follow($"{RouteCardPageTests.Demo}/{door}/answer");
            await Phone.Expect(phone.Page.Locator(".answer.big")).ToBeVisibleAsync();
            await IsSound(phone, door + ", answered");
        }
    }

    [Fact]
    public async Task TheBench_WithClocksMarksAndSteps_HasNoSeriousAxeFinding()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, for every eye", Tested());
        await using var phone = await bench.Phone();
        await phone.Open($"job/{job}");
        await phone.Asked("Curlew, for every eye");
        // Two shafts in penetrant at once: two clocks.
        await Phone.Expect(phone.Page.Locator(".clock")).ToHaveCountAsync(2);
        await IsSound(phone, "a card with clocks");
        foreach (
            var at in (string[])
                [
                    "weld-to-test/steps?test=now",
                    "weld-to-test/marks?test=done",
                    "weld-to-test/answer?test=done",
                    "fit/pull-check",
                    "fit/first-run",
                    "fit/answer",
                ]
        )
        {
            await phone.Follow($"job/{job}/{at}");
            await Phone.Expect(phone.Page.Locator(".answer")).ToBeVisibleAsync();
            await IsSound(phone, at);
        }
    }

    [Fact]
    public async Task EveryPage_InTheDark_HasEnoughContrast()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, at night", Tested());
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, at night");
        await phone.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await IsReadable(phone, "a card with clocks");
        await phone.Look("dark-card");
        string[] pages =
        [
            "",
            RouteCardPageTests.Demo,
            .. s_doors.Select(d => $"{RouteCardPageTests.Demo}/{d.Door}/answer"),
            $"job/{job}/weld-to-test/steps?test=now",
            $"job/{job}/weld-to-test/marks?test=done",
            $"job/{job}/fit/pull-check",
        ];
        foreach (var page in pages)
        {
            await phone.Follow(page);
            await IsReadable(phone, page);
        }
        await phone.Look("dark-fit");
    }

    /// <summary>Two tests in their dwell, and one that is over and showed a line.</summary>
    private static JsonObject Tested()
    {
        string Ago(int minutes) =>
            DateTimeOffset
                .UtcNow.AddMinutes(-minutes)
                .ToString("yyyy-MM-dd'T'HH:mm:ss'+00:00'", null);
        JsonArray Steps(string run, params (string Step, int Ago)[] steps) =>
            [
                .. steps.Select(s => new JsonObject
                {
                    ["id"] = run + s.Step,
                    ["step"] = s.Step,
                    ["at"] = Ago(s.Ago),
                }),
            ];
        return new()
        {
            ["crackTest"] = new JsonObject
            {
                ["tests"] = new JsonArray(
                    new JsonObject
                    {
                        ["id"] = "now",
                        ["method"] = "colourPenetrant",
                        ["steps"] = Steps("a", ("cleaned", 5), ("penetrantOn", 3)),
                    },
                    new JsonObject
                    {
                        ["id"] = "over",
                        ["method"] = "colourPenetrant",
                        ["steps"] = Steps("b", ("cleaned", 80), ("penetrantOn", 70)),
                    },
                    new JsonObject
                    {
                        ["id"] = "done",
                        ["method"] = "colourPenetrant",
                        ["steps"] = Steps(
                            "c",
                            ("cleaned", 60),
                            ("penetrantOn", 55),
                            ("removed", 35),
                            ("developerOn", 30),
                            ("finalLook", 15)
                        ),
                        ["indications"] = new JsonArray(
                            new JsonObject
                            {
                                ["id"] = "line",
                                ["place"] = "buttWeld",
                                ["length"] = "4 mm",
                                ["width"] = "0.6 mm",
                            }
                        ),
                    }
                ),
            },
        };
    }

    /// <summary>In the dark only colours change, so that only they are looked at again.</summary>
    private static async Task IsReadable(Phone phone, string where)
    {
        var found = await phone.Page.RunAxe(
            new AxeRunOptions { RunOnly = RunOnlyOptions.Rules("color-contrast") }
        );
        var faint = found
            .Violations.SelectMany(v => v.Nodes.Select(n => $"{where}, in the dark: {n.Html}"))
            .ToList();
        Assert.True(faint.Count == 0, string.Join('\n', faint));
        Assert.NotEmpty(found.Passes);
        // Else it was not dark.
        Assert.Equal(
            "rgb(20, 23, 26)",
            await phone.Page.EvaluateAsync<string>(
                "getComputedStyle(document.body).backgroundColor"
            )
        );
    }

    [Fact]
    public async Task EveryQuestion_OnAPhone_FitsItsWidth()
    {
        await using var phone = await bench.Phone();
        await RouteCardPageTests.OpenDemo(phone);
        foreach (var (door, questions) in s_doors)
        {
            foreach (var question in questions.Split(' '))
            {
                await phone.Follow($"{door}/{question}");
                await Fits(phone, $"{door}/{question}");
                await phone.Follow($"{RouteCardPageTests.Demo}/{door}/{question}");
                await Fits(phone, $"{door}/{question} of a job");
            }
        }
        foreach (var (subject, questions) in s_weld)
        {
            foreach (var question in questions.Split(' '))
            {
                await phone.Follow($"{RouteCardPageTests.Demo}/weld/{subject}/{question}");
                await Fits(phone, $"weld/{subject}/{question}");
            }
        }
        foreach (var door in (string[])["torque", "joints", "linkage"])
        {
            await phone.Follow($"{RouteCardPageTests.Demo}/{door}");
            await Fits(phone, door);
        }
    }

    [Fact]
    public async Task EndsInAVee_WithKeysAlone_ReachesItsAnswerAndKeepsIt()
    {
        await using var phone = await bench.Phone();
        await phone.Open();
        var keys = phone.Page.Keyboard;
        await TabTo(phone, "Ends in a vee");
        await keys.PressAsync("Enter");
        // The cursor waits in the first box; Enter goes to the second, and from the last one on.
        await phone.Asked("How thick is each end, where it lies in the vee?");
        await Focused(phone, "#q-inner");
        await keys.TypeAsync("26.2");
        await keys.PressAsync("Enter");
        await Focused(phone, "#q-outer");
        await keys.TypeAsync("25.3");
        await keys.PressAsync("Enter");
        await phone.Asked("Which feeler blades are on hand?");
        await TabTo(phone, "Next");
        await keys.PressAsync("Enter");
        await phone.Asked("What is the angle of the vee?");
        await Focused(phone, "#q-angle");
        await keys.TypeAsync("90");
        await keys.PressAsync("Enter");
        await phone.Page.WaitForURLAsync("**/answer");
        Assert.Contains("0.45 mm", await phone.Sentence(), StringComparison.Ordinal);
        await TabTo(phone, "A name for the job");
        await keys.TypeAsync("Heron, by keys alone");
        await keys.PressAsync("Enter");
        await phone.Asked("Heron, by keys alone");
    }

    private static async Task Focused(Phone phone, string box) =>
        await Phone.Expect(phone.Page.Locator(box)).ToBeFocusedAsync();

    /// <summary>Tabs until something named so has the focus. On the way everything focused must show that it is.</summary>
    private static async Task TabTo(Phone phone, string named)
    {
        for (var i = 0; i < 40; i++)
        {
            await phone.Page.Keyboard.PressAsync("Tab");
            var (name, shown) = await Focus(phone);
            Assert.True(shown, $"Nothing shows that the focus is on “{name}”.");
            if (name.StartsWith(named, StringComparison.Ordinal))
                return;
        }
        Assert.Fail($"The tab key does not reach “{named}”.");
    }

    private static async Task<(string Name, bool Shown)> Focus(Phone phone)
    {
        var said = await phone.Page.EvaluateAsync<string[]>(
            """
            () => {
              const e = document.activeElement;
              // A radio button shows its focus on the label that stands for it.
              const s = [e, ...(e.labels ?? [])].map(x => getComputedStyle(x));
              const shown = s.some(x => (x.outlineStyle !== 'none' && parseFloat(x.outlineWidth) > 0) || x.boxShadow !== 'none');
              return [(e.getAttribute('aria-label') ?? e.labels?.[0]?.innerText ?? e.innerText ?? '').trim(), String(shown)];
            }
            """
        );
        return (Phone.Plain(said[0]), said[1] == "true");
    }

    internal static async Task IsSound(Phone phone, string where)
    {
        await Fits(phone, where);
        var found = await phone.Page.RunAxe();
        var serious = found
            .Violations.Where(v => v.Impact is "critical" or "serious")
            .SelectMany(v => v.Nodes.Select(n => $"{where}: {v.Id}: {v.Help}: {n.Html}"))
            .ToList();
        Assert.True(serious.Count == 0, string.Join('\n', serious));
        Assert.NotEmpty(found.Passes);
    }

    private static async Task Fits(Phone phone, string where)
    {
        var width = await phone.Page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        if (width <= Phone.Width)
            return;
        var wide = await phone.Page.EvaluateAsync<string[]>(
            """
            w => [...document.querySelectorAll('main *, header *')].filter(e => e.getBoundingClientRect().right > w + 1)
              .slice(-6).map(e => e.outerHTML.slice(0, 120))
            """,
            Phone.Width
        );
        Assert.Fail($"{where} is {width} px wide: {string.Join('\n', wide)}");
    }
}
