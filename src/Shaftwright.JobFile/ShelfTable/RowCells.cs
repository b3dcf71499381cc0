using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.ShelfTable;

/// <summary>The cells of a row by the names of their columns, read as what they are; what cannot be is logged with its line.</summary>
internal sealed class RowCells(
    TableRow row,
    IReadOnlyList<(string Name, string Unit)> heads,
    List<Refusal> log
)
{
    /// <summary>True once a cell of it was refused.</summary>
    public bool Refused { get; private set; }

    public string Text(string column)
    {
        for (var i = 0; i < heads.Count && i < row.Cells.Count; i++)
        {
            if (heads[i].Name == column)
                return row.Cells[i];
        }
        return "";
    }

    public void Refuse(string column, string problem, string accepted)
    {
        Refused = true;
        log.Add(new(At(column), Text(column), problem, accepted));
    }

    public Measured<D>? Measure<D>(string column, Field<D> field)
        where D : IDimension<D>
    {
        var text = Text(column);
        if (text.Length == 0)
            return null;
        var named = heads.First(h => h.Name == column).Unit;
        Unit? bare = null;
        if (named.Length > 0)
        {
            // The unit's own spelling rules, by reading a one of it.
            var one = Measured<D>.Read("1 " + named, column);
            if (one.Measure is null)
            {
                Refuse(column, $"stands under the unit \"{named}\"", one.Refusal!.Accepted);
                return null;
            }
            bare = one.Measure.Unit;
        }
        var reading = field.Read(text, bare);
        if (reading.Measure is { } measure)
        {
            // A bare number is kept with the unit of its column, since it leaves the column here.
            if (bare is not null && double.TryParse(text, CultureInfo.InvariantCulture, out _))
                return field.Read(text + " " + bare.Symbol).Measure ?? measure;
            return measure;
        }
        Refuse(column, reading.Refusal!.Problem, reading.Refusal.Accepted);
        return null;
    }

    public int Count(string column, int most)
    {
        var text = Text(column);
        if (text.Length == 0)
            return 0;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            && count >= 1
            && count <= most
        )
            return count;
        Refuse(column, "is not a count in range", $"a whole number from 1 to {most}");
        return 0;
    }

    /// <summary>A word of a list; the value of the empty cell when it is empty.</summary>
    public E Word<E>(string column, E empty, IReadOnlyList<(string Word, E Value)> words)
    {
        var text = Text(column);
        if (text.Length == 0)
            return empty;
        foreach (var (word, value) in words)
        {
            if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase))
                return value;
        }
        Refuse(column, "is not one of the words", string.Join(", ", words.Select(w => w.Word)));
        return empty;
    }

    private string At(string column) =>
        $"line {row.Line.ToString(CultureInfo.InvariantCulture)}, {column}";
}
