using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Pages.Link;

/// <summary>What came back from the laptop.</summary>
/// <param name="Reply">The answer; null when there is none.</param>
/// <param name="Trouble">Why there is none, in words; null when there is one.</param>
/// <param name="Status">The kind of refusal; null when the laptop was not reached or all is well.</param>
public sealed record Asked<T>(T? Reply, string? Trouble, HttpStatusCode? Status = null)
    where T : class;

/// <summary>Asks the laptop about the garage link.</summary>
public sealed class LinkClient(HttpClient http, DeviceStore device)
{
    /// <summary>How this device stands with the laptop.</summary>
    public Task<Asked<HereReply>> Here() => Get("api/link/here", LinkJson.Default.HereReply);

    /// <summary>The link, as only the laptop itself may see it.</summary>
    public Task<Asked<LinkReply>> Link() => Get("api/link", LinkJson.Default.LinkReply);

    /// <summary>A new code, for one of the laptop's addresses.</summary>
    public Task<Asked<CodeReply>> Code(string at) =>
        Post(
            "api/link/code",
            JsonContent.Create(new CodeRequest(at), LinkJson.Default.CodeRequest),
            LinkJson.Default.CodeReply
        );

    /// <summary>Pairs this device.</summary>
    public Task<Asked<HereReply>> Pair(string code, string name) =>
        Post(
            "api/link/pair",
            JsonContent.Create(new PairRequest(code, name), LinkJson.Default.PairRequest),
            LinkJson.Default.HereReply
        );

    /// <summary>Takes a phone off the list, or lets it in again.</summary>
    public Task<Asked<LinkReply>> Revoke(string id, bool off) =>
        Post(
            $"api/link/devices/{Uri.EscapeDataString(id)}/{(off ? "off" : "in")}",
            null,
            LinkJson.Default.LinkReply
        );

    private Task<Asked<T>> Get<T>(string path, JsonTypeInfo<T> type)
        where T : class => Ask(() => http.GetAsync(new Uri(path, UriKind.Relative)), type);

    private Task<Asked<T>> Post<T>(string path, HttpContent? body, JsonTypeInfo<T> type)
        where T : class => Ask(() => http.PostAsync(new Uri(path, UriKind.Relative), body), type);

    private async Task<Asked<T>> Ask<T>(Func<Task<HttpResponseMessage>> ask, JsonTypeInfo<T> type)
        where T : class
    {
        try
        {
            using var response = await ask();
            if (response.IsSuccessStatusCode)
                return new(await response.Content.ReadFromJsonAsync(type), null);
            var trouble = await response.Content.ReadFromJsonAsync(
                ExchangeJson.Default.TroubleReply
            );
            return new(null, trouble?.Problem ?? "The laptop refused that.", response.StatusCode);
        }
        catch (Exception e)
            when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            return new(
                null,
                $"The laptop does not answer. Is Shaftwright running there, and is this {device.Word} in the same network?"
            );
        }
    }
}
