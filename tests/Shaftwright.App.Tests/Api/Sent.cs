using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>Edits as a device sends them, written by hand here so that a slip in the program's own writer shows.</summary>
internal static class Sent
{
    public static JsonObject Edit(string job, string path, JsonNode? value, Guid? id = null) =>
        new()
        {
            ["id"] = (id ?? Guid.NewGuid()).ToString(),
            ["jobId"] = job,
            ["at"] = "2026-11-25T09:30:00+01:00",
            ["device"] = "bench",
            ["path"] = path,
            ["value"] = value,
        };

    /// <summary>The edit that begins a job.</summary>
    public static JsonObject Begin(string job) =>
        Edit(job, "", new JsonObject { ["format"] = 1, ["name"] = job });

    public static string Text(this JsonNode? node, string name) => node![name]!.GetValue<string>();

    public static long Number(this JsonNode? node, string name) => node![name]!.GetValue<long>();
}
