using Shaftwright.Drawings;

namespace Shaftwright.App.Tests.Drawings;

public class LegibleTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task EveryDrawing_OnATelephone_HasWordsWholeApartAndLargeEnough()
    {
        var drawings = Samples.Drawings(Drawing.Telephone).ToList();
        var page = await chromium.Show(Chromium.PageOf(drawings));
        var trouble = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('svg')].flatMap((svg, n) => {
              const out = [], vb = svg.viewBox.baseVal, scale = svg.getBoundingClientRect().width / vb.width;
              const texts = [...svg.querySelectorAll('text')];
              const boxes = texts.map(t => t.getBBox());
              texts.forEach((t, i) => {
                const b = boxes[i], size = parseFloat(t.getAttribute('font-size')) * scale;
                if (b.x < 0 || b.y < 0 || b.x + b.width > vb.width || b.y + b.height > vb.height)
                  out.push(`${n}|"${t.textContent}" is cut`);
                if (size < 13.9) out.push(`${n}|"${t.textContent}" is ${size} px`);
                texts.forEach((u, j) => {
                  if (j <= i) return;
                  const c = boxes[j], slack = 3;
                  if (b.x + slack < c.x + c.width && c.x + slack < b.x + b.width &&
                      b.y + slack < c.y + c.height && c.y + slack < b.y + b.height)
                    out.push(`${n}|"${t.textContent}" lies on "${u.textContent}"`);
                });
              });
              return out;
            })
            """
        );
        Assert.True(
            trouble.Length == 0,
            string.Join(
                '\n',
                trouble.Select(t =>
                    drawings[
                        int.Parse(
                            t.Split('|')[0],
                            System.Globalization.CultureInfo.InvariantCulture
                        )
                    ].Name
                    + ": "
                    + t.Split('|', 2)[1]
                )
            )
        );
    }
}
