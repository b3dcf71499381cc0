using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Records.Tests.JobFile;

namespace Shaftwright.Records.Tests;

public sealed class JobBookTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly JobBook _book;

    public JobBookTests() => _book = JobBook.Open(_folder.Path);

    public void Dispose()
    {
        _book.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Apply_AJobAndChangesToIt_AreThereAfterReopening()
    {
        var replies = _book.Apply(
            Make.Set("left", "", ExampleJob.Text),
            Make.Set("left", "/corner/readings/0/in", "\"7 mm\""),
            Make.Set("left", "/length/chosen", "\"455.1 mm\"")
        );
        Assert.Equal([1L, 2L, 3L], replies.Select(r => r.Revision!.Value));
        Assert.All(replies, r => Assert.True(r.Outcome == Taken.Applied));
        _book.Dispose();

        using var again = JobBook.Open(_folder.Path);
        var job = again.Find("left")!;
        Assert.Equal(3, job.Revision);
        Assert.Equal(replies[2].Seq, job.Seq);
        var read = JobJson.Read(job.Document.AsObject()).Document!;
        Assert.Equal("7 mm", read.Job.Corner!.Readings[0].In!.Typed);
        Assert.Equal("455.1 mm", read.Job.Length!.Chosen!.Typed);
        Assert.Equal("118 lbf·ft", read.Job.Car!.EngineTorque!.Typed);
        Assert.Empty(again.Faults());
    }

    [Fact]
    public void Apply_TheSameEditAgain_IsAcknowledgedWithoutEffect()
    {
        _book.Apply(Make.Job("a"));
        var edit = Make.Set("a", "/corner/readings/-", """{"travel":10}""");
        var first = _book.Apply(edit)[0];
        _book.Apply(Make.Set("a", "/name", "\"later\""));
        var second = _book.Apply(edit, edit);

        Assert.All(second, r => Assert.True(r.Outcome == Taken.Already));
        Assert.All(second, r => Assert.Equal(first.Seq, r.Seq));
        Assert.Equal(3, _book.Find("a")!.Revision);
        Assert.Single(_book.Find("a")!.Document["corner"]!["readings"]!.AsArray());
    }

    [Fact]
    public void Apply_AnotherEditUnderAUsedId_IsRefusedAndKept()
    {
        var edit = Make.Job("a");
        _book.Apply(edit);
        var reply = _book.Apply(
            edit with
            {
                Value = JsonNode.Parse("""{"format":1,"name":"other"}"""),
            }
        )[0];
        Assert.False(reply.Accepted);
        Assert.Equal("id", reply.Refusals[0].Field);
        Assert.Contains("other", Assert.Single(_book.Refused()).Raw, StringComparison.Ordinal);
    }

    [Fact]
    public void Apply_ABadEditAmongGoodOnes_IsRefusedAloneAndKept()
    {
        var bad = Make.Set("a", "/corner/trialLength", "\"27 bananas\"");
        var replies = _book.Apply(Make.Job("a"), bad, Make.Set("a", "/name", "\"after\""));

        Assert.Equal([true, false, true], replies.Select(r => r.Accepted));
        Assert.Equal("corner.trialLength", Assert.Single(replies[1].Refusals).Field);
        Assert.Equal("after", (string?)_book.Find("a")!.Document["name"]);
        Assert.Equal(2, _book.Find("a")!.Revision);
        Assert.Contains(
            "27 bananas",
            Assert.Single(_book.Refused("a")).Raw,
            StringComparison.Ordinal
        );
        _book.Apply(bad);
        Assert.Single(_book.Refused());
    }

    [Fact]
    public void Apply_AnEditBeforeItsJob_IsTakenWhenTheJobHasCome()
    {
        var early = Make.Set("a", "/name", "\"early\"");
        Assert.False(_book.Apply(early)[0].Accepted);
        Assert.Null(_book.Find("a"));
        Assert.Single(_book.Refused());
        Assert.All(_book.Apply(Make.Job("a"), early), r => Assert.True(r.Accepted));
        Assert.Equal("early", (string?)_book.Find("a")!.Document["name"]);
        Assert.Empty(_book.Refused());
    }

    [Fact]
    public void Apply_WhatCouldNotBeReadAsAnEdit_IsKeptAsSent()
    {
        var sent = EditJson.Read(
            """[{"id":"x","note":"27.3 at the spline"},{"jobId":"a"}]""",
            out _
        );
        Assert.All(_book.Apply(sent), r => Assert.False(r.Accepted));
        Assert.Contains("27.3 at the spline", _book.Refused()[0].Raw, StringComparison.Ordinal);
        Assert.Equal(2, _book.Refused().Count);
    }

    [Fact]
    public void Jobs_PutAway_LeavesTheListAndComesBack()
    {
        _book.Apply(Make.Job("a", "first"), Make.Job("b", "second"));
        _book.Apply(Make.Set("a", "/records/putAway", "\"2026-05-05T08:00:00Z\""));
        Assert.Equal(["second"], _book.Jobs().Select(j => j.Name));
        Assert.Equal(["first", "second"], _book.Jobs(putAwayToo: true).Select(j => j.Name).Order());
        Assert.NotNull(_book.Jobs(true).Single(j => j.Id == "a").PutAway);
        Assert.NotNull(_book.Find("a"));
        _book.Apply(Make.Set("a", "/records/putAway", null));
        Assert.Equal(2, _book.Jobs().Count);
    }

    [Fact]
    public void Since_AnotherDevice_CanFollowAndRebuildTheJob()
    {
        _book.Apply(Make.Set("a", "", ExampleJob.Text), Make.Job("b"));
        _book.Apply(
            Make.Set("a", "/corner/readings/1", null),
            Make.Set("b", "/name", "\"x\""),
            Make.Set("a", "/weld", null)
        );
        var history = _book.Since(0, "a");
        Assert.False(history.More);
        JsonObject? rebuilt = null;
        foreach (var applied in history.Edits)
            rebuilt = Edits.TryApply(rebuilt, applied.Edit).Document;
        Assert.True(JsonNode.DeepEquals(_book.Find("a")!.Document, rebuilt));
        Assert.Equal(TimeSpan.FromHours(2), history.Edits[0].Edit.At.Offset);

        Assert.Equal(2, _book.Since(history.Edits[0].Seq, "a").Edits.Count);
        Assert.Equal(5, _book.Since(0).Edits.Count);
        Assert.Empty(_book.Since(history.Latest, "a").Edits);
        Assert.Equal(history.Latest, _book.Since(history.Latest).Latest);
    }

    [Fact]
    public void Since_ALongHistory_ComesInStretches()
    {
        _book.Apply([
            Make.Job("a"),
            .. Enumerable
                .Range(0, JobBook.MostHistory + 5)
                .Select(i => Make.Set("a", "/name", $"\"{i}\"")),
        ]);
        var first = _book.Since(0);
        Assert.True(first.More);
        Assert.Equal(JobBook.MostHistory, first.Edits.Count);
        var second = _book.Since(first.Latest);
        Assert.False(second.More);
        Assert.Equal(6, second.Edits.Count);
    }

    /// <summary>Two programs, each with several writers, some sending the same edits.</summary>
    [Fact]
    public async Task Apply_ManyWritersAtOnce_AppliesEveryEditOnce()
    {
        const int writers = 6;
        const int each = 15;
        _book.Apply(Make.Job("shared"));
        var shared = Enumerable
            .Range(0, each)
            .Select(i => Make.Set("shared", "/corner/readings/-", $$"""{"travel":{{i}}}"""))
            .ToList();
        using var other = JobBook.Open(_folder.Path);

        await Task.WhenAll(
            Enumerable
                .Range(0, writers)
                .Select(w =>
                    Task.Run(() =>
                    {
                        var book = w % 2 == 0 ? _book : other;
                        var own = Make.Job($"own-{w}");
                        Assert.True(book.Apply(own)[0].Accepted);
                        foreach (var edit in shared)
                        {
                            Assert.True(book.Apply(edit)[0].Accepted);
                            Assert.True(
                                book.Apply(Make.Set($"own-{w}", "/name", $"\"{edit.Id}\""))[
                                    0
                                ].Accepted
                            );
                        }
                    })
                )
        );

        Assert.Equal(each, _book.Find("shared")!.Document["corner"]!["readings"]!.AsArray().Count);
        Assert.Equal(each + 1, _book.Find("shared")!.Revision);
        for (var w = 0; w < writers; w++)
            Assert.Equal(each + 1, _book.Find($"own-{w}")!.Revision);
        var seqs = _book.Since(0).Edits.Select(e => e.Seq).ToList();
        Assert.Equal(seqs.Distinct().Order(), seqs);
        Assert.Empty(_book.Faults());
    }
}
