using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>The answer of the press as one would say it aloud.</summary>
internal static class PressWords
{
    public static Sentence Of(PressPlan plan)
    {
        Sentence turn = plan.Turned
            ? (Sentence)$"It went past straight. Turn the new high point up"
            : $"High side up";
        return $"{turn}, {Say.Bearing(plan.Up)} from the mark. Blocks at {Say.Length(plan.FirstBlockAt)} and {Say.Length(plan.SecondBlockAt)} from the inner end, ram at {Say.Length(plan.RamAt)}. Press {Say.Fine(plan.Depth)} past contact, about {Load(plan.Load)}; {Say.Fine(plan.SpringsBack)} of that springs back. Run-out should fall by {Fall(plan.Seen)}.";
    }

    private static Sentence Load(Band load) =>
        load.High - load.Low < 200
            ? (Sentence)$"{Say.Load(load.High)}"
            : $"{Say.Load(load.Low)} to {Say.Load(load.High)}";

    private static Sentence Fall(Band seen) =>
        2 * seen.High < 0.01
            ? (Sentence)$"nothing or next to nothing, and that will tell how hard it is"
            : $"{Say.Fine(2 * Math.Max(0, seen.Low))} to {Say.Fine(2 * seen.High)}";

    public static Sentence NotRead(bool orderUnknown) =>
        orderUnknown
            ? (Sentence)
                $"Not read since the last stroke, as far as is noted: turn it under the dial, and note after how many strokes."
            : $"Not read since the last stroke: turn it under the dial.";

    public static Sentence Since(Bow bow, RunOutVerdict verdict)
    {
        Sentence stands = verdict switch
        {
            RunOutVerdict.Over => $"over the limit of",
            RunOutVerdict.Inside => $"inside the limit of",
            _ => $"too near to call to the limit of",
        };
        return $"Run-out {Say.Fine(bow.RunOut)} by what was noted after the last stroke, {stands} {Say.Fine(bow.Limit)}.";
    }

    public static Sentence Straight(Bow bow) =>
        $"Straight enough: {Say.Fine(bow.RunOut)} of {Say.Fine(bow.Limit)} allowed, the dial's ± {Say.Fine(bow.Expanded)} taken off. Stop here; the last hundredths are not worth a stroke.";
}
