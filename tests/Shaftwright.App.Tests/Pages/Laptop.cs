using System.Text;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The laptop as another device sees it.</summary>
internal sealed class Laptop(string address) : IDisposable
{
    private readonly HttpClient _client = new() { BaseAddress = new Uri(address) };

    public void Dispose() => _client.Dispose();

    /// <summary>Begins a job with what is given beside its name; answers its id.</summary>
    public async Task<string> Begin(string name, JsonObject? stages = null)
    {
        var id = Guid.NewGuid().ToString("N");
        var document = stages ?? [];
        document["format"] = 1;
        document["name"] = name;
        await Send(Sent.Edit(id, "", document));
        return id;
    }

    /// <summary>Another device changes one field.</summary>
    public Task Change(string job, string path, string value) => Send(Sent.Edit(job, path, value));

    /// <summary>Another device changes more than one field.</summary>
    public Task Set(string job, string path, JsonNode value) => Send(Sent.Edit(job, path, value));

    /// <summary>A job's document.</summary>
    public async Task<JsonNode> Document(string job) =>
        JsonNode.Parse(
            await _client.GetStringAsync(
                new Uri("api/jobs/" + job, UriKind.Relative),
                TestContext.Current.CancellationToken
            )
        )!["document"]!;

    /// <summary>Waits until a job's document is as said; answers it. A job begun on a phone may not have arrived yet.</summary>
    public async Task<JsonNode> Until(string job, Func<JsonNode, bool> isSo)
    {
        for (var i = 0; ; i++)
        {
            JsonNode? document = null;
            try
            {
                document = await Document(job);
            }
            catch (HttpRequestException e) when (e.StatusCode == System.Net.HttpStatusCode.NotFound)
            { }
            if (document is not null && isSo(document))
                return document;
            Assert.True(i < 150, "The laptop never had it: " + document?.ToJsonString());
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Waits until a phone's copy of a job holds a text.</summary>
    public static async Task Reaches(Phone phone, string job, string text)
    {
        for (var i = 0; ; i++)
        {
            var row = (await phone.Rows("documents")).FirstOrDefault(r => (string?)r!["id"] == job);
            if (((string?)row?["text"] ?? "").Contains(text, StringComparison.Ordinal))
                return;
            Assert.True(i < 150, $"The phone never had {text}: {row?["text"]}");
            // As a hand that takes the phone up again.
            await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
    }

    private async Task Send(JsonObject edit)
    {
        using var body = new StringContent(
            new JsonArray(edit).ToJsonString(),
            Encoding.UTF8,
            "application/json"
        );
        using var response = await _client.PostAsync(
            new Uri("api/edits", UriKind.Relative),
            body,
            TestContext.Current.CancellationToken
        );
        var said = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("\"applied\"", said, StringComparison.Ordinal);
    }
}
