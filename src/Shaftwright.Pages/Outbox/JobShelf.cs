using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Outbox;

/// <summary>The jobs known on this device, and the one way to change them: edits and the document they make go to the disk
/// together; only then does the shelf, and with it the screen, know of them.</summary>
public sealed class JobShelf(DeviceStore device, TimeProvider clock)
{
    private readonly Dictionary<string, Shelved> _jobs = [];
    private IReadOnlyList<OutboxRow> _waiting = [];
    private string _deviceId = "";

    /// <summary>Raised when a job or the outbox changed.</summary>
    public event Action? Changed;

    /// <summary>Raised when there is something new to send.</summary>
    public event Action? Waits;

    /// <summary>The jobs on the bench, by name.</summary>
    public IReadOnlyList<Shelved> Jobs =>
        [
            .. _jobs
                .Values.Where(j => j.Document.Records.PutAway is null)
                .OrderBy(j => j.Title, StringComparer.OrdinalIgnoreCase),
        ];

    /// <summary>The jobs put away, by name.</summary>
    public IReadOnlyList<Shelved> PutAwayJobs =>
        [
            .. _jobs
                .Values.Where(j => j.Document.Records.PutAway is not null)
                .OrderBy(j => j.Title, StringComparer.OrdinalIgnoreCase),
        ];

    /// <summary>Entries that the laptop has not taken yet, oldest first.</summary>
    public IReadOnlyList<OutboxRow> Waiting => _waiting;

    /// <summary>A job by its id; null when it is not here.</summary>
    public Shelved? Find(string id) => _jobs.GetValueOrDefault(id);

    /// <summary>Reads everything from the device.</summary>
    public async Task Load()
    {
        var settings = await device.Settings();
        if (settings.TryGetValue("device", out var id))
            _deviceId = id;
        else
        {
            _deviceId = device.Word + "-" + Guid.NewGuid().ToString("N")[..8];
            await device.Set("device", _deviceId);
        }
        await Refresh();
    }

    /// <summary>Reads documents and outbox again: another tab or the laptop may have changed them.</summary>
    public async Task Refresh()
    {
        foreach (var row in await device.Documents())
        {
            if (_jobs.TryGetValue(row.Id, out var known) && known.Version == row.Version)
                continue;
            if (Open(row) is { } job)
                _jobs[row.Id] = job;
        }
        _waiting = await device.Outbox();
        Changed?.Invoke();
    }

    /// <summary>Keeps a change of what was measured and decided: the differences become entries.</summary>
    /// <param name="id">The job; a new one if it is not here.</param>
    /// <param name="change">The change, made to the newest job there is on this device.</param>
    /// <param name="drafts">Given the job as it then is, what becomes of drafts by it.</param>
    /// <returns>Null when it is on the device's disk; else why not, in words.</returns>
    public Task<string?> Keep(
        string id,
        Func<Job, Job> change,
        Func<Job, IReadOnlyList<DraftRow>> drafts
    )
    {
        ArgumentNullException.ThrowIfNull(drafts);
        return KeepDocument(
            id,
            known => (known ?? JobDocument.Empty) with { Job = change(known?.Job ?? new Job()) },
            kept => drafts(kept.Job)
        );
    }

    /// <summary>Keeps what a job did not take, and tells who shows it.</summary>
    public async Task KeepDraft(string key, string? text)
    {
        await device.KeepDraft(key, text);
        Changed?.Invoke();
    }

    /// <summary>Keeps a change of a document.</summary>
    public async Task<string?> KeepDocument(
        string id,
        Func<JobDocument?, JobDocument> change,
        Func<JobDocument, IReadOnlyList<DraftRow>>? drafts = null
    )
    {
        ArgumentNullException.ThrowIfNull(change);
        // Another tab may keep a newer document between reading and writing; then the change is made to that one.
        for (var attempt = 0; attempt < 5; attempt++)
        {
            var known = Find(id);
            var before = known is null ? null : JobJson.WriteObject(known.Document);
            var changed = change(known?.Document);
            var after = JobJson.WriteObject(changed);
            var left = drafts?.Invoke(changed) ?? [];
            var at = clock.GetLocalNow();
            var edits = Changes.Between(id, before, after, at, _deviceId);
            if (edits.Count == 0)
            {
                foreach (var draft in left)
                    await KeepDraft(draft.Key, draft.Text);
                return null;
            }
            var json = Apply(known?.Json, edits, out var refusals);
            if (before is not null && (json is null || !IsAs(json, after)))
            {
                // Field by field a shaft may be out of order on the way, where stage by stage it is not; and entries that
                // changed places cannot be said field by field at all.
                edits = Changes.ByStage(id, before, after, at, _deviceId);
                json = Apply(known?.Json, edits, out refusals);
            }
            if (json is null)
                return string.Join(" ", refusals);
            var rows = edits
                .Select(e => new OutboxRow(e.Id.ToString(), id, e.Path, EditJson.Write(e)))
                .ToList();
            if (await device.Keep(id, json.ToJsonString(), known?.Version ?? 0, rows, left))
            {
                await Refresh();
                Waits?.Invoke();
                return null;
            }
            await Refresh();
        }
        return "Another window keeps changing this job. Close it and try again.";
    }

    /// <summary>Signs an operation off for the answer it has, or takes its signature back. Both are records; neither erases
    /// anything.</summary>
    public Task<string?> Sign(
        string id,
        Operation operation,
        string by,
        string note,
        bool withdraw
    ) =>
        KeepDocument(
            id,
            known =>
            {
                var document = known ?? JobDocument.Empty;
                var signOff = new SignOff(
                    Guid.NewGuid().ToString("N"),
                    operation.Code,
                    clock.GetLocalNow(),
                    by,
                    note
                )
                {
                    Withdrawn = withdraw,
                    Said = withdraw ? "" : operation.Answer?.In(Display.Metric) ?? "",
                };
                return document with
                {
                    Records = document.Records with
                    {
                        SignOffs = [.. document.Records.SignOffs, signOff],
                    },
                };
            }
        );

    /// <summary>Puts a job away, or takes it out again.</summary>
    public Task<string?> PutAway(string id, bool back = false) =>
        KeepDocument(
            id,
            known =>
            {
                var document = known ?? JobDocument.Empty;
                return document with
                {
                    Records = document.Records with { PutAway = back ? null : clock.GetLocalNow() },
                };
            }
        );

    /// <summary>Settles a field on which devices disagree.</summary>
    /// <param name="id">The job.</param>
    /// <param name="field">The field, as it was shown.</param>
    /// <param name="value">What counts.</param>
    /// <returns>Null when it is on the device's disk; else why not, in words.</returns>
    public async Task<string?> Settle(string id, Disagreement field, JsonNode? value)
    {
        for (var attempt = 0; attempt < 5; attempt++)
        {
            if (Find(id) is not { } known)
                return "This job is not here any more.";
            var edit = Disagreements.Settle(
                id,
                known.Document,
                field,
                value,
                clock.GetLocalNow(),
                _deviceId
            );
            if (Apply(known.Json, [edit], out var refusals) is not { } json)
                return string.Join(" ", refusals);
            var row = new OutboxRow(edit.Id.ToString(), id, edit.Path, EditJson.Write(edit));
            if (await device.Keep(id, json.ToJsonString(), known.Version, [row], []))
            {
                await Refresh();
                Waits?.Invoke();
                return null;
            }
            await Refresh();
        }
        return "Another window keeps changing this job. Close it and try again.";
    }

    /// <summary>A device in a sentence; this one by its own word.</summary>
    public string Called(string by) =>
        by == _deviceId ? $"this {device.Word}" : Disagreements.Called(by);

    /// <summary>Whether a document came out as it was meant to, conflicts aside: those that were settled on the way are gone.</summary>
    private static bool IsAs(JsonObject json, JsonObject meant)
    {
        return JobJson.Read(json).Document is { } come
            && JobJson.Read(meant).Document is { } wanted
            && JobJson.Write(Bare(come)) == JobJson.Write(Bare(wanted));

        static JobDocument Bare(JobDocument d) =>
            d with
            {
                Records = d.Records with { Conflicts = [] },
            };
    }

    private static JsonObject? Apply(
        JsonObject? json,
        IReadOnlyList<Edit> edits,
        out IReadOnlyList<Refusal> refusals
    )
    {
        refusals = [];
        foreach (var edit in edits)
        {
            var outcome = Edits.TryApply(json, edit);
            if (outcome.Document is not { } next)
            {
                refusals = outcome.Refusals;
                return null;
            }
            json = next;
        }
        return json;
    }

    private static Shelved? Open(DocumentRow row) =>
        JsonNode.Parse(row.Text) is JsonObject json
        && JobJson.Read(json) is { Document: { } document }
            ? new(row.Id, document, json, row.Version)
            : null;
}
