namespace Shaftwright.Truing.Pressing;

/// <summary>What is said once wherever the press is worked. Usual workshop practice; local codes and the maker of the press
/// prevail.</summary>
public static class PressCautions
{
    /// <summary>Bursting, and where to stand.</summary>
    public const string Burst =
        "Hardened parts can burst under the press, and a hard case cracks when it is straightened: guard, full face shield, soft caps, stand aside, no hands in the gap.";
}
