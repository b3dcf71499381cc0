using System.Net;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Link;

/// <summary>How a phone comes in, and how it is kept out.</summary>
public class PairingTests
{
    [Fact]
    public async Task Pair_WithTheCodeOfThePicture_LetsThePhoneReadAndWrite()
    {
        await using var garage = await Garage.Open();
        using var phone = garage.Phone();
        Assert.Equal(HttpStatusCode.Unauthorized, await Status(phone, "api/jobs"));

        var code = await garage.Code();
        // Read as a camera would, by another hand's decoder.
        var read = Decode(code["picture"]!.AsArray());
        Assert.Equal(code.Text("url"), read);
        Assert.StartsWith(garage.Safe + "pair#", read, StringComparison.Ordinal);
        using var paired = await Garage.Pair(phone, read.Split('#')[1], "  Bench phone ");
        Assert.Equal(HttpStatusCode.OK, paired.StatusCode);
        Assert.Equal("Bench phone", (await Served.Json(paired)).Text("name"));
        var cookie = Assert.Single(paired.Headers.GetValues("Set-Cookie"));
        Assert.Matches(
            "^__Host-shaftwright-[0-9a-f]{8}=[A-Za-z0-9_-]{43}; max-age=34560000; path=/; secure; samesite=strict; httponly$",
            cookie
        );
        Assert.DoesNotContain(
            cookie.Split('=', ';')[1],
            await paired.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );

        await garage.Served.Post([Sent.Begin("left")], phone);
        Assert.Equal(HttpStatusCode.OK, await Status(phone, "api/jobs/left"));
        var device = Assert.Single(await garage.Devices())!;
        Assert.Equal("Bench phone", device.Text("name"));
        Assert.False(device["plain"]!.GetValue<bool>());
        Assert.Null(device["revokedAt"]);
    }

    [Fact]
    public async Task Pair_WithAUsedOrNoCode_IsRefused()
    {
        await using var garage = await Garage.Open();
        var code = await garage.Code();
        using var first = garage.Phone();
        using (var taken = await Garage.Pair(first, code.Text("typed")))
            Assert.Equal(HttpStatusCode.OK, taken.StatusCode);

        using var second = garage.Phone();
        await Refused(
            await Garage.Pair(second, code.Text("typed")),
            HttpStatusCode.Gone,
            "used already"
        );
        await Refused(
            await Garage.Pair(second, code.Text("url").Split('#')[1]),
            HttpStatusCode.Gone,
            "used already"
        );
        await Refused(await Garage.Pair(second, ""), HttpStatusCode.Forbidden, "not the code");
        await Refused(
            await Garage.Post(second, "api/link/pair", new JsonObject { ["name"] = "x" }),
            HttpStatusCode.Forbidden,
            "not the code"
        );
        Assert.Equal(HttpStatusCode.Unauthorized, await Status(second, "api/jobs"));
        Assert.Single(await garage.Devices());
    }

    [Fact]
    public async Task Pair_WithoutAName_KeepsTheCodeForTheNextTry()
    {
        await using var garage = await Garage.Open();
        var code = (await garage.Code()).Text("typed");
        using var phone = garage.Phone();
        await Refused(await Garage.Pair(phone, code, "  "), HttpStatusCode.BadRequest, "name");
        await Refused(await Garage.Pair(phone, code, null), HttpStatusCode.BadRequest, "name");
        using var paired = await Garage.Pair(phone, code);
        Assert.Equal(HttpStatusCode.OK, paired.StatusCode);
    }

    [Fact]
    public async Task Pair_ByGuessing_IsHeldOffFromThatAddressAndThenFromAll()
    {
        await using var garage = await Garage.Open();
        var code = (await garage.Code()).Text("typed");
        for (var neighbour = 1; neighbour <= 4; neighbour++)
        {
            using var guesser = garage.Phone(from: $"127.0.1.{neighbour}");
            for (var i = 0; i < 5; i++)
                await Refused(
                    await Garage.Pair(guesser, "AAAA-AAAA"),
                    HttpStatusCode.Forbidden,
                    "not the code"
                );
            // Even the right one is not looked at from there any more.
            using var held = await Garage.Pair(guesser, code);
            Assert.Equal(TimeSpan.FromMinutes(15), held.Headers.RetryAfter!.Delta);
            await Refused(held, HttpStatusCode.TooManyRequests, "15 minutes");
        }
        using var phone = garage.Phone();
        await Refused(await Garage.Pair(phone, code), HttpStatusCode.Gone, "withdrawn");
        Assert.Equal("withdrawn", (await garage.Served.Get("api/link")).Text("code"));
        Assert.Empty(await garage.Devices());
        // A new code is the way out, and not for those who guessed.
        var next = (await garage.Code()).Text("typed");
        using var again = garage.Phone(from: "127.0.1.1");
        await Refused(await Garage.Pair(again, next), HttpStatusCode.TooManyRequests, "");
        using var paired = await Garage.Pair(phone, next);
        Assert.Equal(HttpStatusCode.OK, paired.StatusCode);
    }

    [Fact]
    public async Task Revoke_APairedPhone_RefusesItsTokenInWordsUntilItIsLetInAgain()
    {
        await using var garage = await Garage.Open();
        using var phone = await garage.PairedPhone();
        using var other = await garage.PairedPhone("Other");
        var id = (await garage.Devices()).Single(d => d.Text("name") == "Bench phone").Text("id");
        using (
            var off = await Garage.Post(
                garage.Served.Client,
                $"api/link/devices/{id}/off",
                new JsonObject()
            )
        )
            Assert.Equal(HttpStatusCode.OK, off.StatusCode);

        await Refused(
            await Garage.Get(phone, "api/jobs"),
            HttpStatusCode.Unauthorized,
            "taken off the laptop's list"
        );
        await Refused(
            await Garage.Post(phone, "api/edits", new JsonArray(Sent.Begin("late"))),
            HttpStatusCode.Unauthorized,
            "taken off"
        );
        Assert.Empty(await garage.Served.History());
        Assert.Equal(HttpStatusCode.OK, await Status(other, "api/jobs"));
        using (var here = await Garage.Get(phone, "api/link/here"))
            Assert.Contains(
                "taken off",
                (await Served.Json(here)).Text("why"),
                StringComparison.Ordinal
            );

        using (
            var back = await Garage.Post(
                garage.Served.Client,
                $"api/link/devices/{id}/in",
                new JsonObject()
            )
        )
            Assert.Equal(HttpStatusCode.OK, back.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await Status(phone, "api/jobs"));
    }

    [Fact]
    public async Task Pair_APairedPhoneAgain_EndsItsOldToken()
    {
        await using var garage = await Garage.Open();
        using var phone = garage.Phone();
        using var first = await Garage.Pair(phone, (await garage.Code()).Text("typed"));
        var old = Token(first);
        using var second = await Garage.Pair(phone, (await garage.Code()).Text("typed"), "Renamed");
        Assert.Equal(["Renamed"], (await garage.Devices()).Select(d => d.Text("name")));

        using var thief = garage.Phone();
        await Refused(await WithCookie(thief, old), HttpStatusCode.Unauthorized, "not paired");
        using var known = await WithCookie(thief, Token(second));
        Assert.Equal(HttpStatusCode.OK, known.StatusCode);
    }

    [Fact]
    public async Task Token_OfOneDoor_IsNotTakenAtTheOther()
    {
        await using var garage = await Garage.Open();
        using var open = garage.Phone(garage.Plain);
        using var paired = await Garage.Pair(open, (await garage.Code(garage.Plain)).Text("typed"));
        Assert.Equal(HttpStatusCode.OK, paired.StatusCode);
        var cookie = Assert.Single(paired.Headers.GetValues("Set-Cookie"));
        Assert.Matches(
            "^shaftwright-[0-9a-f]{8}=[^;]{43}; max-age=43200; path=/; samesite=strict; httponly$",
            cookie
        );
        Assert.Equal(HttpStatusCode.OK, await Status(open, "api/jobs"));
        Assert.True((await garage.Devices())[0]!["plain"]!.GetValue<bool>());

        // Overheard, and tried at the encrypted door under its name.
        using var thief = garage.Phone();
        var (name, token) = (cookie.Split('=')[0], cookie.Split('=', ';')[1]);
        await Refused(
            await WithCookie(thief, $"__Host-{name}={token}"),
            HttpStatusCode.Unauthorized,
            "not paired"
        );
        using var safe = await garage.PairedPhone("Safe");
        using var second = await Garage.Pair(safe, (await garage.Code()).Text("typed"));
        using var plainThief = garage.Phone(garage.Plain);
        await Refused(
            await WithCookie(
                plainThief,
                Token(second).Replace("__Host-", "", StringComparison.Ordinal)
            ),
            HttpStatusCode.Unauthorized,
            "not paired"
        );
    }

    [Fact]
    public async Task Code_FromARestartedLaptop_IsGoodNoLongerButThePhoneIs()
    {
        using var book = new TempBook();
        string[] args = ["--port", "0", "--lan", Garage.LaptopAddress, "--lan-port", "0"];
        string cookie;
        string code;
        await using (var served = await Served.Start(book.Folder, args))
        {
            using var root = await Garage.RootOf(served);
            using var phone = new HttpClient(Garage.Handler(null, root))
            {
                BaseAddress = served.Phones[0],
            };
            var at = new JsonObject { ["at"] = served.Phones[0].AbsoluteUri };
            using var made = await Garage.Post(served.Client, "api/link/code", at);
            using var paired = await Garage.Pair(phone, (await Served.Json(made)).Text("typed"));
            cookie = Token(paired);
            using var next = await Garage.Post(served.Client, "api/link/code", at);
            code = (await Served.Json(next)).Text("typed");
        }
        await using (var served = await Served.Start(book.Folder, args))
        {
            using var root = await Garage.RootOf(served);
            using var phone = new HttpClient(Garage.Handler(null, root))
            {
                BaseAddress = served.Phones[0],
            };
            using var known = await WithCookie(phone, cookie);
            Assert.Equal(HttpStatusCode.OK, known.StatusCode);
            await Refused(await Garage.Pair(phone, code), HttpStatusCode.Forbidden, "not the code");
        }
    }

    [Fact]
    public async Task Token_OfOneBook_OutlivesAPairingWithAnotherAtTheSameAddress()
    {
        using var mine = new TempBook();
        using var demo = new TempBook();
        var port = Served.Text(Served.FreePort());
        string[] args = ["--port", "0", "--lan", Garage.LaptopAddress, "--lan-port", port];
        var jar = new CookieContainer();
        foreach (
            var (book, paired) in ((TempBook, bool)[])[(mine, false), (demo, false), (mine, true)]
        )
        {
            await using var served = await Served.Start(book.Folder, args);
            using var root = await Garage.RootOf(served);
            using var handler = Garage.Handler(null, root);
            handler.CookieContainer = jar;
            using var phone = new HttpClient(handler) { BaseAddress = served.Phones[0] };
            Assert.Equal(
                paired ? HttpStatusCode.OK : HttpStatusCode.Unauthorized,
                await Status(phone, "api/jobs")
            );
            using var made = await Garage.Post(
                served.Client,
                "api/link/code",
                new JsonObject { ["at"] = served.Phones[0].AbsoluteUri }
            );
            using var done = await Garage.Pair(phone, (await Served.Json(made)).Text("typed"));
            Assert.Equal(HttpStatusCode.OK, await Status(phone, "api/jobs"));
        }
    }

    /// <summary>The cookie as it is sent back.</summary>
    private static string Token(HttpResponseMessage paired) =>
        paired.Headers.GetValues("Set-Cookie").Single().Split(';')[0];

    private static async Task<HttpResponseMessage> WithCookie(HttpClient client, string cookie)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Get,
            new Uri("api/jobs", UriKind.Relative)
        );
        request.Headers.Add("Cookie", cookie);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static async Task<HttpStatusCode> Status(HttpClient client, string path)
    {
        using var response = await Garage.Get(client, path);
        return response.StatusCode;
    }

    private static async Task Refused(
        HttpResponseMessage response,
        HttpStatusCode status,
        string problem
    )
    {
        using (response)
        {
            var said = await response.Content.ReadAsStringAsync(
                TestContext.Current.CancellationToken
            );
            Assert.True(status == response.StatusCode, $"{response.StatusCode}: {said}");
            Assert.Contains(
                problem,
                JsonNode.Parse(said).Text("problem"),
                StringComparison.Ordinal
            );
            Assert.False(response.Headers.Contains("Set-Cookie"));
        }
    }

    /// <summary>What a decoder reads from the picture, at four pixels a square.</summary>
    private static string Decode(JsonArray rows)
    {
        const int Scale = 4;
        var side = rows.Count * Scale;
        var grey = new byte[side * side];
        for (var y = 0; y < side; y++)
        for (var x = 0; x < side; x++)
            grey[(y * side) + x] =
                rows[y / Scale]!.GetValue<string>()[x / Scale] == '1' ? (byte)0 : (byte)255;
        return QrDecoder.Read(grey, side);
    }
}
