using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>A photo taken at the bench: on the phone's disk before the screen says so, and on the laptop as the same bytes.</summary>
[Collection(PageTests.Name)]
public class PhotoPageTests(Bench bench)
{
    private const string Marks = "Where did you look, and what shows?";

    /// <summary>Notes when a transaction that writes a photo is complete, and when the screen first speaks of one.</summary>
    private const string Witness = """
        window.seen = [];
        const plain = IDBDatabase.prototype.transaction;
        IDBDatabase.prototype.transaction = function (stores, mode, options) {
          const t = plain.call(this, stores, mode, options);
          if (mode === 'readwrite' && [].concat(stores).includes('photos'))
            t.addEventListener('complete', () => window.seen.push('kept'));
          return t;
        };
        new MutationObserver(() => {
          if (!window.seen.includes('said') && document.querySelector('.photo figcaption')?.innerText.includes('On this phone'))
            window.seen.push('said');
        }).observe(document, { subtree: true, childList: true, characterData: true });
        """;

    /// <summary>A photo as a camera makes it: large, and with a note of where it was taken.</summary>
    private const string Camera = """
        async () => {
          const c = document.createElement('canvas');
          c.width = 2400;
          c.height = 1800;
          const g = c.getContext('2d');
          g.fillStyle = '#f4f1ea';
          g.fillRect(0, 0, 2400, 1800);
          g.fillStyle = '#b01020';
          g.fillRect(1000, 880, 300, 40);
          const blob = await new Promise(r => c.toBlob(r, 'image/jpeg', 0.9));
          const bytes = [...new Uint8Array(await blob.arrayBuffer())];
          const note = [...'Exif\0\0MM\0*\0\0\0\b the garage at home'].map(x => x.charCodeAt(0));
          bytes.splice(2, 0, 0xff, 0xe1, 0, note.length + 2, ...note);
          let text = '';
          for (const b of bytes) text += String.fromCharCode(b);
          return btoa(text);
        }
        """;

    /// <summary>What a full disk does to a browser's store: the transaction is called off after it began.</summary>
    private const string Full = """
        () => {
          window.full = true;
          const plain = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (value, key) {
            const request = key === undefined ? plain.call(this, value) : plain.call(this, value, key);
            if (window.full && value?.jpeg) this.transaction.abort();
            return request;
          };
        }
        """;

    [Fact]
    public async Task Photo_TakenWithoutTheLaptop_IsKeptFirstOutlivesThePageAndArrivesAsItself()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, photographed");
        await using var phone = await bench.Phone();
        await phone.Context.AddInitScriptAsync(Witness);
        await phone.Open("job/" + job);
        await phone.Follow($"job/{job}/weld-to-test/marks", redirects: true);
        await phone.Asked(Marks);
        await phone.Context.RouteAsync("**/api/**", route => route.AbortAsync());
        var taken = await Take(phone);
        Assert.Contains("Exif", Encoding.Latin1.GetString(taken), StringComparison.Ordinal);
        await Phone
            .Expect(phone.Page.Locator(".photo"))
            .ToContainTextAsync("On this phone, not sent yet");
        Assert.Equal(
            ["kept", "said"],
            (await phone.Page.EvaluateAsync<string[]>("window.seen"))[..2]
        );
        await phone.Look("photo-waiting");
        var at = new Uri(phone.Page.Url).PathAndQuery.TrimStart('/');
        var name = Assert.Single(await Rows(phone))["name"]!.GetValue<string>();

        // Closed at once, as a phone does that needs the room, and opened again.
        await Phone.Expect(phone.Page.GetByText("Kept on this phone")).ToBeVisibleAsync();
        await phone.Close();
        await phone.Open(at);
        await phone.Asked(Marks);
        var picture = phone.Page.Locator(".photo img");
        await Phone.Expect(picture).ToBeVisibleAsync();
        Assert.Equal(
            1600,
            await picture.EvaluateAsync<int>("i => i.decode().then(() => i.naturalWidth)")
        );

        await phone.Context.UnrouteAllAsync();
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
        await Phone.Expect(phone.Page.Locator(".photo")).ToContainTextAsync("The laptop has it");
        using var client = new HttpClient { BaseAddress = new Uri(bench.Address) };
        var arrived = await client.GetByteArrayAsync(
            new Uri("api/photos/" + name, UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(name, Convert.ToHexStringLower(SHA256.HashData(arrived)));
        Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(arrived), StringComparison.Ordinal);
        var document = await laptop.Until(
            job,
            d => d["crackTest"]?["tests"]?[0]?["photos"] is JsonArray { Count: 1 }
        );
        Assert.Equal(name, (string?)document["crackTest"]!["tests"]![0]!["photos"]![0]!["sha256"]);

        // Another phone, which never had it, gets it from the laptop.
        await using var other = await bench.Phone();
        await other.Open(at);
        await Laptop.Reaches(other, job, name);
        await Phone.Expect(other.Page.Locator(".photo img")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Photo_NoRoomOnThePhone_IsSaidAndNotNoted()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, phone full");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Follow($"job/{job}/weld-to-test/marks", redirects: true);
        await phone.Asked(Marks);
        await phone.Page.EvaluateAsync(Full);
        await Take(phone);
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Alert))
            .ToContainTextAsync("would not keep the photo");
        await Phone.Expect(phone.Page.Locator(".photo")).ToHaveCountAsync(0);
        Assert.Empty(await Rows(phone));

        await phone.Page.EvaluateAsync("window.full = false");
        await Take(phone);
        await Phone.Expect(phone.Page.Locator(".photo")).ToContainTextAsync("The laptop has it");
    }

    [Fact]
    public async Task Photo_TwoPointsAndTheMarkTapped_PutsItsSizesIntoTheBoxesToBePutRight()
    {
        await using var phone = await bench.Phone();
        await phone.Open("weld-to-test/marks");
        await phone.Asked(Marks);
        await Take(phone);
        await Phone.Expect(phone.Page.Locator(".photo img")).ToBeVisibleAsync();
        await phone.Press("Note a mark");
        await phone.Page.GetByText("Measure it on the photo").ClickAsync();
        await phone.Type("Two points on the photo are apart by", "20");
        var photo = phone.Page.Locator(".over-photo");
        var box = (await photo.BoundingBoxAsync())!;
        // The red bar itself, from end to end, is taken for the 20 mm: then the mark must come out as long as that.
        foreach (var at in (double[])[1000 / 2400.0, 1300 / 2400.0, 0.48])
            await photo.ClickAsync(
                new()
                {
                    Position = new() { X = (float)(at * box.Width), Y = box.Height / 2 },
                }
            );
        await Phone
            .Expect(phone.Page.GetByText("A photo measures; it accepts nothing"))
            .ToBeVisibleAsync();
        await phone.Look("photo-measured");
        await phone.Press("Put it into the boxes");
        var length = phone.Page.GetByRole(
            AriaRole.Textbox,
            new() { Name = "How long", Exact = true }
        );
        await Phone.Expect(length).Not.ToHaveValueAsync("");
        var mm = double.Parse(
            await length.InputValueAsync(),
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.InRange(mm, 19, 21.5);
        var width = await phone
            .Page.GetByRole(AriaRole.Textbox, new() { Name = "How wide", Exact = true })
            .InputValueAsync();
        Assert.InRange(
            double.Parse(width, System.Globalization.CultureInfo.InvariantCulture),
            2.2,
            3.3
        );
        // Nothing is noted by it.
        await Phone.Expect(phone.Page.GetByText("Mark 1:")).ToHaveCountAsync(0);
    }

    private static async Task<byte[]> Take(Phone phone)
    {
        var bytes = Convert.FromBase64String(await phone.Page.EvaluateAsync<string>(Camera));
        await phone
            .Page.Locator(".photo-taker input")
            .First.SetInputFilesAsync(
                new FilePayload
                {
                    Name = "IMG_0001.jpg",
                    MimeType = "image/jpeg",
                    Buffer = bytes,
                }
            );
        return bytes;
    }

    private static async Task<List<JsonNode>> Rows(Phone phone) =>
        [
            .. JsonNode
                .Parse(
                    await phone.Page.EvaluateAsync<string>(
                        """
                        async () => {
                          const { name } = (await indexedDB.databases()).find(d => d.name.startsWith('photos '));
                          return new Promise((resolve, reject) => {
                            const open = indexedDB.open(name);
                            open.onerror = () => reject(open.error);
                            open.onsuccess = () => {
                              const all = open.result.transaction('photos').objectStore('photos').getAll();
                              all.onsuccess = () => {
                                open.result.close();
                                resolve(JSON.stringify(all.result.map(({ name, state }) => ({ name, state }))));
                              };
                            };
                          });
                        }
                        """
                    )
                )!
                .AsArray()
                .Select(r => r!),
        ];
}
