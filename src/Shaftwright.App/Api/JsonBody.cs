using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Net.Http.Headers;

namespace Shaftwright.App.Api;

/// <summary>Reads a request sent as JSON; one that is not is answered in words.</summary>
/// <remarks>A form of another site can send other types without asking first; JSON it cannot.</remarks>
internal static class JsonBody
{
    private static readonly UTF8Encoding s_utf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>The text, or null when the request was answered.</summary>
    public static async Task<string?> Text(HttpContext context)
    {
        if (!IsJson(context.Request.ContentType))
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status415UnsupportedMediaType,
                "That is not sent as JSON.",
                "Content-Type: application/json"
            );
            return null;
        }
        try
        {
            using var reader = new StreamReader(context.Request.Body, s_utf8, false);
            return await reader.ReadToEndAsync(context.RequestAborted);
        }
        catch (DecoderFallbackException)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "That is not text in UTF-8.",
                "JSON in UTF-8"
            );
            return null;
        }
    }

    /// <summary>What was sent, or null when the request was answered.</summary>
    public static async Task<T?> Read<T>(HttpContext context, JsonTypeInfo<T> type)
        where T : class
    {
        if (await Text(context) is not { } text)
            return null;
        try
        {
            if (JsonSerializer.Deserialize(text, type) is { } read)
                return read;
        }
        catch (JsonException)
        {
            // Answered below.
        }
        await Troubles.Answer(
            context,
            StatusCodes.Status400BadRequest,
            "That cannot be read.",
            $"a JSON object with {string.Join(", ", type.Properties.Select(p => p.Name))}"
        );
        return null;
    }

    private static bool IsJson(string? contentType) =>
        MediaTypeHeaderValue.TryParse(contentType, out var type)
        && type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        && (
            !type.Charset.HasValue
            || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
        );
}
