namespace Shaftwright.CrackTest;

/// <summary>Places and levels in words.</summary>
public static class PlaceWords
{
    /// <summary>The place, as after "at".</summary>
    public static string At(Place place) =>
        place switch
        {
            Place.ButtWeld => "the butt weld",
            Place.SleeveInnerEnd => "the sleeve's inner end",
            Place.SleeveOuterEnd => "the sleeve's outer end",
            Place.InnerSpline => "the inner spline",
            Place.OuterSpline => "the outer spline",
            _ => "the plain bar",
        };

    /// <summary>The level as the standard writes it.</summary>
    public static string Level(AcceptanceLevel level) =>
        level switch
        {
            AcceptanceLevel.One => "1",
            AcceptanceLevel.Two => "2",
            AcceptanceLevel.TwoX => "2X",
            AcceptanceLevel.Three => "3",
            _ => "3X",
        };
}
