namespace Shaftwright.Cut.Search;

/// <summary>What one may wish of a pair of donors beside that it keeps every hard rule.</summary>
public enum SearchGoal
{
    /// <summary>The diameters at the weld differ by as little as can be, mm.</summary>
    Step,

    /// <summary>The weakest of weld and sleeve ends carries as much as can be, N·mm at the low end of its range.</summary>
    Strength,

    /// <summary>As little hardened length as can be is softened, mm.</summary>
    Softened,

    /// <summary>As little good bar as can be goes to scrap, mm.</summary>
    Scrap,

    /// <summary>The new torque is as small a multiple as can be of what the donors carried in their own cars.</summary>
    Yardstick,
}
