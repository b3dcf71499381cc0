namespace Shaftwright.App.Link;

/// <summary>From where an endpoint may be asked, as its metadata. One without is for paired phones, and the laptop: what is added later
/// is closed until somebody opens it.</summary>
internal sealed class Reach
{
    /// <summary>Whoever is in the network: the program itself, which holds nothing of a user's, and what it takes to pair.</summary>
    public static readonly Reach Anyone = new();

    /// <summary>The laptop alone.</summary>
    public static readonly Reach Laptop = new();

    private Reach() { }
}
