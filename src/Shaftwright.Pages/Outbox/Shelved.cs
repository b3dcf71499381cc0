using System.Text.Json.Nodes;
using Shaftwright.JobFile;

namespace Shaftwright.Pages.Outbox;

/// <summary>A job on this device.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Document">The document read.</param>
/// <param name="Json">The document as it is kept.</param>
/// <param name="Version">Counts up with each change on this device.</param>
public sealed record Shelved(string Id, JobDocument Document, JsonObject Json, int Version)
{
    /// <summary>What was measured and decided.</summary>
    public Job Job => Document.Job;

    /// <summary>Its name, or that it has none.</summary>
    public string Title => Job.Name.Length > 0 ? Job.Name : "A job without a name";
}
