using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Measures;

namespace Shaftwright.Records;

/// <summary>One transaction of edits. Each job is read once, changed in memory and written once.</summary>
internal sealed class OpenPage(
    SqliteConnection db,
    SqliteTransaction transaction,
    DateTimeOffset now
)
{
    private readonly Dictionary<string, Held> _jobs = new(StringComparer.Ordinal);
    private readonly string _now = BookTime.Write(now);

    public EditReply Apply(EditReading sent)
    {
        if (sent.Edit is not { } edit)
            return Refuse(sent, null, sent.Refusals);
        if (Earlier(edit) is { } earlier)
            return earlier.Same(edit)
                ? new(edit.Id, Taken.Already, earlier.Seq, earlier.Revision, [])
                : Refuse(
                    sent,
                    edit.JobId,
                    [
                        new(
                            "id",
                            edit.Id.ToString(),
                            "is the id of another edit, already applied",
                            "an id of its own"
                        ),
                    ]
                );

        var job = Job(edit.JobId);
        var outcome = Edits.TryApply(
            job.Document,
            edit,
            (path, value) => SetterOf(edit.JobId, path, value)
        );
        if (outcome.Document is not { } changed)
            return Refuse(sent, edit.JobId, outcome.Refusals);

        job.Document = changed;
        job.Revision++;
        // The job's row must be there before the first edit may refer to it.
        if (job.Revision == 1)
            Write(edit.JobId, job);
        job.Changed = true;
        var seq = db.ExecuteScalar<long>(
            """
            INSERT INTO edits (id, job, at, device, path, value, was, was_empty, entries, settles, revision, applied_at)
            VALUES (@id, @job, @at, @device, @path, @value, @was, @wasEmpty, @entries, @settles, @revision, @now)
            RETURNING seq
            """,
            new
            {
                id = edit.Id.ToString(),
                job = edit.JobId,
                at = BookTime.Write(edit.At),
                device = edit.Device,
                path = edit.Path,
                value = edit.Value?.ToJsonString(),
                was = edit.Was?.ToJsonString(),
                wasEmpty = edit.WasEmpty,
                entries = Texts(edit.Entries),
                settles = Texts(edit.Settles?.Select(id => id.ToString())),
                revision = job.Revision,
                now = _now,
            },
            transaction
        );
        // It may have been refused before what it builds on had arrived.
        db.Execute(
            "DELETE FROM refused WHERE id = @id AND raw = @raw",
            new { id = edit.Id.ToString(), raw = sent.Raw },
            transaction
        );
        return new(edit.Id, Taken.Applied, seq, job.Revision, []);
    }

    public void Save()
    {
        foreach (var (id, job) in _jobs)
        {
            if (job.Changed)
                Write(id, job);
        }
    }

    private static string? Texts(IEnumerable<string>? texts) =>
        texts is null ? null : new JsonArray([.. texts.Select(t => (JsonNode)t)]).ToJsonString();

    /// <summary>Who set a field to what stands in it: whoever said so last, of the field or of something that it is part of.</summary>
    private Setter? SetterOf(string job, string path, JsonNode? value)
    {
        var rows = db.Query<SetRow>(
            """
            SELECT device, at, path, value FROM edits
            WHERE job = @job AND (path = @path OR path = '' OR substr(@path, 1, length(path) + 1) = path || '/')
            ORDER BY seq DESC LIMIT 200
            """,
            new { job, path },
            transaction
        );
        foreach (var row in rows)
        {
            var said = row.Value is null ? null : JsonNode.Parse(row.Value);
            foreach (var token in FieldPath.Tokens(path[row.Path.Length..], 16) ?? [])
            {
                said = said switch
                {
                    JsonObject o => o[token],
                    JsonArray a when int.TryParse(token, out var i) && i < a.Count => a[i],
                    _ => null,
                };
            }
            if (said?.ToString() == value?.ToString())
                return new(row.Device, BookTime.Read(row.At));
        }
        return null;
    }

    private sealed record SetRow
    {
        public required string Device { get; init; }
        public required string At { get; init; }
        public required string Path { get; init; }
        public string? Value { get; init; }
    }

    private Applied? Earlier(Edit edit) =>
        db.QuerySingleOrDefault<Applied>(
            "SELECT seq, revision, job, path, value FROM edits WHERE id = @id",
            new { id = edit.Id.ToString() },
            transaction
        );

    private Held Job(string id)
    {
        if (_jobs.TryGetValue(id, out var held))
            return held;
        var row = db.QuerySingleOrDefault<Stored>(
            "SELECT document, revision FROM jobs WHERE id = @id",
            new { id },
            transaction
        );
        held = new Held
        {
            Document = row is null ? null : JsonNode.Parse(row.Document)!.AsObject(),
            Revision = row?.Revision ?? 0,
        };
        // Edits speak the current format; a job that an older program kept is brought up to it first.
        if (
            held.Document is { } document
            && FormatHistory.Shipped.Bring(document, out _) is { } current
        )
            held.Document = current;
        _jobs.Add(id, held);
        return held;
    }

    private void Write(string id, Held job) =>
        db.Execute(
            """
            INSERT INTO jobs (id, document, revision, updated) VALUES (@id, @document, @revision, @now)
            ON CONFLICT (id) DO UPDATE SET document = @document, revision = @revision, updated = @now
            """,
            new
            {
                id,
                document = job.Document!.ToJsonString(),
                revision = job.Revision,
                now = _now,
            },
            transaction
        );

    private EditReply Refuse(EditReading sent, string? job, IReadOnlyList<Refusal> refusals)
    {
        db.Execute(
            """
            INSERT INTO refused (id, job, raw, refusals, refused_at) VALUES (@id, @job, @raw, @refusals, @now)
            ON CONFLICT (id, raw) DO NOTHING
            """,
            new
            {
                id = sent.Id?.ToString() ?? "",
                job,
                raw = sent.Raw,
                refusals = JsonSerializer.Serialize(
                    refusals,
                    ExchangeJson.Default.IReadOnlyListRefusal
                ),
                now = _now,
            },
            transaction
        );
        return new(sent.Id, Taken.Refused, null, null, refusals);
    }

    private sealed class Held
    {
        public JsonObject? Document { get; set; }
        public long Revision { get; set; }
        public bool Changed { get; set; }
    }

    private sealed record Stored
    {
        public required string Document { get; init; }
        public long Revision { get; init; }
    }

    private sealed record Applied
    {
        public long Seq { get; init; }
        public long Revision { get; init; }
        public required string Job { get; init; }
        public required string Path { get; init; }
        public string? Value { get; init; }

        public bool Same(Edit edit) =>
            Job == edit.JobId && Path == edit.Path && Value == edit.Value?.ToJsonString();
    }
}
