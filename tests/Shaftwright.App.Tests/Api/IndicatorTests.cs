using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>A digital indicator on a pseudo-terminal, read by the real program.</summary>
public class IndicatorTests
{
    [Fact]
    public async Task Indicator_OnAPseudoTerminal_IsReadRefusedUnpluggedAndReadAgain()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals as Linux has them.");
        using var book = new TempBook();
        using var link = new TempBook();
        // A plug has one name, whatever is behind it.
        var plug = Path.Combine(link.Folder, "indicator");
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--indicator",
            plug
        );

        // Not plugged in yet: said in words, and everything else is served.
        var gone = await Until(served, r => (string?)r["state"] == "gone");
        Assert.Contains("plugged in", (string?)gone["trouble"], StringComparison.Ordinal);

        using (var device = new Pty())
        {
            File.CreateSymbolicLink(plug, device.Path);
            await Until(served, r => (string?)r["state"] == "open");
            device.Send("+0.125 mm\r\n");
            var first = await Until(served, r => (string?)r["text"] == "0.125 mm");
            Assert.Null(first["refused"]);

            // In pieces, and in inches as it was sent.
            device.Send("-0.0");
            device.Send("04 in\n");
            await Until(served, r => (string?)r["text"] == "-0.004 in");

            // What is no reading is refused in words; the last one stands.
            foreach (
                var (bad, why) in new[]
                {
                    ("0.125", "does not end with mm or in"),
                    ("hello mm", "is no number"),
                    ("+1e3 mm", "is no number"),
                    ("0,125 mm", "is no number"),
                    ("77 mm", "is too large"),
                    (new string('9', 300), "is too long"),
                    ("0.1\x07\xff mm", "is no number"),
                }
            )
            {
                device.Send(bad + "\n");
                var refused = await Until(
                    served,
                    r => ((string?)r["refused"])?.Contains(why, StringComparison.Ordinal) == true
                );
                Assert.Contains("Wanted", (string?)refused["refused"], StringComparison.Ordinal);
                Assert.Equal("-0.004 in", (string?)refused["text"]);
                // Taken again once it talks sense.
                device.Send("-0.004 in\n");
                await Until(served, r => r["refused"] is null);
            }
            Assert.Equal("Shaftwright", (string?)(await served.Get("api/health"))["program"]);
        }

        // Unplugged: what it said before is not offered any more.
        File.Delete(plug);
        var after = await Until(served, r => (string?)r["state"] == "gone");
        Assert.Null(after["text"]);

        // Plugged in again, another terminal behind the same name.
        using (var device = new Pty())
        {
            File.CreateSymbolicLink(plug, device.Path);
            await Until(served, r => (string?)r["state"] == "open");
            device.Send("0.031 mm\n0.031 mm\n");
            var still = await Until(served, r => (string?)r["text"] == "0.031 mm");
            // Who asks for what is newer waits; the same value again has stood still meanwhile.
            var asked = served.Get($"api/indicator?after={(long)still["seq"]!}");
            device.Send("0.032 mm\n");
            var newer = await asked;
            Assert.Equal("0.032 mm", (string?)newer["text"]);
            Assert.True((long)newer["seq"]! > (long)still["seq"]!);
            Assert.True((long)newer["stillMs"]! >= (long)still["stillMs"]!);
        }
        // It ends when told to, device or not.
        Assert.Equal(0, (await served.Signal("TERM")).Code);
    }

    [Fact]
    public async Task Indicator_NotADevice_SaysSoAndServes()
    {
        using var book = new TempBook();
        var file = Path.Combine(book.Folder, "no-device.txt");
        await File.WriteAllTextAsync(file, "0.1 mm\n", TestContext.Current.CancellationToken);
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--indicator",
            file
        );
        var gone = await Until(served, r => (string?)r["state"] == "gone");
        Assert.Contains("ordinary file", (string?)gone["trouble"], StringComparison.Ordinal);
        Assert.Null(gone["text"]);
    }

    [Fact]
    public async Task Indicator_NoneAskedFor_SaysNone()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        Assert.Equal("none", (string?)(await served.Get("api/indicator?after=0"))["state"]);
    }

    private static async Task<JsonNode> Until(Served served, Func<JsonNode, bool> so)
    {
        var reply = await served.Get("api/indicator");
        for (var tries = 0; !so(reply); tries++)
        {
            Assert.True(tries < 400, $"It stays {reply.ToJsonString()}");
            await Task.Delay(50, TestContext.Current.CancellationToken);
            reply = await served.Get("api/indicator");
        }
        return reply;
    }
}
