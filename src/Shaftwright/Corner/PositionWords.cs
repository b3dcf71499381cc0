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
}
