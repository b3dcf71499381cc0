using Shaftwright.Corner;
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
}
