namespace Shaftwright.CrackTest;

/// <summary>How a mark stands out in a photo.</summary>
public enum MarkLook
{
    /// <summary>Red on white developer; needs colour.</summary>
    RedOnWhite,

    /// <summary>Dark on light, such as black ink on white paint.</summary>
    DarkOnLight,

    /// <summary>Bright on dark, such as a fluorescent mark.</summary>
    BrightOnDark,
}

/// <summary>A photo as bytes.</summary>
/// <param name="Bytes">Rows from the top; each pixel 1 byte (luminance), 3 (red, green, blue) or 4 (red, green, blue, ignored).</param>
/// <param name="Width">Pixels in a row.</param>
/// <param name="Height">Rows.</param>
/// <param name="Stride">Bytes from one row to the next.</param>
/// <param name="BytesPerPixel">1, 3 or 4.</param>
public readonly record struct Photo(
    ReadOnlyMemory<byte> Bytes,
    int Width,
    int Height,
    int Stride,
    int BytesPerPixel
)
{
    /// <summary>True when the sizes fit together.</summary>
    public bool IsWhole =>
        Width > 0
        && Height > 0
        && BytesPerPixel is 1 or 3 or 4
        && Stride >= (long)Width * BytesPerPixel
        && Bytes.Length >= (long)Stride * (Height - 1) + (long)Width * BytesPerPixel;
}

/// <summary>A place in a photo, pixels from the middle of the top left pixel.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downwards.</param>
public readonly record struct PhotoPoint(double X, double Y);

/// <summary>The scale of a photo, from something of known width in it, in the plane of the mark.</summary>
/// <param name="From">One edge of it.</param>
/// <param name="To">The other edge.</param>
/// <param name="Across">Its width, mm.</param>
/// <param name="PlusMinus">How far off that width may be, mm.</param>
/// <param name="PointsPlusMinus">How far off each of the two points may be, pixels.</param>
public readonly record struct PhotoScale(
    PhotoPoint From,
    PhotoPoint To,
    double Across,
    double PlusMinus = 0,
    double PointsPlusMinus = 1
)
{
    /// <summary>Pixels between the two edges.</summary>
    public double Pixels =>
        Math.Sqrt((From.X - To.X) * (From.X - To.X) + (From.Y - To.Y) * (From.Y - To.Y));

    /// <summary>mm a pixel.</summary>
    public double PerPixel => Across / Pixels;

    /// <summary>Relative error of it, at most.</summary>
    public double RelativeError => PlusMinus / Across + 2 * PointsPlusMinus / Pixels;
}
