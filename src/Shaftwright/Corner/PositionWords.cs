using Shaftwright.Corner.Linkages;
using Shaftwright.Measures;

namespace Shaftwright.Corner;

/// <summary>Names a position of the wheel as one would say it.</summary>
public static class PositionWords
{
    /// <summary>Travel within this of ride height counts as ride height, mm.</summary>
    public const double NearRideHeight = 10;

    /// <summary>"at ride height", "90 mm into bump", "60 mm into droop, on full left lock".</summary>
    /// <param name="travel">mm, bump positive.</param>
    /// <param name="steering">Where the steering stands.</param>
    public static Sentence At(double travel, Steering steering)
    {
        var turned = steering switch
        {
            Steering.FullLeft => ", on full left lock",
            Steering.FullRight => ", on full right lock",
            _ => "",
        };
        if (Math.Abs(travel) < 0.5)
            return $"at ride height{turned}";
        var way = travel > 0 ? "into bump" : "into droop";
        return $"{Say.Length(Math.Abs(travel))} {way}{turned}";
    }

    /// <summary>The same for a position of a linkage: "90 mm into bump, rack 35 mm to the left, driving".</summary>
    /// <param name="travel">mm, bump positive.</param>
    /// <param name="place">Rack, power unit and the other wheel.</param>
    public static Sentence At(double travel, LinkagePlace place)
    {
        var state = place.PowerUnit switch
        {
            PowerUnitState.Driving => ", power unit driving",
            PowerUnitState.Overrun => ", power unit on overrun",
            _ => "",
        };
        var other = place.OtherShare switch
        {
            > 0 => ", the other wheel with it",
            < 0 => ", the other wheel against it",
            _ => "",
        };
        var way = place.Rack > 0 ? "to the left" : "to the right";
        Sentence height = At(travel, Steering.Straight);
        return place.Rack == 0
            ? $"{height}{other}{state}"
            : (Sentence)$"{height}, rack {Say.Length(Math.Abs(place.Rack))} {way}{other}{state}";
    }

    /// <summary>By the place where there is one, else by the steering.</summary>
    /// <param name="travel">mm, bump positive.</param>
    /// <param name="steering">Where the steering stands.</param>
    /// <param name="place">Rack, power unit and the other wheel; null for readings.</param>
    public static Sentence At(double travel, Steering steering, LinkagePlace? place) =>
        place is { } p ? At(travel, p) : At(travel, steering);
}
