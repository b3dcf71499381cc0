using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Verbs;

namespace Shaftwright.App.Tests.Api;

/// <summary>How <c>serve</c> starts, fails to start, and stops.</summary>
public class ServeTests
{
    [Fact]
    public async Task Serve_OnATakenPort_EndsWithCodeTwoAndWords()
    {
        using var book = new TempBook();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = Served.Text(((IPEndPoint)other.LocalEndpoint).Port);

        var ran = await Shell.Run(["serve", "--port", port, "--data", book.Folder]);
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.StartsWith($"Port {port} is taken", ran.Error, StringComparison.Ordinal);
        Assert.Contains("--port", ran.Error, StringComparison.Ordinal);
        Assert.Single(ran.Error.Trim().Split('\n'));
    }

    [Fact]
    public async Task Serve_Twice_LeavesTheFirstServing()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            Served.Text(Served.FreePort())
        );
        var ran = await Shell.Run([
            "serve",
            "--port",
            Served.Text(served.Port),
            "--data",
            book.Folder,
        ]);
        Assert.Equal(2, ran.Code);
        await served.Post([Sent.Begin("after")]);
        Assert.Single(await served.History());
    }

    [Theory]
    [InlineData("65536")]
    [InlineData("-1")]
    [InlineData("http")]
    public async Task Serve_OnNoPort_EndsWithCodeTwoAndWords(string port)
    {
        var ran = await Shell.Run(["serve", "--port", port]);
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.Contains("port", ran.Error, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Serve_WithoutAJobBookToOpen_EndsWithCodeTwoAndChangesNothing()
    {
        using var book = new TempBook();
        const string Text = "This is a letter, not a database. It stays as it is.";
        await File.WriteAllTextAsync(book.File, Text, TestContext.Current.CancellationToken);

        var ran = await Shell.Run(["serve", "--port", "0", "--data", book.Folder]);
        Assert.Equal(2, ran.Code);
        Assert.Contains("not a job book", ran.Error, StringComparison.Ordinal);
        Assert.Equal(
            Text,
            await File.ReadAllTextAsync(book.File, TestContext.Current.CancellationToken)
        );

        var inFile = await Shell.Run(["serve", "--port", "0", "--data", book.File]);
        Assert.Equal(2, inFile.Code);
        Assert.Contains("--data", inFile.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TERM")]
    [InlineData("INT")]
    public async Task Serve_ToldToStop_EndsWithCodeZeroAndOneWholeFile(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no signals.");
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        await served.Post([Sent.Begin("kept")]);

        Assert.Equal((0, ""), await served.Signal(signal));
        // The log is folded in: the one file can be copied.
        Assert.Equal([book.File], Directory.GetFiles(book.Folder).Order(StringComparer.Ordinal));
        Assert.Empty(book.Faults());
        Assert.Equal(["kept"], book.Column("SELECT id FROM jobs"));
    }

    [Fact]
    public async Task Serve_TheDemoAgain_LeavesWhatWasChanged()
    {
        const string Changed = "demo-grass-track-left-rear";
        const string PutAway = "demo-electric-pickup-right-front";
        const string Left = "demo-hill-climb-right-rear";
        using var book = new TempBook();
        JsonNode before;
        await using (var served = await Served.Start(book.Folder, "--demo", "--port", "0"))
        {
            Assert.True((await served.Get("api/health"))["demo"]!.GetValue<bool>());
            Assert.Equal([PutAway, Changed, Left], await Ids(served, "api/jobs"));
            foreach (var id in new[] { Changed, PutAway, Left })
                Assert.True(
                    JsonNode.DeepEquals(
                        await Example(id),
                        (await served.Get($"api/jobs/{id}"))["document"]
                    ),
                    id
                );
            var replies = await served.Post([
                Sent.Edit(Changed, "/name", "Mine now"),
                Sent.Edit(PutAway, "/records/putAway", "2026-11-25T09:30:00+01:00"),
            ]);
            Assert.All(replies, r => Assert.Equal("applied", r.Text("outcome")));
            before = await Standing(served);
            Assert.Equal((0, ""), await served.Signal("TERM"));
        }
        await using (var served = await Served.Start(book.Folder, "--demo", "--port", "0"))
        {
            Assert.True(JsonNode.DeepEquals(before, await Standing(served)));
            Assert.Equal([Changed, Left], await Ids(served, "api/jobs"));
            Assert.Equal(
                "Mine now",
                (await served.Get($"api/jobs/{Changed}"))["document"].Text("name")
            );
        }
    }

    [Fact]
    public async Task Serve_ARequestMeantForAnotherBook_IsRefusedAndChangesNothing()
    {
        using var book = new TempBook();
        string id;
        await using (var served = await Served.Start(book.Folder, "--port", "0"))
            id = (await served.Get("api/health")).Text("book");
        using var otherBook = new TempBook();
        await using var other = await Served.Start(otherBook.Folder, "--port", "0");
        var otherId = (await other.Get("api/health")).Text("book");
        Assert.NotEqual(id, otherId);

        using var client = other.NewClient();
        client.DefaultRequestHeaders.Add("Shaftwright-Book", id);
        using var content = new StringContent(
            new JsonArray(Sent.Begin("a")).ToJsonString(),
            System.Text.Encoding.UTF8,
            "application/json"
        );
        using var sent = await client.PostAsync(
            new Uri("api/edits", UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Conflict, sent.StatusCode);
        Assert.Contains("another job book", (await Served.Json(sent)).Text("problem"));
        using var asked = await client.GetAsync(
            new Uri("api/jobs", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        using var health = await client.GetAsync(
            new Uri("api/health", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(otherId, (await Served.Json(health)).Text("book"));
        Assert.Empty(await other.History());

        using var right = other.NewClient();
        right.DefaultRequestHeaders.Add("Shaftwright-Book", otherId);
        Assert.Single(await other.Post([Sent.Begin("a")], right));
        Assert.Single(await other.History());

        // The first book is the same one when it is served again.
        await using var again = await Served.Start(book.Folder, "--port", "0");
        Assert.Equal(id, (await again.Get("api/health")).Text("book"));
    }

    [Fact]
    public async Task Serve_WithoutTheDemo_BeginsEmpty()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        Assert.False((await served.Get("api/health"))["demo"]!.GetValue<bool>());
        Assert.Empty((await served.Get("api/jobs?putAway=true")).AsArray());
        Assert.Empty(await served.History());
    }

    [Fact]
    public async Task File_OfAJob_IsReadByTheVerbs()
    {
        const string Job = "demo-grass-track-left-rear";
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--demo", "--port", "0");
        using var response = await served.Client.GetAsync(
            new Uri($"api/jobs/{Job}/file", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(
            $"{Job}.swjob.json",
            response.Content.Headers.ContentDisposition?.FileName?.Trim('"')
        );
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(
            await Shell.Run(["length", "examples/grass-track-left-rear.swjob.json"]),
            await Shell.Run(["length", "-"], text)
        );
    }

    private static async Task<JsonNode> Example(string id) =>
        JsonNode.Parse(
            await File.ReadAllTextAsync(
                Path.Combine(
                    Drawings.Samples.Repository,
                    "examples",
                    id["demo-".Length..] + ".swjob.json"
                ),
                TestContext.Current.CancellationToken
            )
        )!;

    private static async Task<IEnumerable<string>> Ids(Served served, string path) =>
        (await served.Get(path)).AsArray().Select(j => j.Text("id")).Order(StringComparer.Ordinal);

    private static async Task<JsonNode> Standing(Served served) =>
        new JsonArray(
            await served.Get("api/jobs?putAway=true"),
            await served.Get("api/edits?since=0")
        );
}
