using System.Collections;
using System.ComponentModel;
using System.Diagnostics;
using Microsoft.Playwright;
using Shaftwright.App.Tests.Api;
using Shaftwright.App.Tests.Pages;

namespace Shaftwright.App.Tests.Link;

/// <summary>A real browser in which the authority was installed, as on a phone: nothing is gone past, and what browsers give only to
/// trusted addresses is there.</summary>
[Collection(PageTests.Name)]
public sealed class InstalledAuthorityTests : IDisposable
{
    /// <summary>The phone's memory: its browser's, and the certificates its owner installed.</summary>
    private readonly string _phone = Directory
        .CreateTempSubdirectory("shaftwright-phone-")
        .FullName;

    public void Dispose() => Directory.Delete(_phone, recursive: true);

    [Fact]
    public async Task Phone_WithTheAuthorityInstalled_OpensUnwarnedAndLaterWithoutTheLaptop()
    {
        Assert.SkipUnless(
            await MakeStore(),
            "certutil is not here, by which a desktop's Chromium is given an authority (Debian: libnss3-tools)."
        );
        using var book = new TempBook();
        using var playwright = await Playwright.CreateAsync();
        Uri at;
        await using (
            var served = await Served.Start(
                book.Folder,
                "--port",
                "0",
                "--lan",
                PhonePairingTests.LanAddress()
            )
        )
        {
            at = served.Phones[0];
            await using (var stranger = await Open(playwright, at))
            {
                var refused = await Assert.ThrowsAsync<PlaywrightException>(() =>
                    stranger.Open("trust")
                );
                Assert.Contains(
                    "ERR_CERT_AUTHORITY_INVALID",
                    refused.Message,
                    StringComparison.Ordinal
                );
            }
            using var root = await Garage.RootOf(served);
            var file = Path.Combine(_phone, "shaftwright.crt");
            await File.WriteAllBytesAsync(
                file,
                root.RawData,
                TestContext.Current.CancellationToken
            );
            Assert.True(await Certutil("-A", "-t", "C,,", "-n", "laptop", "-i", file));

            await using var phone = await Open(playwright, at);
            using var made = await Garage.Post(
                served.Client,
                "api/link/code",
                new System.Text.Json.Nodes.JsonObject { ["at"] = at.AbsoluteUri }
            );
            await phone.Open((await Served.Json(made)).Text("url"));
            await phone.Type("What do you call this phone?", "Bench phone");
            await phone.Press("Pair");
            await phone.Asked("This phone is paired as “Bench phone”.");
            await phone.Press("What is in front of you?");
            await phone.Asked("What is in front of you?");
            Assert.True(await phone.Page.EvaluateAsync<bool>("isSecureContext"));
            await Phone
                .Expect(phone.Page.GetByText("Opens without the laptop."))
                .ToBeVisibleAsync();
        }

        // The laptop is gone, and the browser was closed.
        await using var later = await Open(playwright, at);
        await later.Open();
        await later.Asked("What is in front of you?");
        await later.Page.GetByRole(AriaRole.Link, new() { Name = "Ends in a vee" }).ClickAsync();
        await later.Asked("How thick is each end, where it lies in the vee?");
    }

    private async Task<Phone> Open(IPlaywright playwright, Uri at)
    {
        var environment = Environment
            .GetEnvironmentVariables()
            .Cast<DictionaryEntry>()
            .ToDictionary(e => (string)e.Key, e => (string)e.Value!);
        // Where it looks for what its owner installed.
        environment["HOME"] = _phone;
        return new(
            await playwright.Chromium.LaunchPersistentContextAsync(
                Path.Combine(_phone, "browser"),
                new()
                {
                    ExecutablePath =
                        Environment.GetEnvironmentVariable("SHAFTWRIGHT_CHROMIUM")
                        ?? "/usr/bin/chromium",
                    Args = ["--no-sandbox", "--disable-dev-shm-usage"],
                    Env = environment,
                    BaseURL = at.AbsoluteUri,
                    ViewportSize = new() { Width = Phone.Width, Height = 844 },
                    HasTouch = true,
                    IsMobile = true,
                }
            )
        );
    }

    private async Task<bool> MakeStore()
    {
        Directory.CreateDirectory(Store);
        return await Certutil("-N", "--empty-password");
    }

    private string Store => Path.Combine(_phone, ".pki", "nssdb");

    private async Task<bool> Certutil(params string[] args)
    {
        try
        {
            using var process = Process.Start("certutil", ["-d", "sql:" + Store, .. args]);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}
