using System.Globalization;
using Shaftwright.Donors;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.ShelfTable;

/// <summary>A shelf from a spreadsheet: one row a stretch, the columns by their names in the first row, in any order.</summary>
/// <remarks>A column may name the unit of its bare numbers, as in <c>diameter (in)</c>; a cell may carry its own. Decimal commas
/// are read where the separator is a semicolon or a tab, or the cell is quoted. Columns: docs/shelf.md.</remarks>
public static class ShelfCsv
{
    /// <summary>The columns that are understood.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "shaft",
        "name",
        "place",
        "condition",
        "side",
        "steel",
        "file",
        "core",
        "surface",
        "carried",
        "walked end",
        "walked seat",
        "walked beyond",
        "far end",
        "far seat",
        "far beyond",
        "what",
        "from",
        "until",
        "diameter",
        "end diameter",
        "root",
        "fillet",
        "teeth",
        "module",
        "pressure angle",
        "run-out",
        "case",
        "note",
    ];

    /// <summary>Reads a table. Never throws on its content.</summary>
    /// <param name="text">The text, as saved or pasted.</param>
    public static ShelfReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var rows = TableText.Rows(text.TrimStart('\ufeff'), TableText.Separator(text));
        var log = new List<Refusal>();
        if (rows.Count == 0)
        {
            log.Add(new("line 1", "", "is empty", "a first row with the names of the columns"));
            return new(new(), log);
        }
        var heads = Heads(rows[0], log);
        if (log.Count > 0)
            return new(new(), log);
        var shafts = new List<ShelfRows>();
        foreach (var row in rows.Skip(1))
        {
            if (row.Cells.Skip(heads.Count).Any(c => c.Length > 0))
            {
                log.Add(
                    new(
                        $"line {row.Line.ToString(CultureInfo.InvariantCulture)}",
                        string.Join(" | ", row.Cells),
                        $"has {row.Cells.Count} cells, and the first row names {heads.Count}",
                        "as many cells as columns; a number with a decimal comma in quotes, or semicolons between the cells"
                    )
                );
                if (shafts.Count > 0)
                    shafts[^1].Spoil();
                continue;
            }
            var cells = new RowCells(row, heads, log);
            var id = cells.Text("shaft");
            if (id.Length == 0 && shafts.Count == 0)
            {
                cells.Refuse(
                    "shaft",
                    "is empty",
                    "a word for the shaft, such as B4; below it may stay empty"
                );
                continue;
            }
            if (shafts.Count == 0 || (id.Length > 0 && shafts[^1].Id != id))
            {
                if (shafts.Exists(s => s.Id == id))
                {
                    cells.Refuse(
                        "shaft",
                        "stands further up already",
                        "the rows of one shaft one below the other"
                    );
                    shafts.Find(s => s.Id == id)!.Spoil();
                }
                shafts.Add(new ShelfRows(id));
            }
            shafts[^1].Add(cells);
        }
        return new(
            new() { Donors = [.. shafts.Select(s => s.Whole(log)).OfType<ShelfDonor>()] },
            log
        );
    }

    private static List<(string Name, string Unit)> Heads(TableRow row, List<Refusal> log)
    {
        var heads = new List<(string, string)>();
        foreach (var cell in row.Cells)
        {
            var open = cell.IndexOfAny(['(', '[']);
            var name = (open < 0 ? cell : cell[..open]).Trim().ToLowerInvariant();
            var unit = open < 0 ? "" : cell[(open + 1)..].Trim(')', ']', ' ');
            if (name.Length > 0 && !Columns.Contains(name))
                log.Add(
                    new(
                        $"line {row.Line.ToString(CultureInfo.InvariantCulture)}",
                        cell,
                        "is not a column here",
                        string.Join(", ", Columns)
                    )
                );
            else if (name.Length > 0 && heads.Exists(h => h.Item1 == name))
                log.Add(
                    new(
                        $"line {row.Line.ToString(CultureInfo.InvariantCulture)}",
                        cell,
                        "stands twice",
                        "each column once"
                    )
                );
            heads.Add((name, unit));
        }
        foreach (var needed in new[] { "shaft", "what", "until" })
        {
            if (!heads.Exists(h => h.Item1 == needed))
                log.Add(
                    new(
                        $"line {row.Line.ToString(CultureInfo.InvariantCulture)}",
                        string.Join(" | ", row.Cells),
                        $"has no column \"{needed}\"",
                        string.Join(", ", Columns)
                    )
                );
        }
        return heads;
    }
}
