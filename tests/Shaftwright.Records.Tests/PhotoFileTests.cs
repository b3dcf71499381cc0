using System.Text;
using CsCheck;

namespace Shaftwright.Records.Tests;

/// <summary>What is taken for a photo, against files put together by hand from the parts that ITU-T T.81, annex B names.</summary>
public class PhotoFileTests
{
    private static string? Problem(byte[] bytes) =>
        PhotoFile.Look(bytes, PhotoFile.NameOf(bytes)).Problem;

    [Fact]
    public void Look_AWholeJpeg_TakesItAndSaysItsSize()
    {
        var jpeg = Jpeg.Of(1600, 1200);
        Assert.Equal((1600, 1200, null), PhotoFile.Look(jpeg, PhotoFile.NameOf(jpeg)));
    }

    [Fact]
    public void Look_ProgressiveWithSeveralScans_IsTaken() =>
        Assert.Null(Problem(Jpeg.Of(64, 48, frame: 0xC2, scans: 3)));

    [Fact]
    public void NameOf_TheStandardsOwnExample_IsThatDigest() =>
        // FIPS 180-2, appendix B.1: SHA-256 of "abc".
        Assert.Equal(
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            PhotoFile.NameOf("abc"u8)
        );

    [Fact]
    public void Look_UnderAnotherName_IsNotTaken() =>
        Assert.Contains(
            "cut or changed",
            PhotoFile.Look(Jpeg.Of(64, 48), PhotoFile.NameOf(Jpeg.Of(48, 64))).Problem!,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0xE1, "Exif\0\0II*\0")]
    [InlineData(0xE1, "http://ns.adobe.com/xap/1.0/\0<x/>")]
    [InlineData(0xE2, "MPF\0")]
    [InlineData(0xED, "Photoshop 3.0\0")]
    [InlineData(0xFE, "taken at home")]
    public void Look_WithNotesOfTheCamera_IsNotTaken(int marker, string notes) =>
        Assert.Contains(
            "more than the picture",
            Problem(Jpeg.Of(64, 48, extra: ((byte)marker, notes)))!,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0xE2, "ICC_PROFILE\0\u0001\u0001")]
    [InlineData(0xEE, "Adobe\0d\0\0\0\0\0")]
    public void Look_WithWhatTellsHowToShowIt_IsTaken(int marker, string part) =>
        Assert.Null(Problem(Jpeg.Of(64, 48, extra: ((byte)marker, part))));

    [Fact]
    public void Look_CutAnywhere_IsNotTaken()
    {
        var jpeg = Jpeg.Of(64, 48);
        for (var n = 0; n < jpeg.Length; n++)
            Assert.True(Problem(jpeg[..n]) is not null, $"cut after {n} bytes");
    }

    [Fact]
    public void Look_WithSomethingBehindThePicture_IsNotTaken() =>
        Assert.NotNull(Problem([.. Jpeg.Of(64, 48), .. "<script>"u8]));

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'/>")]
    [InlineData("<!doctype html><script>alert(1)</script>")]
    [InlineData("\u0089PNG\r\n\u001a\n")]
    [InlineData("")]
    public void Look_OfSomethingElse_IsNotTaken(string text) =>
        Assert.NotNull(Problem(Encoding.Latin1.GetBytes(text)));

    [Theory]
    [InlineData(0, 48)]
    [InlineData(64, 0)]
    [InlineData(4097, 48)]
    [InlineData(64, 65000)]
    public void Look_OfASizeNoPhotoHas_IsNotTaken(int width, int height) =>
        Assert.NotNull(Problem(Jpeg.Of(width, height)));

    [Fact]
    public void Look_TooManyBytes_IsNotTaken() =>
        Assert.Contains(
            "too large",
            Problem(Jpeg.Of(64, 48, coded: PhotoFile.MostBytes))!,
            StringComparison.Ordinal
        );

    [Fact]
    public void Look_AnyBytesAtAll_AnswersAndDoesNotThrow() =>
        Gen.Select(Gen.Byte.Array[0, 300], Gen.Int[0, 200], Gen.Byte)
            .Sample(
                (noise, at, b) =>
                {
                    Problem(noise);
                    Problem([0xFF, 0xD8, .. noise]);
                    var bent = Jpeg.Of(64, 48);
                    bent[at % bent.Length] = b;
                    Problem(bent);
                },
                iter: 2000
            );
}

/// <summary>A file with the parts of a JPEG, its coded picture at random.</summary>
internal static class Jpeg
{
    public static byte[] Of(
        int width,
        int height,
        byte frame = 0xC0,
        int scans = 1,
        int coded = 200,
        int seed = 7,
        (byte Marker, string Text)? extra = null
    )
    {
        var bytes = new List<byte> { 0xFF, 0xD8 };
        Part(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]);
        if (extra is { } e)
            Part(e.Marker, Encoding.Latin1.GetBytes(e.Text));
        Part(0xDB, new byte[65]);
        Part(
            frame,
            [8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 1, 1, 0x11, 0]
        );
        Part(0xC4, new byte[20]);
#pragma warning disable CA5394 // A picture, not a secret.
        var random = new Random(seed);
        for (var s = 0; s < scans; s++)
        {
            Part(0xDA, [1, 1, 0, 0, 63, 0]);
            var noise = new byte[coded];
            random.NextBytes(noise);
            foreach (var b in noise)
            {
                bytes.Add(b);
                if (b == 0xFF)
                    bytes.Add(0);
            }
            bytes.AddRange([0xFF, 0xD3, 0x12]);
        }
#pragma warning restore CA5394
        bytes.AddRange([0xFF, 0xD9]);
        return [.. bytes];

        void Part(byte marker, ReadOnlySpan<byte> content)
        {
            bytes.AddRange([
                0xFF,
                marker,
                (byte)((content.Length + 2) >> 8),
                (byte)(content.Length + 2),
            ]);
            bytes.AddRange(content);
        }
    }
}
