using QRCoder;

namespace Shaftwright.App.Link;

/// <summary>A text as a picture for a camera (QR code, ISO/IEC 18004).</summary>
internal static class QrPicture
{
    /// <summary>One text a row, <c>1</c> is dark; the quiet margin of four is part of it. A seventh of it may be dirt or glare (level M).</summary>
    public static IReadOnlyList<string> Of(string text)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        return
        [
            .. data.ModuleMatrix.Select(row =>
                string.Create(
                    row.Count,
                    row,
                    static (signs, bits) =>
                    {
                        for (var i = 0; i < signs.Length; i++)
                            signs[i] = bits[i] ? '1' : '0';
                    }
                )
            ),
        ];
    }
}
