using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>The answer of a turn as one would say it aloud.</summary>
internal static class TruingWords
{
    private static readonly string[] s_hours =
    [
        "twelve",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
    ];

    public static Sentence NotRound(double? atLeast, double limit) =>
        atLeast is { } spread
            ? $"Run-out at least {Say.Fine(spread)}; the limit is {Say.Fine(limit)}, so it is over. The readings do not go round, so where it stands high cannot be told."
            : (Sentence)
                $"Run-out not known: the readings do not go round the shaft. Read at least four places, a quarter turn apart.";

    public static Sentence Of(TurnResult turn, double bend)
    {
        var read = turn.RunOut ?? 0;
        Sentence runOut =
            bend > read + 0.005
                ? (Sentence)
                    $"Run-out {Say.Fine(read)} as read, {Say.Fine(bend)} between the readings"
                : $"Run-out {Say.Fine(read)}";
        Sentence judged = turn.Verdict switch
        {
            RunOutVerdict.Inside =>
                $"{runOut}, inside the limit of {Say.Fine(turn.Limit)} with ± {Say.Fine(turn.RunOutUncertainty)} for the dial taken off.",
            RunOutVerdict.ReadAgain =>
                $"{runOut}, over the limit of {Say.Fine(turn.Limit)} only by readings that stand alone; without them {Say.Fine(turn.CleanRunOut ?? 0)}. Clean there and read again.",
            RunOutVerdict.Over => $"{runOut}; the limit is {Say.Fine(turn.Limit)}, so it is over.",
            _ => (Sentence)
                $"{runOut} against a limit of {Say.Fine(turn.Limit)}: too close to call, for the dial leaves ± {Say.Fine(turn.RunOutUncertainty)}.",
        };
        if (turn.HighPoint is not { } high)
            return $"{judged} It stands high on no one side.";
        // Rounded up: a direction is never said to be known better than it is.
        var giveOrTake =
            Math.Ceiling(2 * turn.HighPointUncertainty * 180 / Math.PI - 1e-9) * Math.PI / 180;
        Sentence where =
            $"The high point is {Say.Bearing(high)} from your mark, in the direction you numbered, give or take {Say.Bearing(giveOrTake)}";
        Sentence there =
            $"The axis there stands {Say.Fine(turn.Offset ?? 0)} off its turning line.";
        return turn.Verdict == RunOutVerdict.Inside
            ? $"{judged} {where}. {there}"
            : (Sentence)
                $"{judged} {where}: mark it. With your mark at twelve and your numbers running clockwise that is {Clock(high)}. {there}";
    }

    /// <summary>An angle on a clock face, to the half hour.</summary>
    /// <param name="angle">Clockwise from twelve, rad, 0 to 2π.</param>
    public static string Clock(double angle)
    {
        var half = (int)Math.Round(angle / Math.Tau * 24, MidpointRounding.AwayFromZero) % 24;
        var hour = s_hours[half / 2];
        return half % 2 == 0 ? hour + " o'clock" : "half past " + hour;
    }
}
