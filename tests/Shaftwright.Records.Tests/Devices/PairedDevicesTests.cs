using Microsoft.Data.Sqlite;
using Shaftwright.Records.Devices;

namespace Shaftwright.Records.Tests.Devices;

public sealed class PairedDevicesTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly SetClock _clock = new();
    private readonly JobBook _book;
    private readonly PairedDevices _devices;

    public PairedDevicesTests()
    {
        _book = JobBook.Open(_folder.Path, _clock);
        _devices = new(_book);
    }

    public void Dispose()
    {
        _book.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Pair_ADevice_AdmitsItsTokenAndKeepsOnlyAHash()
    {
        var (token, device) = _devices.Pair("Bench phone", plain: false);
        Assert.Equal(43, token.Length); // 256 bits, six a sign.
        Assert.Equal((Admission.Known, device), _devices.Admit(token, plain: false));
        Assert.Equal(device, Assert.Single(_devices.All()));

        using (var db = new SqliteConnection($"Data Source={_folder.Book};Pooling=False"))
        {
            db.Open();
            using var command = db.CreateCommand();
            command.CommandText = "SELECT token_hash FROM devices";
            Assert.Matches("^[0-9a-f]{64}$", (string)command.ExecuteScalar()!);
        }
        _book.Dispose(); // Folds the log into the file.
        var file = File.ReadAllText(_folder.Book, System.Text.Encoding.Latin1);
        Assert.Contains("Bench phone", file, StringComparison.Ordinal);
        Assert.DoesNotContain(token, file, StringComparison.Ordinal);
    }

    [Fact]
    public void Pair_Twice_GivesTokensOfTheirOwn()
    {
        var one = _devices.Pair("a", plain: false);
        var two = _devices.Pair("a", plain: false);
        Assert.NotEqual(one.Token, two.Token);
        Assert.Equal(one.Device.Id, _devices.Admit(one.Token, false).Device!.Id);
        Assert.Equal(two.Device.Id, _devices.Admit(two.Token, false).Device!.Id);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("' OR 1=1 --")]
    public void Admit_ATokenNeverGiven_IsUnknown(string? token)
    {
        _devices.Pair("a", plain: false);
        Assert.Equal((Admission.Unknown, null), _devices.Admit(token, false));
        Assert.Equal((Admission.Unknown, null), _devices.Admit(new string('A', 100_000), false));
    }

    [Fact]
    public void Admit_ATokenOfTheOtherKindOfConnection_IsUnknown()
    {
        var safe = _devices.Pair("a", plain: false).Token;
        var heard = _devices.Pair("b", plain: true).Token;
        Assert.Equal(Admission.Unknown, _devices.Admit(safe, plain: true).Answer);
        Assert.Equal(Admission.Unknown, _devices.Admit(heard, plain: false).Answer);
        Assert.Equal(Admission.Known, _devices.Admit(heard, plain: true).Answer);
    }

    [Fact]
    public void Revoke_ADevice_RefusesItUntilItIsLetInAgain()
    {
        var (token, device) = _devices.Pair("lost", plain: false);
        var other = _devices.Pair("kept", plain: false).Token;
        Assert.True(_devices.Revoke(device.Id));
        Assert.Equal(Admission.Revoked, _devices.Admit(token, false).Answer);
        Assert.Equal(Admission.Known, _devices.Admit(other, false).Answer);
        Assert.NotNull(_devices.All().Single(d => d.Id == device.Id).RevokedAt);

        using (var again = JobBook.Open(_folder.Path, _clock))
            Assert.Equal(Admission.Revoked, new PairedDevices(again).Admit(token, false).Answer);

        Assert.True(_devices.Revoke(device.Id, off: false));
        Assert.Equal(Admission.Known, _devices.Admit(token, false).Answer);
        Assert.False(_devices.Revoke("none"));
    }

    [Fact]
    public void Pair_WithAnOlderToken_ReplacesIt()
    {
        var (old, device) = _devices.Pair("Bench phone", plain: false);
        _devices.Revoke(device.Id);
        var (token, _) = _devices.Pair("Bench phone", plain: false, replaces: old);
        Assert.Equal(Admission.Unknown, _devices.Admit(old, false).Answer);
        Assert.Equal(Admission.Known, _devices.Admit(token, false).Answer);
        Assert.Single(_devices.All());
    }

    [Fact]
    public void Admit_OverAPlainConnection_EndsAfterAWorkingDay()
    {
        var token = _devices.Pair("a", plain: true).Token;
        _clock.Move(PairedDevices.PlainLife);
        Assert.Equal(Admission.Known, _devices.Admit(token, true).Answer);
        _clock.Move(TimeSpan.FromSeconds(1));
        Assert.Equal(Admission.Expired, _devices.Admit(token, true).Answer);
        // Being seen meanwhile has not prolonged it, and its line goes when the next one comes.
        _devices.Pair("b", plain: true);
        Assert.Equal(["b"], _devices.All().Select(d => d.Name));
    }

    [Fact]
    public void Admit_AfterHalfAYearAway_IsRefusedButEachVisitProlongs()
    {
        var token = _devices.Pair("a", plain: false).Token;
        for (var i = 0; i < 3; i++)
        {
            _clock.Move(PairedDevices.UnusedLife - TimeSpan.FromDays(1));
            Assert.Equal(Admission.Known, _devices.Admit(token, false).Answer);
        }
        _clock.Move(PairedDevices.UnusedLife + TimeSpan.FromMinutes(1));
        Assert.Equal(Admission.Expired, _devices.Admit(token, false).Answer);
    }

    [Fact]
    public void Admit_WithinAMinute_WritesNothing()
    {
        var (token, device) = _devices.Pair("a", plain: false);
        _clock.Move(PairedDevices.SeenStep - TimeSpan.FromSeconds(1));
        _devices.Admit(token, false);
        Assert.Equal(device.PairedAt, _devices.All()[0].LastSeen);
        _clock.Move(TimeSpan.FromSeconds(1));
        _devices.Admit(token, false);
        Assert.Equal(device.PairedAt + PairedDevices.SeenStep, _devices.All()[0].LastSeen);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("", null)]
    [InlineData("  \t\r\n", null)]
    [InlineData(" Bench phone ", "Bench phone")]
    [InlineData("a\u0000b\u001bc", "abc")]
    [InlineData("<b>Bo</b>", "<b>Bo</b>")] // Shown as text; nothing to take out.
    public void NameFrom_WhatWasTyped_IsTrimmedOrNone(string? typed, string? name)
    {
        Assert.Equal(name, PairedDevices.NameFrom(typed));
        Assert.Equal(
            PairedDevices.LongestName,
            PairedDevices.NameFrom(new string('x', 1000))!.Length
        );
    }
}
