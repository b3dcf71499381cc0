using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Pages.Outbox;

/// <summary>A photo on this device.</summary>
/// <param name="Name">SHA-256 of its bytes.</param>
/// <param name="State"><c>waiting</c>, <c>sent</c> or <c>refused</c>.</param>
/// <param name="Reason">Why the laptop refused it.</param>
public sealed record PhotoRow(string Name, string State, string? Reason);

/// <summary>Photos: small and without notes of the camera, on the device's disk before anybody is told, and sent when the laptop is
/// there. Each is named by its own hash, so that sending one twice, or once cut short, does no harm.</summary>
public sealed class Photos : IDisposable
{
    private readonly IJSRuntime _js;
    private readonly HttpClient _http;
    private readonly Sender _sender;
    private IJSObjectReference? _module;
    private IReadOnlyList<PhotoRow> _rows = [];
    private bool _busy;

    /// <summary>Makes one; there is one.</summary>
    public Photos(IJSRuntime js, HttpClient http, Sender sender)
    {
        ArgumentNullException.ThrowIfNull(sender);
        (_js, _http, _sender) = (js, http, sender);
        _sender.Changed += Try;
    }

    /// <summary>Raised when a photo was kept, sent or refused.</summary>
    public event Action? Changed;

    private IJSObjectReference Module =>
        _module ?? throw new InvalidOperationException("The photos are not open yet.");

    /// <summary>Opens what belongs to a job book, before the network may go.</summary>
    public async Task Open(string book)
    {
        _module = await _js.InvokeAsync<IJSObjectReference>("import", "./bench.js");
        await _module.InvokeVoidAsync("openPhotos", book);
        await Refresh();
    }

    /// <summary>How a photo stands on this device; null when it is not here.</summary>
    public PhotoRow? Find(string name) => _rows.FirstOrDefault(r => r.Name == name);

    /// <summary>Photos that the laptop has not taken yet.</summary>
    public int Waiting => _rows.Count(r => r.State == "waiting");

    /// <summary>Takes what a file box holds. When this returns a name, the photo is on the device's disk.</summary>
    /// <returns>Its name; null when it was no picture that this browser can read.</returns>
    /// <exception cref="JSException">The device would not keep it.</exception>
    public async Task<string?> Take(ElementReference input)
    {
        if (await Module.InvokeAsync<byte[]?>("shrink", input) is not { Length: > 0 } bytes)
            return null;
        var name = NameOf(bytes);
        await Module.InvokeVoidAsync("keepPhoto", name, bytes, "waiting");
        await Refresh();
        _ = Send();
        return name;
    }

    /// <summary>An address to show a photo by, from this device or else from the laptop; null when neither has it. It is let go
    /// by <see cref="Let"/>.</summary>
    public async Task<string?> Url(string name)
    {
        if (await Module.InvokeAsync<string?>("photoUrl", name) is { } url)
            return url;
        if (!await Fetch(name))
            return null;
        return await Module.InvokeAsync<string?>("photoUrl", name);
    }

    /// <summary>Lets an address go.</summary>
    public ValueTask Let(string url) => Module.InvokeVoidAsync("letUrl", url);

    /// <summary>Width and height in pixels; null when it is not on this device.</summary>
    public async Task<(int Width, int Height)?> Size(string name) =>
        await Module.InvokeAsync<int[]?>("photoSize", name) is [var w, var h] ? (w, h) : null;

    /// <summary>A piece of a photo, 4 bytes a pixel: red, green, blue, opacity; null when it is not on this device.</summary>
    public ValueTask<byte[]?> Pixels(string name, int x, int y, int width, int height) =>
        Module.InvokeAsync<byte[]?>("pixels", name, x, y, width, height);

    /// <summary>Where a finger is on a picture, in parts of its width and height.</summary>
    public async Task<(double X, double Y)> Within(
        ElementReference element,
        double clientX,
        double clientY
    )
    {
        var at = await Module.InvokeAsync<double[]>("within", element, clientX, clientY);
        return (at[0], at[1]);
    }

    /// <inheritdoc/>
    public void Dispose() => _sender.Changed -= Try;

    private static string NameOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private void Try()
    {
        if (_sender is { Reached: true, OtherBook: false })
            _ = Send();
    }

    private async Task Refresh()
    {
        _rows =
            JsonSerializer.Deserialize(
                await Module.InvokeAsync<string>("photoRows"),
                PhotoJson.Default.PhotoRowArray
            ) ?? [];
        Changed?.Invoke();
    }

    private async Task Send()
    {
        if (_busy || _module is null)
            return;
        _busy = true;
        try
        {
            // Another tab may have taken one.
            await Refresh();
            foreach (var photo in _rows.Where(r => r.State == "waiting").ToList())
            {
                if (await Module.InvokeAsync<byte[]?>("photoBytes", photo.Name) is not { } bytes)
                    continue;
                using var body = new ByteArrayContent(bytes);
                body.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
                using var response = await _http.PutAsync(At(photo.Name), body);
                if (
                    response.StatusCode
                    is HttpStatusCode.BadRequest
                        or HttpStatusCode.RequestEntityTooLarge
                        or HttpStatusCode.UnsupportedMediaType
                )
                {
                    var why = await response.Content.ReadFromJsonAsync(
                        ExchangeJson.Default.TroubleReply
                    );
                    await Module.InvokeVoidAsync("statePhoto", photo.Name, "refused", why?.Problem);
                }
                else
                {
                    response.EnsureSuccessStatusCode();
                    // Only its own answer counts: something else may answer at the laptop's address.
                    var reply = await response.Content.ReadFromJsonAsync(
                        ExchangeJson.Default.PhotoReply
                    );
                    if (reply?.Name == photo.Name)
                        await Module.InvokeVoidAsync("statePhoto", photo.Name, "sent", null);
                }
                await Refresh();
            }
        }
        catch (Exception e)
            when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            // No network or no room there: it stays here and is tried again.
        }
        finally
        {
            _busy = false;
        }
    }

    private async Task<bool> Fetch(string name)
    {
        try
        {
            var bytes = await _http.GetByteArrayAsync(At(name));
            if (NameOf(bytes) != name)
                return false;
            await Module.InvokeVoidAsync("keepPhoto", name, bytes, "sent");
            await Refresh();
            return true;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return false;
        }
        catch (JSException)
        {
            return false; // No room for a copy; the laptop has it.
        }
    }

    private static Uri At(string name) => new("api/photos/" + name, UriKind.Relative);
}

/// <summary>How rows cross to the browser.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PhotoRow[]))]
internal sealed partial class PhotoJson : JsonSerializerContext;
