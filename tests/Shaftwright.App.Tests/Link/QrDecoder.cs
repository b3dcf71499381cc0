using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Shaftwright.App.Tests.Link;

/// <summary>Another hand's decoder, so that a picture is read by other rules than it was drawn by.</summary>
internal static class QrDecoder
{
    /// <summary>Reads a square picture, one byte a pixel, 0 for black.</summary>
    public static string Read(byte[] grey, int side)
    {
        var source = new RGBLuminanceSource(
            grey,
            side,
            side,
            RGBLuminanceSource.BitmapFormat.Gray8
        );
        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)));
        Assert.NotNull(read);
        return read.Text;
    }
}
