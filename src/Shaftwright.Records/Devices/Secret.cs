using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Shaftwright.Records.Devices;

/// <summary>Random words that let somebody in, and what is kept of them.</summary>
internal static class Secret
{
    /// <summary>So many random bytes, as text that may stand in an address or a cookie.</summary>
    public static string Make(int bytes) =>
        Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(bytes));

    /// <summary>What is kept. A fast hash is enough: what it hides is random, and far too long to be guessed.</summary>
    public static string Hash(string secret) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>Whether a secret is the one of a hash; takes the same time for every wrong one.</summary>
    public static bool Matches(string secret, string hash) =>
        CryptographicOperations.FixedTimeEquals(
            Encoding.ASCII.GetBytes(Hash(secret)),
            Encoding.ASCII.GetBytes(hash)
        );
}
