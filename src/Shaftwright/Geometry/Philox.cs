namespace Shaftwright.Geometry;

/// <summary>Random numbers by counter: the same seed, counter and place give the same number, in any order and on any thread.</summary>
/// <remarks>Philox 4×32 with ten rounds: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", Supercomputing
/// 2011. Check values: Published/philox.json.</remarks>
public static class Philox
{
    /// <summary>One block of 128 random bits.</summary>
    /// <param name="counter">Which block: four words, the first the low one.</param>
    /// <param name="key">Which stream: two words, the first the low one.</param>
    public static (uint A, uint B, uint C, uint D) Block(
        (uint A, uint B, uint C, uint D) counter,
        (uint A, uint B) key
    )
    {
        var (a, b, c, d) = counter;
        var (k, l) = key;
        unchecked
        {
            for (var round = 0; round < 10; round++)
            {
                var p = 0xD2511F53UL * a;
                var q = 0xCD9E8D57UL * c;
                (a, b, c, d) = ((uint)(q >> 32) ^ b ^ k, (uint)q, (uint)(p >> 32) ^ d ^ l, (uint)p);
                k += 0x9E3779B9;
                l += 0xBB67AE85;
            }
        }
        return (a, b, c, d);
    }

    /// <summary>A number spread evenly over −1 to 1, ends left out.</summary>
    /// <param name="seed">The run.</param>
    /// <param name="item">Which item of the run, 0 or more.</param>
    /// <param name="place">Which number of the item.</param>
    /// <returns>53 random bits, centred: never 0 and never ± 1.</returns>
    public static double Even(ulong seed, long item, int place)
    {
        var (a, b, _, _) = Block(
            ((uint)item, (uint)(item >> 32), (uint)place, 0),
            ((uint)seed, (uint)(seed >> 32))
        );
        var bits = ((ulong)a << 21) ^ (b >> 11);
        return (bits + 0.5) * (2.0 / (1UL << 53)) - 1;
    }
}
