namespace Shaftwright.Truing;

/// <summary>A turn as a point of the shaft's line, if its places are known.</summary>
/// <param name="Index">The turn's place in the list.</param>
/// <param name="TurnId">Its id.</param>
/// <param name="Station">Position of the dial, mm.</param>
/// <param name="First">First support, mm.</param>
/// <param name="Second">Second support, mm.</param>
/// <param name="Offset">First harmonic, mm.</param>
/// <param name="Uncertainty">Standard uncertainty of it in any one direction, mm.</param>
/// <param name="PlaceUncertainty">Standard uncertainty of a position, mm.</param>
/// <param name="Whole">False when places are missing, or the readings do not go round.</param>
internal readonly record struct ReadStation(
    int Index,
    string TurnId,
    double Station,
    double First,
    double Second,
    Across Offset,
    double Uncertainty,
    double PlaceUncertainty,
    bool Whole
)
{
    public static ReadStation Of(
        DialTurn turn,
        int index,
        (Across At, double Uncertainty)? offset,
        ShaftPlaces places
    )
    {
        // Centres sit in the ends unless it is noted where else.
        var (first, second) = turn.Support switch
        {
            Support.Centres => (
                turn.FirstSupportAt?.Value ?? 0,
                turn.SecondSupportAt?.Value ?? places.Overall
            ),
            Support.Vees => (turn.FirstSupportAt?.Value, turn.SecondSupportAt?.Value),
            _ => ((double?)null, (double?)null),
        };
        var station = turn.Station?.Value;
        if (
            offset is not { } read
            || station is not { } x
            || first is not { } a
            || second is not { } b
            || Math.Abs(b - a) < 10
        )
            return new(index, turn.Id, 0, 0, 0, default, 0, 0, false);
        return new(
            index,
            turn.Id,
            x,
            Math.Min(a, b),
            Math.Max(a, b),
            read.At,
            read.Uncertainty,
            TruingFields.Station.StandardUncertainty(turn.Station!),
            true
        );
    }
}
