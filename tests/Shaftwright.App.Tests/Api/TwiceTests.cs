using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>An edit counts once, by its id, however often and by whomever it is sent.</summary>
public class TwiceTests
{
    private const string Job = "twice";

    [Fact]
    public async Task Edits_SentByTwoClientsAtOnce_ApplyOnce()
    {
        const int Edits = 40;
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        using var other = served.NewClient();
        await served.Post([Sent.Begin(Job)]);
        for (var i = 0; i < Edits; i++)
        {
            // An append shows in the document when it is applied twice.
            var edit = Sent.Edit(
                Job,
                "/records/signOffs/-",
                new JsonObject
                {
                    ["id"] = $"s{i}",
                    ["operation"] = "cut",
                    ["at"] = "2026-11-25T09:30:00+01:00",
                }
            );
            var replies = await Task.WhenAll(
                Task.Run(() => served.Post([edit.DeepClone()])),
                Task.Run(() => served.Post([edit.DeepClone()], other))
            );
            Assert.Equal(
                ["already", "applied"],
                replies.Select(r => r[0].Text("outcome")).Order(StringComparer.Ordinal)
            );
            Assert.Single(replies.Select(r => r[0].Number("seq")).Distinct());
            Assert.Single(replies.Select(r => r[0].Number("revision")).Distinct());
        }
        var job = await served.Get($"api/jobs/{Job}");
        Assert.Equal(Edits + 1, job.Number("revision"));
        Assert.Equal(Edits, job["document"]!["records"]!["signOffs"]!.AsArray().Count);
        Assert.Equal(Edits + 1, (await served.History()).Count);
    }

    [Fact]
    public async Task Edits_RepeatedLater_AnswerAlreadyAndUndoNothing()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var first = Sent.Edit(Job, "/about", "first");
        await served.Post([Sent.Begin(Job), first.DeepClone()]);
        await served.Post([Sent.Edit(Job, "/about", "second")]);

        var again = Assert.Single(await served.Post([first.DeepClone()]));
        Assert.Equal("already", again.Text("outcome"));
        Assert.Equal(2, again.Number("revision"));
        Assert.Equal("second", (await served.Get($"api/jobs/{Job}"))["document"].Text("about"));
    }

    [Fact]
    public async Task Edits_TwiceInOneRequest_ApplyOnce()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var begin = Sent.Begin(Job);
        var replies = await served.Post([begin.DeepClone(), begin.DeepClone()]);
        Assert.Equal(["applied", "already"], replies.Select(r => r.Text("outcome")));
        Assert.Single(await served.History());
    }

    [Fact]
    public async Task Edits_OneIdForAnotherEdit_IsRefusedWithWordsAndKept()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var id = Guid.NewGuid();
        await served.Post([Sent.Begin(Job), Sent.Edit(Job, "/about", "first", id)]);

        var replies = await served.Post([
            Sent.Edit(Job, "/about", "other", id),
            Sent.Edit(Job, "/name", "Still taken"),
        ]);
        Assert.Equal(["refused", "applied"], replies.Select(r => r.Text("outcome")));
        Assert.Contains("another edit", replies[0].Text("reason"), StringComparison.Ordinal);
        var document = (await served.Get($"api/jobs/{Job}"))["document"];
        Assert.Equal("first", document.Text("about"));
        Assert.Equal("Still taken", document.Text("name"));
        var refused = Assert.Single((await served.Get("api/refused")).AsArray());
        Assert.Contains("other", refused.Text("raw"), StringComparison.Ordinal);
    }
}
