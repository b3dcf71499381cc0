using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>The promise "an edit that was answered is kept", against a program that is killed while it writes.</summary>
/// <remarks>A killed program, not a cut mains: what the system holds for the disk survives here. That the log is synced at each
/// commit is SQLite's promise for <c>synchronous=FULL</c>.</remarks>
public class KillTests(ITestOutputHelper output)
{
    private const int Kills = 50;
    private const int Seed = 20261125;

    [Fact]
    public async Task Serve_KilledFiftyTimesWhileEditsArrive_KeepsEveryAnsweredEditOnce()
    {
        using var book = new TempBook();
        var random = new Random(Seed);
        var port = Served.Text(Served.FreePort());
        Device[] devices = [new("kill-a", random.Next()), new("kill-b", random.Next())];
        for (var kill = 0; kill < Kills; kill++)
        {
            // Also while it opens the book; the first time that is while it makes it.
            if (kill % 10 == 0)
                await Served.StartAndKill(
                    book.Folder,
                    TimeSpan.FromMilliseconds(random.Next(150, 700))
                );
            await using var served = await Served.Start(book.Folder, "--port", port);
            await Check(served, devices);
            var posting = Task.WhenAll(devices.Select(d => d.PostUntilDead(served)));
            await Task.Delay(random.Next(400), TestContext.Current.CancellationToken);
            served.Kill();
            await posting;
        }

        Assert.Empty(book.Faults());
        await using (var served = await Served.Start(book.Folder, "--port", port))
        {
            await Check(served, devices);
            foreach (var device in devices)
                await device.PostPending(served);
            await Check(served, devices);
            Assert.Equal((0, ""), await served.Signal("TERM"));
        }
        Assert.Empty(book.Faults());
        foreach (var device in devices)
        {
            output.WriteLine(
                $"{device.Job}: {device.Answered.Count} edits answered; of {device.Cut} requests cut short {device.Arrived} had arrived"
            );
            // Else nothing was tried.
            Assert.True(device.Answered.Count > Kills, "hardly anything was posted");
            Assert.True(device.Cut > Kills / 2, "hardly any request was cut short");
        }
    }

    private static async Task Check(Served served, Device[] devices)
    {
        var history = await served.History();
        var seqs = history.Select(e => e.Number("seq")).ToList();
        Assert.Equal(seqs.Order().Distinct(), seqs);
        foreach (var device in devices)
        {
            var kept = history
                .Select(e => e["edit"]!)
                .Where(e => e.Text("jobId") == device.Job)
                .ToList();
            device.Check(kept);
            if (kept.Count == 0)
                continue;
            var job = await served.Get($"api/jobs/{device.Job}");
            Assert.Equal(kept.Count, job.Number("revision"));
            Assert.Equal(Device.Count(kept.Count), job["document"]!["about"]?.GetValue<string>());
        }
        Assert.All(history, e => Assert.Contains(devices, d => d.Job == e["edit"].Text("jobId")));
    }

    /// <summary>A device that counts: each of its edits writes the next number into its own job, and one not answered is sent again.</summary>
    private sealed class Device(string job, int seed)
    {
        private readonly Random _random = new(seed);
        private int _made;
        private List<JsonObject> _pending = [];
        private bool? _arrived;

        public string Job => job;

        public List<JsonObject> Answered { get; } = [];

        /// <summary>Requests that got no answer.</summary>
        public int Cut { get; private set; }

        /// <summary>Those of them whose edits were in the book.</summary>
        public int Arrived { get; private set; }

        /// <summary>What the job says after so many edits.</summary>
        public static string? Count(int edits) => edits == 1 ? null : $"{edits - 1} edits";

        public async Task PostUntilDead(Served served)
        {
            using var client = served.NewClient();
            try
            {
                while (true)
                    await PostPending(served, client);
            }
            catch (HttpRequestException e) when (e.StatusCode is null)
            {
                Cut++;
            }
            catch (IOException)
            {
                Cut++;
            }
        }

        public async Task PostPending(Served served, HttpClient? client = null)
        {
            if (_pending.Count == 0)
                _pending = [.. Enumerable.Range(0, _random.Next(1, 5)).Select(_ => Next())];
            var replies = await served.Post([.. _pending.Select(e => e.DeepClone())], client);
            var expected = _arrived == true ? "already" : "applied";
            Assert.Equal(_pending.Select(e => e.Text("id")), replies.Select(r => r.Text("id")));
            Assert.All(replies, r => Assert.Equal(expected, r.Text("outcome")));
            Assert.Equal(
                Enumerable.Range(Answered.Count + 1, _pending.Count).Select(n => (long)n),
                replies.Select(r => r.Number("revision"))
            );
            Answered.AddRange(_pending);
            _pending = [];
            _arrived = null;
        }

        /// <summary>What is kept is what was answered, in order, and of one request without an answer all or nothing.</summary>
        public void Check(List<JsonNode> kept)
        {
            _arrived = kept.Count > Answered.Count;
            if (_arrived == true)
                Arrived++;
            List<JsonObject> expected = _arrived == true ? [.. Answered, .. _pending] : Answered;
            Assert.Equal(
                expected.Select(e => (e.Text("id"), e["value"]!.ToJsonString())),
                kept.Select(e => (e.Text("id"), e["value"]!.ToJsonString()))
            );
        }

        private JsonObject Next() =>
            _made++ == 0 ? Sent.Begin(job) : Sent.Edit(job, "/about", Count(_made));
    }
}
