namespace Shaftwright.Drawings;

/// <summary>How the printed sheet looks: black on white, A4, an operation never split over two pages.</summary>
internal static class SheetStyle
{
    /// <summary>The style sheet, with the running head in it.</summary>
    /// <param name="head">What stands at the top of every page.</param>
    public static string Css(string head) =>
        $$$"""
            @page{size:A4;margin:19mm 14mm 16mm;
            @top-left{content:"{{{CssString(
                head
            )}}}";font:9pt system-ui,"DejaVu Sans",sans-serif;color:#000;vertical-align:bottom;padding-bottom:3mm}
            @top-right{content:"page " counter(page) " of " counter(pages);font:9pt system-ui,"DejaVu Sans",sans-serif;color:#000;vertical-align:bottom;padding-bottom:3mm}
            @bottom-left{content:"Shaftwright route card. Local codes, the event's rules and licensed practice prevail.";font:8pt system-ui,"DejaVu Sans",sans-serif;color:#000}
            }
            *{box-sizing:border-box}
            html{background:#fff;color:#000;font:9.5pt/1.35 system-ui,-apple-system,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;font-variant-numeric:tabular-nums;color-scheme:light}
            body{margin:0 auto;max-width:182mm;padding:6mm 0}
            @media screen{body{padding:6mm 4mm}}
            h1{font-size:19pt;line-height:1.15;margin:0 0 1.5mm}
            h2{font-size:13pt;margin:7mm 0 2mm;border-bottom:1.2pt solid #000;padding-bottom:1mm;break-after:avoid}
            h3{font-size:11.5pt;margin:0;break-after:avoid}
            p{margin:0 0 1.6mm}
            .about{margin-bottom:2mm}
            .prevails{border:1.2pt solid #000;padding:1.5mm 2.5mm;margin:3mm 0}
            .next{font-size:12pt;margin:3mm 0}
            dl.short{display:grid;grid-template-columns:26mm 1fr;gap:1.2mm 3mm;margin:0}
            dl.short dt{font-weight:600}
            dl.short dd{margin:0}
            .op{break-inside:avoid;border-top:.8pt solid #000;padding:2.5mm 0 2.5mm;display:grid;grid-template-columns:11mm 1fr 47mm;gap:0 3mm}
            .op .no{font-size:15pt;font-weight:700;line-height:1}
            .op .what{margin:.8mm 0 1.2mm}
            .op .answer{font-size:11pt;font-weight:600;margin:1mm 0}
            .state{display:flex;gap:2mm;align-items:center;font-weight:600;margin-bottom:1.5mm}
            .state svg{width:4.6mm;height:4.6mm;flex:none;fill:none;stroke:#000;stroke-width:1.75}
            .sign{border:.6pt solid #000;min-height:15mm;padding:1.2mm 2mm;font-size:8.5pt}
            .sign .line{border-bottom:.5pt solid #000;height:6.5mm;display:flex;align-items:flex-end}
            .because{font-style:italic}
            .caution{border-left:3pt solid #000;padding-left:2mm;margin:1mm 0}
            ul.found{margin:1mm 0 0;padding:0;list-style:none}
            ul.found li{margin:0 0 1.2mm}
            ul.found .do{display:block}
            .source{font-size:8.5pt}
            .nonumber{font-size:9pt}
            figure{break-inside:avoid;margin:3mm 0 3mm 14mm;max-width:132mm}
            figure.narrow{max-width:78mm}
            table{border-collapse:collapse;width:100%;margin:2mm 0 3mm;font-size:9pt}
            caption{text-align:left;font-weight:600;padding-bottom:1mm}
            th,td{text-align:left;vertical-align:top;border-bottom:.4pt solid #000;padding:.8mm 2mm .8mm 0}
            th{border-bottom-width:1pt;font-weight:600}
            tr,li,.whole{break-inside:avoid}
            .block{break-inside:avoid}
            .op+figure,.op+.rows{break-before:avoid}
            .numbers td:not(:first-child){white-space:nowrap}
            .numbers table{font-size:8.5pt}
            @media screen and (max-width:170mm){.op{grid-template-columns:9mm minmax(0,1fr)}.op>div:last-child{grid-column:2;margin-top:3mm}dl.short{grid-template-columns:minmax(0,1fr)}figure{margin-left:0;max-width:100%}table{display:block;overflow-x:auto}}
            """;

    private static string CssString(string text)
    {
        var safe = new System.Text.StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value < 0x20)
                safe.Append(' ');
            // A quote, a backslash or a tag's end inside a style element must not end it: written as code points.
            else if (rune.Value is '"' or '\\' or '<' or '>' or '&')
                safe.Append('\\')
                    .Append(
                        rune.Value.ToString("X6", System.Globalization.CultureInfo.InvariantCulture)
                    );
            else
                safe.Append(rune.ToString());
        }
        return safe.ToString();
    }
}
