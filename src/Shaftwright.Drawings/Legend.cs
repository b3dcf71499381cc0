namespace Shaftwright.Drawings;

/// <summary>Samples of what is on a drawing, each with its word, in rows.</summary>
internal sealed class Legend(Board board)
{
    private const double Sample = 26;
    private const double RowHeight = 22;
    private double _x = Board.Edge;
    private double _y;
    private bool _begun;

    /// <summary>Begins below a height.</summary>
    public Legend Below(double y)
    {
        _y = y + RowHeight;
        return this;
    }

    /// <summary>Base line of the row after the last.</summary>
    public double Bottom => _begun ? _y + 8 : _y - RowHeight;

    /// <summary>One sample. It is drawn from the given left edge, about the given height, 26 units wide.</summary>
    public void Item(string words, Action<double, double> sample)
    {
        var wide = Sample + 6 + Board.WidthOf(words, Board.Small);
        if (_begun && _x + wide > board.Width - Board.Edge)
        {
            _x = Board.Edge;
            _y += RowHeight;
        }
        _begun = true;
        sample(_x, _y - 5);
        board.Add(new Text(Ink.Note, new(_x + Sample + 6, _y), words, Board.Small));
        _x += wide + 14;
    }

    /// <summary>A line as a sample.</summary>
    public void Line(string words, Ink ink) =>
        Item(words, (x, y) => board.Add(new Line(ink, new(x, y), new(x + Sample, y))));

    /// <summary>A face as a sample.</summary>
    public void Face(string words, Ink ink) =>
        Item(words, (x, y) => board.Box(ink, x, y - 7, x + Sample, y + 7));

    /// <summary>A dot as a sample.</summary>
    public void Dot(string words, Ink ink) =>
        Item(words, (x, y) => board.Add(new Circle(ink, new(x + Sample / 2, y), 5)));
}
