using Shaftwright.Measures;

namespace Shaftwright.Pages.Components;

/// <summary>The answer of a door as it would be said aloud, with the number that stands out in it.</summary>
/// <param name="Before">Words before the number.</param>
/// <param name="Big">The number; null when the words before say it all.</param>
/// <param name="After">Words after it, up to the full stop.</param>
/// <param name="Number">The number plain, to say what moved; internal unit.</param>
public sealed record Answer(Sentence Before, Sentence? Big, Sentence? After, double? Number = null)
{
    /// <summary>What stands for <see cref="Before"/>, after "without what was refused", while something typed does not count:
    /// no verdict and no order, but what it would be. Null where the words before say nothing to act on.</summary>
    public Sentence? Unsettled { get; init; }
}
