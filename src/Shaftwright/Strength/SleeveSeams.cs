namespace Shaftwright.Strength;

/// <summary>What was seen of a sleeve over the weld. Nothing said counts as not done.</summary>
public sealed record SleeveSeams
{
    /// <summary>True if it was put on in halves, false if it was slid on whole.</summary>
    public bool? Halves { get; init; }

    /// <summary>Halves: the two long seams lie opposite each other.</summary>
    public bool? SeamsOpposite { get; init; }

    /// <summary>The long seams lie clear of the butt's starts and stops.</summary>
    public bool? ClearOfStarts { get; init; }

    /// <summary>No crater, undercut or stop lies at a toe of the end seams.</summary>
    public bool? NoCraterAtToe { get; init; }

    /// <summary>Every seam is welded right round and along, without a gap.</summary>
    public bool? Closed { get; init; }

    /// <summary>The hollow under it was vented while it was hot.</summary>
    public bool? Vented { get; init; }

    /// <summary>The vent was closed last, cold and dry.</summary>
    public bool? VentClosed { get; init; }

    /// <summary>Every seam was crack-tested and is clean.</summary>
    public bool? Tested { get; init; }

    /// <summary>True when all that must hold before a sleeve can count was answered with yes.</summary>
    public bool AllHold =>
        Halves is not null
        && (Halves == false || SeamsOpposite == true)
        && this
            is {
                ClearOfStarts: true,
                NoCraterAtToe: true,
                Closed: true,
                Vented: true,
                VentClosed: true,
                Tested: true
            };

    /// <summary>What is still to be seen to, in words; empty when nothing is.</summary>
    public IReadOnlyList<string> Open
    {
        get
        {
            var open = new List<string>();
            if (Halves is null)
                open.Add("whether it went on whole or in halves");
            if (Halves == true && SeamsOpposite != true)
                open.Add("long seams opposite each other");
            if (ClearOfStarts != true)
                open.Add("long seams clear of the butt's starts and stops");
            if (NoCraterAtToe != true)
                open.Add("no crater at a toe");
            if (Closed != true)
                open.Add("every seam closed");
            if (Vented != true)
                open.Add("the hollow vented while hot");
            if (VentClosed != true)
                open.Add("the vent closed last");
            if (Tested != true)
                open.Add("every seam crack-tested");
            return open;
        }
    }
}
