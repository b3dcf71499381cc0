using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using Shaftwright.Drawings.Shop;
using Shaftwright.JobFile;
using Shaftwright.Weld;
using UglyToad.PdfPig;

namespace Shaftwright.App.Tests.Drawings.Shop;

public sealed class ShopSheetTests
{
    private static JobResult Demo { get; } =
        Workflow.Evaluate(
            JobJson
                .Read(
                    File.ReadAllText(
                        Path.Combine(
                            Samples.Repository,
                            "examples/grass-track-left-rear.swjob.json"
                        )
                    )
                )
                .Document!.Job
        );

    private static List<ShopSheet> Sheets(Paper paper) =>
        [ShaftSheet.Of(Demo, paper)!, SleeveSheet.Of(Demo, paper)!, JigSheet.Of(Demo, paper)!];

    [Fact]
    public void Sheets_OfTheDemo_StayInsideTheFrameAtAStandardScale()
    {
        foreach (var paper in new[] { Paper.A4, Paper.A3 })
        {
            foreach (var sheet in Sheets(paper))
            {
                Assert.Contains(sheet.Scale, new[] { 1, 0.5, 0.2, 0.1 });
                foreach (var mark in sheet.Marks)
                {
                    foreach (var (x, y) in Ends(mark))
                    {
                        Assert.True(
                            x >= 10 - 1e-6 && x <= paper.Width - 10 + 1e-6,
                            $"{sheet.Code}: {mark} leaves the frame"
                        );
                        Assert.True(
                            y >= 10 - 1e-6 && y <= paper.Height - 10 + 1e-6,
                            $"{sheet.Code}: {mark} leaves the frame"
                        );
                    }
                }
            }
        }
    }

    private static IEnumerable<(double X, double Y)> Ends(ShopMark mark) =>
        mark switch
        {
            ShopLine l => [(l.From.X, l.From.Y), (l.To.X, l.To.Y)],
            ShopCircle c =>
            [
                (c.Centre.X - c.Radius, c.Centre.Y - c.Radius),
                (c.Centre.X + c.Radius, c.Centre.Y + c.Radius),
            ],
            ShopText t => t.Middle
                ? [(t.At.X - Wide(t) / 2, t.At.Y), (t.At.X + Wide(t) / 2, t.At.Y + t.Height)]
                : [(t.At.X, t.At.Y), (t.At.X + Wide(t), t.At.Y + t.Height)],
            _ => [],
        };

    // An average letter of the font is half as wide as its size.
    private static double Wide(ShopText t) => t.Words.Length * t.Height / 0.72 * 0.5;

    [Fact]
    public void Sheets_OfTheDemo_PutNoWordsOnOtherWords()
    {
        foreach (var sheet in Sheets(Paper.A4).Concat(Sheets(Paper.A3)))
        {
            var words = sheet
                .Marks.OfType<ShopText>()
                .Select(t =>
                    (
                        t.Words,
                        Left: t.Middle ? t.At.X - Wide(t) / 2 : t.At.X,
                        t.At.Y,
                        Wide: Wide(t),
                        t.Height
                    )
                )
                .ToList();
            for (var i = 0; i < words.Count; i++)
            {
                for (var j = i + 1; j < words.Count; j++)
                {
                    var (a, b) = (words[i], words[j]);
                    var apart =
                        a.Left + a.Wide < b.Left
                        || b.Left + b.Wide < a.Left
                        || a.Y + a.Height < b.Y
                        || b.Y + b.Height < a.Y;
                    Assert.True(
                        apart,
                        $"{sheet.Code} {sheet.Paper.Name}: \"{a.Words}\" on \"{b.Words}\""
                    );
                }
            }
        }
    }

    [Fact]
    public async Task Dxf_OfEverySheet_PassesTheAuditorAndHasTheShaftInItsTrueSize()
    {
        var folder = Directory.CreateTempSubdirectory("shop").FullName;
        foreach (var sheet in Sheets(Paper.A4))
            await File.WriteAllTextAsync(
                Path.Combine(folder, sheet.Code + ".dxf"),
                DxfWriter.Write(sheet),
                Encoding.ASCII,
                TestContext.Current.CancellationToken
            );
        const string Audit = """
            import sys, glob, ezdxf
            for path in sorted(glob.glob(sys.argv[1] + "/*.dxf")):
                doc = ezdxf.readfile(path)
                audit = doc.audit()
                lines = list(doc.modelspace().query('LINE[layer=="CENTRE"]'))
                longest = max(abs(l.dxf.end.x - l.dxf.start.x) for l in lines)
                print(path.split("/")[-1], doc.dxfversion, len(audit.errors), len(audit.fixes), len(doc.modelspace()), round(longest, 3))
            """;
        var start = new ProcessStartInfo("/usr/bin/python3")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(Audit);
        start.ArgumentList.Add(folder);
        using var python = Process.Start(start)!;
        var (said, wrong) = (
            await python.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken),
            await python.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken)
        );
        await python.WaitForExitAsync(TestContext.Current.CancellationToken);
        Directory.Delete(folder, recursive: true);
        Assert.True(python.ExitCode == 0, wrong);
        var rows = said.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(r => r.Split(' '))
            .ToDictionary(r => r[0], r => r[1..]);
        Assert.Equal(3, rows.Count);
        Assert.All(rows.Values, r => Assert.Equal(["AC1009", "0", "0"], r[..3]));
        // The shaft's centre line stands 4 mm of sheet beyond both ends.
        var drawn = Sheets(Paper.A4)[0];
        Assert.Equal(
            Demo.Cut!.Overall!.Value + 8 / drawn.Scale,
            double.Parse(rows["shop-shaft.dxf"][4], CultureInfo.InvariantCulture),
            tolerance: 1e-3
        );
    }

    [Fact]
    public void Pdf_OfAllSheets_IsReadBackWithItsPapersAndNumbers()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write(Sheets(Paper.A4)));
        Assert.Equal(3, pdf.NumberOfPages);
        foreach (var page in pdf.GetPages())
        {
            Assert.Equal(297 * 72 / 25.4, page.Width, tolerance: 0.01);
            Assert.Equal(210 * 72 / 25.4, page.Height, tolerance: 0.01);
            Assert.DoesNotContain("?", page.Text, StringComparison.Ordinal);
        }
        var marks = Demo.Cut!.Marks!;
        var text = pdf.GetPage(1).Text;
        foreach (
            var number in new[] { marks.Inner.Length, marks.Outer.Length, marks.Pair, marks.InVee }
        )
            Assert.Contains(
                number.ToString("0.0", CultureInfo.InvariantCulture),
                text,
                StringComparison.Ordinal
            );
        Assert.Contains("Ø26.30 +0.05/0", pdf.GetPage(2).Text, StringComparison.Ordinal);
        Assert.Contains("ISO 2768-1 m", pdf.GetPage(3).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Svg_OfEverySheet_IsXmlInMillimetres()
    {
        foreach (var sheet in Sheets(Paper.A3))
        {
            var svg = XDocument.Parse(ShopSvg.Write(sheet)).Root!;
            Assert.Equal("420mm", svg.Attribute("width")!.Value);
            Assert.Equal(sheet.Marks.Count + 2, svg.Elements().Count());
        }
    }

    [Fact]
    public void Stl_OfAnyJig_IsOneClosedSkinOfTheJigsVolume() =>
        Check.Sample(
            Gen.Select(
                Gen.Double[12, 60],
                Gen.Double[12, 60],
                Gen.Double[60, 120],
                Gen.Double[5, 40]
            ),
            trial =>
            {
                var (inner, outer, angle, heat) = trial;
                var jig = AlignmentJig.For(inner, outer, angle * Math.PI / 180, heat);
                var skin = StlWriter.Skin(jig);
                // Every edge is walked once each way: closed, and turned outwards all over.
                var edges = new Dictionary<(SkinCorner, SkinCorner), int>();
                var volume = 0.0;
                foreach (var (a, b, c) in skin)
                {
                    foreach (var edge in new[] { (a, b), (b, c), (c, a) })
                        edges[edge] = edges.GetValueOrDefault(edge) + 1;
                    volume +=
                        (
                            a.X * (b.Y * c.Z - b.Z * c.Y)
                            + a.Y * (b.Z * c.X - b.X * c.Z)
                            + a.Z * (b.X * c.Y - b.Y * c.X)
                        ) / 6;
                }
                Assert.All(
                    edges,
                    e =>
                    {
                        Assert.Equal(1, e.Value);
                        Assert.Equal(1, edges.GetValueOrDefault((e.Key.Item2, e.Key.Item1)));
                    }
                );
                double End(double apex) =>
                    jig.Hold
                    * (jig.Width * jig.Height - (jig.Height - apex) * jig.HalfOpening(apex));
                Assert.Equal(
                    End(jig.InnerApex) + End(jig.OuterApex) + jig.Window * jig.Width * jig.Base,
                    volume,
                    tolerance: 1e-6 * volume
                );
                // The bridge lies under both vees, and the opening is narrower than the block.
                Assert.True(jig.Base > 0 && jig.Base < Math.Min(jig.InnerApex, jig.OuterApex));
                Assert.True(
                    2 * jig.HalfOpening(Math.Min(jig.InnerApex, jig.OuterApex)) < jig.Width
                );
            },
            iter: 500
        );

    [Theory]
    [InlineData(24.8, 23.7, 90)]
    [InlineData(30, 20, 60)]
    public void Jig_ForTwoDiameters_HoldsBothOnOneAxis(double inner, double outer, double angle)
    {
        var jig = AlignmentJig.For(inner, outer, angle * Math.PI / 180, 20);
        // The distance from the axis to a face of the vee is the radius, for either.
        var half = angle * Math.PI / 360;
        Assert.Equal(inner / 2, (jig.Axis - jig.InnerApex) * Math.Sin(half), 9);
        Assert.Equal(outer / 2, (jig.Axis - jig.OuterApex) * Math.Sin(half), 9);
        // Both touch below the top, and stand out of it.
        Assert.True(jig.Axis - Math.Max(inner, outer) / 2 * Math.Sin(half) < jig.Height);
        Assert.True(jig.Axis + Math.Min(inner, outer) / 2 > jig.Height);
        Assert.Equal(2 * (20 + 15), jig.Window);
    }
}
