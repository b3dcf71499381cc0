using System.Xml.Linq;
using CsCheck;
using Shaftwright.Drawings;

namespace Shaftwright.App.Tests.Drawings;

public class SvgWriterTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Write_AnyWords_ComeBackWholeFromAnXmlReader() =>
        Gen.String.Sample(words =>
        {
            // XML has no place for control characters; the writer drops them, and line ends are spaces to a reader.
            var sane = string.Concat(
                words
                    .EnumerateRunes()
                    .Where(r => r.Value >= 0x20 && r.Value is not (0xFFFE or 0xFFFF))
                    .Select(r => r.ToString())
            );
            var drawing = new Drawing(
                "sample",
                sane,
                words,
                100,
                100,
                1,
                [new Text(Ink.Note, new(1, 2), sane, 14)],
                new("", [], [])
            );
            var svg = XElement.Parse(SvgWriter.Write(drawing, "an\"id<", standalone: true));
            Assert.Equal(sane, svg.Element(s_svg + "title")!.Value);
            Assert.Equal(sane, svg.Element(s_svg + "text")!.Value);
        });

    [Fact]
    public void Write_EveryDrawing_IsAnImageWithATitleAndADescription()
    {
        foreach (var (name, drawing) in Samples.Drawings(Drawing.Telephone))
        {
            var svg = XElement.Parse(SvgWriter.Write(drawing, "x7", standalone: true));
            Assert.True("img" == svg.Attribute("role")?.Value, name);
            var named = svg.Attribute("aria-labelledby")!.Value.Split(' ');
            var said = named
                .Select(id => svg.Elements().Single(e => e.Attribute("id")?.Value == id).Value)
                .ToList();
            Assert.True(said.All(s => s.Length > 10), name);
            Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", svg.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Css_EveryInk_HasARuleForTheFormItIsUsedIn()
    {
        var used = Samples
            .Drawings(Drawing.Telephone)
            .SelectMany(d => d.Drawing.Shapes)
            .Where(s => s is Polygon or Circle && s.Ink is not (Ink.Detail or Ink.Path or Ink.Bar))
            .Select(s => DrawingStyle.ClassOf(s.Ink))
            .Distinct();
        foreach (var ink in used)
            Assert.Contains(".face." + ink, DrawingStyle.Css, StringComparison.Ordinal);
    }
}
