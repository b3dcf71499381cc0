using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.CrackTest;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary>Small words that several verbs share.</summary>
internal static class Words
{
    /// <summary>A travel as one would say it.</summary>
    public static string Travel(double travel, Display display) =>
        travel switch
        {
            > 0.05 => Say.Length(travel).In(display) + " bump",
            < -0.05 => Say.Length(-travel).In(display) + " droop",
            _ => "ride height",
        };

    /// <summary>A steering position as one would say it.</summary>
    public static string NameOf(Steering steering) =>
        steering switch
        {
            Steering.FullLeft => "full left lock",
            Steering.FullRight => "full right lock",
            _ => "straight ahead",
        };

    /// <summary>How the power unit stands.</summary>
    public static string NameOf(PowerUnitState state) =>
        state switch
        {
            PowerUnitState.Driving => "driving",
            PowerUnitState.Overrun => "overrun",
            _ => "at rest",
        };

    /// <summary>A method of testing.</summary>
    public static string NameOf(TestMethod method) =>
        method switch
        {
            TestMethod.ColourPenetrant => "colour penetrant",
            TestMethod.FluorescentPenetrant => "fluorescent penetrant",
            TestMethod.MagneticParticle => "magnetic particle",
            _ => "fluorescent magnetic particle",
        };

    /// <summary>How a place stands.</summary>
    public static string NameOf(SiteState state) =>
        state switch
        {
            SiteState.NotTested => "not tested",
            SiteState.Clean => "clean",
            SiteState.Indication => "a mark",
            SiteState.ToRetest => "test again",
            SiteState.Stopped => "STOPPED",
            _ => "hidden",
        };

    /// <summary>How a demand stands.</summary>
    public static string NameOf(DemandState state) =>
        state switch
        {
            DemandState.NotYet => "not yet",
            DemandState.Due => "due",
            DemandState.Overdue => "OVERDUE",
            DemandState.Missed => "MISSED",
            _ => "done",
        };
}
