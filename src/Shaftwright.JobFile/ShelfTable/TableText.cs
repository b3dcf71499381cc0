using System.Text;

namespace Shaftwright.JobFile.ShelfTable;

/// <summary>One row of a table, with the line it stands on.</summary>
/// <param name="Line">Line of the text, from 1.</param>
/// <param name="Cells">Its cells, trimmed.</param>
internal sealed record TableRow(int Line, IReadOnlyList<string> Cells);

/// <summary>Text with separators, as a spreadsheet saves or copies it: comma, semicolon or tab; quotes as in RFC 4180.</summary>
internal static class TableText
{
    /// <summary>The separator of a text: of tab, semicolon and comma the one that stands most often in its first line.</summary>
    public static char Separator(string text)
    {
        var first = text.AsSpan();
        var end = first.IndexOfAny('\r', '\n');
        if (end >= 0)
            first = first[..end];
        var (best, most) = (',', 0);
        foreach (var c in "\t;,")
        {
            var count = first.Count(c);
            if (count > most)
                (best, most) = (c, count);
        }
        return best;
    }

    /// <summary>The rows that hold anything.</summary>
    public static List<TableRow> Rows(string text, char separator)
    {
        var rows = new List<TableRow>();
        var cells = new List<string>();
        var cell = new StringBuilder();
        var (line, began, quoted) = (1, 1, false);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted)
            {
                if (c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                    cell.Append(text[i++]);
                else if (c == '"')
                    quoted = false;
                else
                    cell.Append(c);
                line += c == '\n' ? 1 : 0;
            }
            else if (c == '"' && cell.ToString().Trim().Length == 0)
            {
                cell.Clear();
                quoted = true;
            }
            else if (c == separator)
                EndCell();
            else if (c == '\n')
                EndRow();
            else if (c != '\r')
                cell.Append(c);
        }
        EndRow();
        return rows;

        void EndCell()
        {
            cells.Add(cell.ToString().Trim());
            cell.Clear();
        }
        void EndRow()
        {
            EndCell();
            if (cells.Exists(s => s.Length > 0))
                rows.Add(new(began, [.. cells]));
            cells.Clear();
            began = ++line;
        }
    }
}
