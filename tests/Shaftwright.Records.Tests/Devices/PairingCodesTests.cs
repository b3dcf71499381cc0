using System.Globalization;
using System.Net;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Records.Devices;

namespace Shaftwright.Records.Tests.Devices;

public sealed class PairingCodesTests
{
    private static readonly IPAddress s_phone = IPAddress.Parse("192.168.7.20");

    private readonly SetClock _clock = new();
    private readonly PairingCodes _codes;

    public PairingCodesTests() => _codes = new(_clock);

    [Fact]
    public void Make_Often_NeverGivesACodeTwiceAndHasItsLengths()
    {
        var codes = Enumerable.Range(0, 500).Select(_ => _codes.Make()).ToList();
        Assert.Equal(codes.Count, codes.Select(c => c.Scanned).Distinct().Count());
        Assert.Equal(codes.Count, codes.Select(c => c.Typed).Distinct().Count());
        Assert.All(codes, c => Assert.Matches("^[A-Za-z0-9_-]{22}$", c.Scanned)); // 6 × 22 > 128 bits.
        Assert.All(codes, c => Assert.Matches("^[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{4}$", c.Typed));
        // Every sign comes up: 4000 draws of 32 miss one with a chance below 1e-50.
        Assert.Equal(32, codes.SelectMany(c => c.Typed).Where(s => s != '-').Distinct().Count());
    }

    [Fact]
    public void Try_TheCodeItself_IsGoodOnceWhicheverTextIsUsed()
    {
        var code = _codes.Make();
        Assert.Equal(CodeState.Waiting, _codes.State);
        Assert.Equal(CodeAnswer.Good, _codes.Try(code.Scanned, s_phone));
        Assert.Equal(CodeState.Used, _codes.State);
        Assert.Equal(CodeAnswer.Used, _codes.Try(code.Scanned, s_phone));
        Assert.Equal(CodeAnswer.Used, _codes.Try(code.Typed, s_phone));

        var next = _codes.Make();
        Assert.Equal(
            CodeAnswer.Good,
            _codes.Try($" {next.Typed.ToLowerInvariant().Replace('-', ' ')} ", s_phone)
        );
        Assert.Equal(CodeAnswer.Used, _codes.Try(next.Scanned, s_phone));
        Assert.Equal(CodeAnswer.Used, _codes.Try(code.Scanned, s_phone));
    }

    [Fact]
    public void Try_ByManyAtOnce_IsGoodForOne()
    {
        var code = _codes.Make();
        var answers = new CodeAnswer[64];
        Parallel.For(0, answers.Length, i => answers[i] = _codes.Try(code.Scanned, s_phone));
        Assert.Equal(1, answers.Count(a => a == CodeAnswer.Good));
        Assert.Equal(63, answers.Count(a => a == CodeAnswer.Used));
    }

    [Fact]
    public void Try_AfterFiveMinutes_IsTooLate()
    {
        var inTime = _codes.Make();
        _clock.Move(PairingCodes.Life - TimeSpan.FromTicks(1));
        Assert.Equal(CodeAnswer.Good, _codes.Try(inTime.Typed, s_phone));

        var late = _codes.Make();
        _clock.Move(PairingCodes.Life);
        Assert.Equal(CodeState.Expired, _codes.State);
        Assert.Equal(CodeAnswer.Expired, _codes.Try(late.Typed, s_phone));
        Assert.Equal(CodeAnswer.Expired, _codes.Try(late.Scanned, s_phone));
    }

    [Fact]
    public void Try_AReplacedOrWithdrawnCode_IsTooLate()
    {
        var first = _codes.Make();
        var second = _codes.Make();
        Assert.Equal(CodeAnswer.Expired, _codes.Try(first.Scanned, s_phone));
        _codes.Withdraw();
        Assert.Equal(CodeAnswer.Expired, _codes.Try(second.Scanned, s_phone));
        Assert.Equal(CodeState.Expired, _codes.State);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("AAAA-AAAA")]
    public void Try_WithoutACode_IsWrong(string typed)
    {
        Assert.Equal(CodeAnswer.Wrong, _codes.Try(typed, s_phone));
        Assert.Equal(CodeState.None, _codes.State);
    }

    [Fact]
    public void Try_FiveWrongOnesFromOneAddress_HoldsThatAddressOnly()
    {
        var code = _codes.Make();
        for (var i = 0; i < PairingCodes.MostWrongFromOne; i++)
            Assert.Equal(CodeAnswer.Wrong, _codes.Try(Wrong(i), s_phone));
        Assert.Equal(CodeAnswer.Held, _codes.Try(code.Scanned, s_phone));
        // The same machine, as a socket for both families names it.
        Assert.Equal(CodeAnswer.Held, _codes.Try(code.Scanned, s_phone.MapToIPv6()));
        Assert.Equal(CodeAnswer.Good, _codes.Try(code.Scanned, IPAddress.Parse("192.168.7.21")));
    }

    [Fact]
    public void Try_FromAHeldAddress_IsLookedAtAgainAfterItsTime()
    {
        for (var i = 0; i < PairingCodes.MostWrongFromOne; i++)
            _codes.Try(Wrong(i), s_phone);
        _clock.Move(PairingCodes.Hold - TimeSpan.FromTicks(1));
        Assert.Equal(CodeAnswer.Held, _codes.Try(_codes.Make().Scanned, s_phone));
        _clock.Move(TimeSpan.FromTicks(1));
        Assert.Equal(CodeAnswer.Good, _codes.Try(_codes.Make().Scanned, s_phone));
    }

    [Fact]
    public void Try_FromManyAddressesOfOneIpv6Network_IsHeldAsOne()
    {
        var code = _codes.Make();
        for (var i = 1; i <= PairingCodes.MostWrongFromOne; i++)
            _codes.Try(Wrong(i), IPAddress.Parse($"fd00:7::{i:x}"));
        Assert.Equal(CodeAnswer.Held, _codes.Try(code.Scanned, IPAddress.Parse("fd00:7::beef")));
        Assert.Equal(
            CodeAnswer.Good,
            _codes.Try(code.Scanned, IPAddress.Parse("fd00:7:0:1::beef"))
        );
    }

    [Fact]
    public void Try_TwentyWrongOnesFromEverywhere_WithdrawsTheCodeButNotTheNext()
    {
        var code = _codes.Make();
        for (var i = 0; i < PairingCodes.MostWrong; i++)
            Assert.Equal(CodeAnswer.Wrong, _codes.Try(Wrong(i), IPAddress.Parse($"10.0.0.{i}")));
        Assert.Equal(CodeState.Withdrawn, _codes.State);
        Assert.Equal(CodeAnswer.Withdrawn, _codes.Try(code.Typed, s_phone));
        Assert.Equal(CodeAnswer.Good, _codes.Try(_codes.Make().Typed, s_phone));
    }

    [Fact]
    public void Try_AUsedCodeAgainAndAgain_HoldsNobody()
    {
        var used = _codes.Make();
        _codes.Try(used.Scanned, s_phone);
        for (var i = 0; i < 2 * PairingCodes.MostWrong; i++)
            Assert.Equal(CodeAnswer.Used, _codes.Try(used.Scanned, s_phone));
        Assert.Equal(CodeAnswer.Good, _codes.Try(_codes.Make().Scanned, s_phone));
    }

    private static string Wrong(int i) => "WRNG-" + i.ToString("D4", CultureInfo.InvariantCulture);
}
