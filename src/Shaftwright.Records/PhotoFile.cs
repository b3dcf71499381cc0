using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;

namespace Shaftwright.Records;

/// <summary>What a photo must be to be kept: a whole JPEG of a sensible size, with nothing in it but the picture.</summary>
/// <remarks>The parts of the file are walked from its first byte to its last, so that nothing hides behind the picture; the picture
/// itself is not decoded. Source: ITU-T T.81 (JPEG), annex B.</remarks>
public static class PhotoFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 3 * 1024 * 1024;

    /// <summary>Longest side, pixels. The pages send 1600.</summary>
    public const int MostSide = 4096;

    /// <summary>Name of the bytes: SHA-256, 64 small hexadecimal digits.</summary>
    public static string NameOf(ReadOnlySpan<byte> bytes) =>
        Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>True for what can be such a name.</summary>
    public static bool IsName(string? text) =>
        text is { Length: 64 } && text.All(char.IsAsciiHexDigitLower);

    /// <summary>Looks at a photo as it was sent.</summary>
    /// <param name="bytes">All of it.</param>
    /// <param name="name">The name it was sent under.</param>
    /// <returns>Its sizes in pixels, and why it is not taken; null when it is.</returns>
    public static (int Width, int Height, string? Problem) Look(
        ReadOnlySpan<byte> bytes,
        string name
    )
    {
        if (bytes.Length > MostBytes)
            return (0, 0, "is too large");
        if (NameOf(bytes) != name)
            return (0, 0, "is not what its name says: it was cut or changed on the way");
        var jpeg = new Walk(bytes);
        return jpeg.Go() is { } problem ? (0, 0, problem)
            : jpeg.Width > MostSide || jpeg.Height > MostSide
                ? (
                    0,
                    0,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"is {jpeg.Width} × {jpeg.Height} pixels"
                    )
                )
            : (jpeg.Width, jpeg.Height, null);
    }

    private ref struct Walk(ReadOnlySpan<byte> bytes)
    {
        private const string NotWhole = "is not a whole JPEG";
        private const string More = "carries more than the picture, such as where it was taken";

        private readonly ReadOnlySpan<byte> _bytes = bytes;
        private int _at;

        public int Width { get; private set; }

        public int Height { get; private set; }

        /// <summary>Walks from the first byte to the last; says what is wrong.</summary>
        public string? Go()
        {
            if (!_bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8]))
                return NotWhole;
            _at = 2;
            var scanned = false;
            while (true)
            {
                if (Marker() is not { } marker)
                    return NotWhole;
                if (marker == 0xD9)
                    return scanned && _at == _bytes.Length ? null : NotWhole;
                if (Part() is not { Length: > 0 } part)
                    return NotWhole;
                switch (marker)
                {
                    // Start of frame, of any kind but those that are no frames.
                    case >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC):
                        if (Width > 0 || part.Length < 9 || part[0] != 8 || part[5] is not (1 or 3))
                            return NotWhole;
                        Height = BinaryPrimitives.ReadUInt16BigEndian(part[1..]);
                        Width = BinaryPrimitives.ReadUInt16BigEndian(part[3..]);
                        if (Width == 0 || Height == 0)
                            return NotWhole;
                        break;
                    case 0xDA:
                        if (Width == 0 || !Scan())
                            return NotWhole;
                        scanned = true;
                        break;
                    // JFIF, the colour profile and the colour transform tell how to show it; everything else tells more.
                    case 0xE2 when !part.StartsWith("ICC_PROFILE\0"u8):
                    case 0xE1 or (>= 0xE3 and <= 0xED) or 0xEF or 0xFE:
                        return More;
                    case 0xC4 or 0xCC or 0xDB or 0xDD or 0xE0 or 0xE2 or 0xEE:
                        break;
                    default:
                        return NotWhole;
                }
            }
        }

        private int? Marker()
        {
            if (_at >= _bytes.Length || _bytes[_at] != 0xFF)
                return null;
            while (_at < _bytes.Length && _bytes[_at] == 0xFF)
                _at++;
            return _at < _bytes.Length ? _bytes[_at++] : null;
        }

        /// <summary>The content of a part; empty when it does not fit into the file.</summary>
        private ReadOnlySpan<byte> Part()
        {
            if (_at + 2 > _bytes.Length)
                return [];
            var length = BinaryPrimitives.ReadUInt16BigEndian(_bytes[_at..]);
            if (length < 2 || _at + length > _bytes.Length)
                return [];
            var part = _bytes.Slice(_at + 2, length - 2);
            _at += length;
            return part;
        }

        /// <summary>Steps over coded picture up to the next marker that is not part of it; false when the file ends before.</summary>
        private bool Scan()
        {
            for (; _at + 1 < _bytes.Length; _at++)
            {
                if (_bytes[_at] == 0xFF && _bytes[_at + 1] is not (0x00 or (>= 0xD0 and <= 0xD7)))
                    return true;
            }
            return false;
        }
    }
}
