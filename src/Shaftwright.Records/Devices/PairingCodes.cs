using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Records.Devices;

/// <summary>Makes the codes that let a device in, and looks at those that are tried. Kept in memory only: no code outlives the program.</summary>
/// <remarks>The chance that somebody on the network guesses a short code while it lives is at most
/// <see cref="MostWrong"/> / 2^40, about 1 in 55,000 million; from one address it is a quarter of that.</remarks>
/// <param name="clock">The clock.</param>
public sealed class PairingCodes(TimeProvider clock)
{
    /// <summary>How long a code is good.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromMinutes(5);

    /// <summary>Wrong codes from one address, in <see cref="Hold"/>, after which nothing more is taken from it.</summary>
    public const int MostWrongFromOne = 5;

    /// <summary>Wrong codes from anywhere after which the code is withdrawn. More than one address can spend: a single bad neighbour
    /// must not keep everybody from pairing.</summary>
    public const int MostWrong = 20;

    /// <summary>How long an address is held off after its last wrong code.</summary>
    public static readonly TimeSpan Hold = TimeSpan.FromMinutes(15);

    /// <summary>Addresses remembered. A neighbour with more than that has spent <see cref="MostWrong"/> long before.</summary>
    private const int MostAddresses = 1000;

    /// <summary>32 signs, 5 bits each, without I, O, 0 and 1.</summary>
    private const string Signs = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

    private const int TypedSigns = 8;
    private const int ScannedBytes = 16;

    private readonly Lock _lock = new();
    private readonly Dictionary<IPAddress, (int Wrong, DateTimeOffset Last)> _from = [];
    private Kept? _now;
    private Kept? _before;
    private int _wrong;

    /// <summary>What became of the code made last.</summary>
    public CodeState State
    {
        get
        {
            lock (_lock)
                return StateOf(_now);
        }
    }

    /// <summary>Makes a code. The one before is good no longer.</summary>
    public PairingCode Make()
    {
        var signs = RandomNumberGenerator.GetString(Signs, TypedSigns);
        var code = new PairingCode(
            Secret.Make(ScannedBytes),
            $"{signs[..4]}-{signs[4..]}",
            clock.GetUtcNow() + Life
        );
        lock (_lock)
        {
            _before = _now;
            if (_before is { State: CodeState.Waiting })
                _before.State = CodeState.Expired;
            _now = new(Secret.Hash(code.Scanned), Secret.Hash(signs), code.Expires);
            _wrong = 0;
        }
        return code;
    }

    /// <summary>Takes back a code that waits.</summary>
    public void Withdraw()
    {
        lock (_lock)
        {
            if (_now is { State: CodeState.Waiting })
                _now.State = CodeState.Expired;
        }
    }

    /// <summary>Looks at a code. Two at the same moment are looked at one after the other: only one is the first.</summary>
    /// <param name="typed">Either text of it; letters of either case, blanks and hyphens wherever.</param>
    /// <param name="from">Where it came from.</param>
    public CodeAnswer Try(string typed, IPAddress from)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(from);
        var one = Network(from);
        lock (_lock)
        {
            var now = clock.GetUtcNow();
            Forget(now);
            if (_from.TryGetValue(one, out var past) && past.Wrong >= MostWrongFromOne)
                return CodeAnswer.Held;
            if (_now is not null && _now.Is(typed))
            {
                var state = StateOf(_now);
                if (state != CodeState.Waiting)
                    return Answer(state);
                _now.State = CodeState.Used;
                return CodeAnswer.Good;
            }
            // Whoever holds a whole code is not guessing; tell what became of it, and do not count it.
            if (_before is not null && _before.Is(typed))
                return Answer(_before.State);
            if (_from.Count < MostAddresses || _from.ContainsKey(one))
                _from[one] = (past.Wrong + 1, now);
            if (_now is { State: CodeState.Waiting } && ++_wrong >= MostWrong)
                _now.State = CodeState.Withdrawn;
            return CodeAnswer.Wrong;
        }
    }

    private CodeState StateOf(Kept? code) =>
        code is null ? CodeState.None
        : code.State == CodeState.Waiting && clock.GetUtcNow() >= code.Expires ? CodeState.Expired
        : code.State;

    private static CodeAnswer Answer(CodeState state) =>
        state switch
        {
            CodeState.Used => CodeAnswer.Used,
            CodeState.Withdrawn => CodeAnswer.Withdrawn,
            _ => CodeAnswer.Expired,
        };

    private void Forget(DateTimeOffset now)
    {
        foreach (var (address, past) in _from)
        {
            if (now - past.Last >= Hold)
                _from.Remove(address);
        }
    }

    /// <summary>A machine may take any address of its own IPv6 network (64 bits of it): the network stands for the machine.</summary>
    private static IPAddress Network(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6)
            return address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6)
            return address;
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(8).Clear();
        return new(bytes);
    }

    /// <summary>What is kept of a code.</summary>
    private sealed class Kept(string scannedHash, string typedHash, DateTimeOffset expires)
    {
        public DateTimeOffset Expires { get; } = expires;

        public CodeState State { get; set; } = CodeState.Waiting;

        public bool Is(string typed) =>
            // Both are always looked at, so that the time taken tells nothing.
            Secret.Matches(typed.Trim(), scannedHash)
            | Secret.Matches(
                string.Concat(typed.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant(),
                typedHash
            );
    }
}
