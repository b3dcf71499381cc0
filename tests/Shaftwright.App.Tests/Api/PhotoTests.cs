using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace Shaftwright.App.Tests.Api;

/// <summary>Photos over HTTP: only whole pictures go in, under the hash of their bytes, and only pictures come out.</summary>
public class PhotoTests
{
    private const int Kills = 15;
    private const int Seed = 20261125;

    [Fact]
    public async Task Put_APhoto_IsKeptOnceAndComesBackAsAPictureOnly()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var photo = Jpeg(1, 50_000);
        using (var first = await Put(served.Client, photo))
            Assert.Equal("applied", (await Served.Json(first)).Text("outcome"));
        using (var second = await Put(served.Client, photo))
            Assert.Equal("already", (await Served.Json(second)).Text("outcome"));

        using var back = await served.Client.GetAsync(At(Name(photo)), Cancel);
        Assert.Equal(photo, await back.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal("image/jpeg", back.Content.Headers.ContentType!.ToString());
        Assert.Equal(["nosniff"], back.Headers.GetValues("X-Content-Type-Options"));
        Assert.Equal(
            ["default-src 'none'; sandbox"],
            back.Headers.GetValues("Content-Security-Policy")
        );
        Assert.Equal(["same-origin"], back.Headers.GetValues("Cross-Origin-Resource-Policy"));
    }

    [Fact]
    public async Task Put_WhatIsNoPhoto_IsRefusedInWordsAndNotKept()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var photo = Jpeg(1, 2000);
        await Refused(photo, Name(photo), "text/html", HttpStatusCode.UnsupportedMediaType);
        await Refused(photo, Name(photo), null, HttpStatusCode.UnsupportedMediaType);
        await Refused(photo, Name(Jpeg(2, 10)), "image/jpeg", HttpStatusCode.BadRequest);
        await Refused(photo[..^1], Name(photo[..^1]), "image/jpeg", HttpStatusCode.BadRequest);
        byte[] page = [.. "<script>"u8];
        await Refused(page, Name(page), "image/jpeg", HttpStatusCode.BadRequest);
        await Refused(photo, "..%2f..%2fetc", "image/jpeg", HttpStatusCode.BadRequest);
        await Refused(
            photo,
            Name(photo).ToUpperInvariant(),
            "image/jpeg",
            HttpStatusCode.BadRequest
        );
        var large = Jpeg(3, 3 * 1024 * 1024);
        await Refused(large, Name(large), "image/jpeg", HttpStatusCode.RequestEntityTooLarge);
        using (
            var another = new HttpRequestMessage(HttpMethod.Put, At(Name(photo)))
            {
                Content = Content(photo, "image/jpeg"),
            }
        )
        {
            another.Headers.Add("Origin", "http://attacker.example");
            using var response = await served.Client.SendAsync(another, Cancel);
            Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        }
        Assert.Equal("0", book.Column("SELECT CAST(count(*) AS TEXT) FROM photos").Single());
        using var none = await served.Client.GetAsync(At(Name(photo)), Cancel);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);

        async Task Refused(byte[] bytes, string name, string? type, HttpStatusCode code)
        {
            using var content = Content(bytes, type);
            using var response = await served.Client.PutAsync(At(name), content, Cancel);
            Assert.Equal(code, response.StatusCode);
            Assert.NotEqual("", (await Served.Json(response)).Text("problem"));
        }
    }

    [Fact]
    public async Task Put_TheServerKilledMeanwhile_KeepsEveryAnsweredPhotoWhole()
    {
        using var book = new TempBook();
#pragma warning disable CA5394 // A moment, not a secret.
        var random = new Random(Seed);
        var port = Served.Text(Served.FreePort());
        var answered = new List<byte[]>();
        byte[]? cut = null;
        var n = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            await using var served = await Served.Start(book.Folder, "--port", port);
            // What got no answer is sent again, as a phone does.
            if (cut is not null)
            {
                using var again = await Put(served.Client, cut);
                again.EnsureSuccessStatusCode();
                answered.Add(cut);
                cut = null;
            }
            // Killed in the middle of the sending, however slow the machine is.
            var begun = new TaskCompletionSource();
            var sending = Task.Run(
                async () =>
                {
                    while (true)
                    {
                        var photo = Jpeg(++n, 400_000);
                        try
                        {
                            using var response = await Put(served.Client, photo);
                            response.EnsureSuccessStatusCode();
                        }
                        catch (Exception e)
                            when (e is HttpRequestException or SocketException or IOException)
                        {
                            cut = photo;
                            return;
                        }
                        answered.Add(photo);
                        begun.TrySetResult();
                    }
                },
                Cancel
            );
            await begun.Task.WaitAsync(TimeSpan.FromMinutes(1), Cancel);
            await Task.Delay(random.Next(100), Cancel);
            served.Kill();
            await sending;
        }
#pragma warning restore CA5394
        Assert.Empty(book.Faults());
        Assert.True(answered.Count >= Kills, "hardly anything was sent");
        await using var last = await Served.Start(book.Folder, "--port", port);
        foreach (var photo in answered)
        {
            Assert.Equal(photo, await last.Client.GetByteArrayAsync(At(Name(photo)), Cancel));
        }
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Uri At(string name) => new("api/photos/" + name, UriKind.Relative);

    private static string Name(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static async Task<HttpResponseMessage> Put(HttpClient client, byte[] photo)
    {
        using var content = Content(photo, "image/jpeg");
        return await client.PutAsync(At(Name(photo)), content, Cancel);
    }

    private static ByteArrayContent Content(byte[] bytes, string? type)
    {
        var content = new ByteArrayContent(bytes);
        if (type is not null)
            content.Headers.ContentType = new MediaTypeHeaderValue(type);
        return content;
    }

    /// <summary>The parts of a JPEG with noise for a picture: the program walks the parts and leaves the picture alone.</summary>
    private static byte[] Jpeg(int seed, int coded)
    {
        var noise = new byte[coded];
#pragma warning disable CA5394 // A picture, not a secret.
        new Random(seed).NextBytes(noise);
#pragma warning restore CA5394
        return
        [
            .. (ReadOnlySpan<byte>)[0xFF, 0xD8],
            .. (ReadOnlySpan<byte>)[0xFF, 0xC0, 0, 11, 8, 0, 48, 0, 64, 1, 1, 0x11, 0],
            .. (ReadOnlySpan<byte>)[0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0],
            .. noise.Select(b => b == 0xFF ? (byte)0xFE : b),
            .. (ReadOnlySpan<byte>)[0xFF, 0xD9],
        ];
    }
}
