using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>The length stage's answer as it is said on a page.</summary>
public static class LengthWords
{
    /// <summary>The sentence; null while too little was read for one.</summary>
    public static Answer? Answer(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Length is not { Shortest: { } shortest, Longest: { } longest } length)
            return null;
        if (length.Contradicted)
            return new(
                $"Two readings contradict each other. A length for both is short by",
                $"{Say.Length(length.Missing)}",
                $": read again before you cut.",
                null
            );
        if (!length.HasWindow)
            return new(
                $"No length works. It is short by",
                $"{Say.Length(length.Missing)}",
                $": {Where(longest.Travel, longest.Steering, length, longest.Place)} {Words(longest.Forbids)}, {Where(shortest.Travel, shortest.Steering, length, shortest.Place)} {Words(shortest.Forbids)}.",
                null
            );
        if (length.Make is not { } make)
            return null;
        return result.Job.Length?.Chosen is null
            ? new(
                $"Make it",
                $"{Say.Length(make)}",
                $", joint centre to joint centre, give or take {Say.Length(length.Tolerance)}.",
                make
            )
            {
                Unsettled = $"it would be",
            }
            : new(
                make < shortest.Length || make > longest.Length
                    ? (Sentence)$"Do not make it"
                    : $"You chose",
                $"{Say.Length(make)}",
                $", joint centre to joint centre; what works is {Say.Length(shortest.Length)} to {Say.Length(longest.Length)}.",
                make
            )
            {
                Unsettled =
                    make < shortest.Length || make > longest.Length
                        ? (Sentence)$"it would not do at"
                        : $"it would do at",
            };
    }

    /// <summary>A position as one would say it.</summary>
    public static Sentence Where(
        double travel,
        Steering steering,
        LengthResult length,
        LinkagePlace? solved = null
    )
    {
        ArgumentNullException.ThrowIfNull(length);
        if (solved is { } at)
            return PositionWords.At(travel, at);
        var lowest = length.Positions.Count > 0 ? length.Positions.Min(p => p.Travel) : travel;
        var highest = length.Positions.Count > 0 ? length.Positions.Max(p => p.Travel) : travel;
        Sentence place =
            Math.Abs(travel) < 0.05 ? $"at ride height"
            : travel <= lowest && travel < 0 ? $"at full droop"
            : travel >= highest && travel > 0 ? $"at full bump"
            : travel < 0 ? (Sentence)$"{Say.Length(-travel)} below ride height"
            : $"{Say.Length(travel)} above ride height";
        return steering switch
        {
            Steering.FullLeft => $"{place}, steered full left,",
            Steering.FullRight => $"{place}, steered full right,",
            _ => place,
        };
    }

    /// <summary>What forbids it, in words.</summary>
    public static string Words(Forbids forbids) =>
        forbids switch
        {
            Forbids.JointBottoms => "the joint bottoms",
            Forbids.JointPullsOut => "the joint pulls out",
            Forbids.OuterAngle => "the outer joint's angle is too great",
            _ => "the joint's angle is too great",
        };

    /// <summary>A way of picking a length, in words.</summary>
    public static string Words(Aim aim) =>
        aim switch
        {
            Aim.Centred => "it stands mid-stroke at ride height",
            Aim.EquallySure => "both ends are as sure",
            Aim.MostLikely => "it is most likely to survive",
            _ => "as much is left at both ends",
        };
}
