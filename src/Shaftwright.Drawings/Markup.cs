using System.Text;

namespace Shaftwright.Drawings;

/// <summary>Words into markup.</summary>
public static class Markup
{
    /// <summary>Escapes words for HTML and SVG text and attributes, and drops characters that XML cannot carry.</summary>
    /// <param name="words">The words; null is empty.</param>
    public static string Escape(string? words)
    {
        if (string.IsNullOrEmpty(words))
            return "";
        var text = new StringBuilder(words.Length + 16);
        foreach (var rune in words.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '&':
                    text.Append("&amp;");
                    break;
                case '<':
                    text.Append("&lt;");
                    break;
                case '>':
                    text.Append("&gt;");
                    break;
                case '"':
                    text.Append("&quot;");
                    break;
                case '\'':
                    text.Append("&#39;");
                    break;
                case < 0x20 and not ('\t' or '\n' or '\r'):
                case 0xFFFE or 0xFFFF:
                    break;
                default:
                    text.Append(rune.ToString());
                    break;
            }
        }
        return text.ToString();
    }

    /// <summary>Rows of a table that is not broken over two pages.</summary>
    private const int MostWhole = 18;

    /// <summary>The table behind a drawing, as HTML.</summary>
    /// <param name="table">The table.</param>
    /// <exception cref="ArgumentNullException"><paramref name="table"/> is null.</exception>
    public static string Html(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        // A short table stays in one piece on paper.
        var html = new StringBuilder(
            table.Rows.Count <= MostWhole ? "<table class=\"whole\"><caption>" : "<table><caption>"
        );
        html.Append(Escape(table.Caption)).Append("</caption><thead><tr>");
        foreach (var head in table.Heads)
            html.Append("<th scope=\"col\">").Append(Escape(head)).Append("</th>");
        html.Append("</tr></thead><tbody>");
        foreach (var row in table.Rows)
        {
            html.Append("<tr>");
            foreach (var cell in row)
                html.Append("<td>").Append(Escape(cell)).Append("</td>");
            html.Append("</tr>");
        }
        return html.Append("</tbody></table>").ToString();
    }
}
