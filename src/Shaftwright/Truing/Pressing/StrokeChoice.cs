namespace Shaftwright.Truing.Pressing;

/// <summary>How deep to go: no deeper than to be straight as likely as not, and no deeper than the chance of going too far allows.</summary>
internal static class StrokeChoice
{
    /// <summary>The depth, mm; null when even the gentlest stroke would break a rule.</summary>
    /// <param name="belief">What is believed of the shaft.</param>
    /// <param name="next">The stroke.</param>
    /// <param name="wanted">What it is to move at the dial, mm.</param>
    /// <param name="room">How far past straight it may end, mm.</param>
    /// <param name="strainRules">Set to true when strain and not the dial sets the depth.</param>
    public static double? Depth(
        PressBelief belief,
        NextStroke next,
        double wanted,
        double room,
        out bool strainRules
    )
    {
        var most = Most(belief, next);
        strainRules = false;
        bool Allowed(double depth) =>
            belief.ChanceOver(next, depth, wanted) <= 0.5
            && belief.ChanceOver(next, depth, wanted + room) <= PressLimits.ChanceTooFar;
        bool Sound(double depth) => belief.ChanceStrained(next, depth, PressLimits.Strain) <= 0.1;
        var (low, high) = (0.0, most);
        for (var i = 0; i < 16; i++)
        {
            var middle = (low + high) / 2;
            if (Allowed(middle) && Sound(middle))
                low = middle;
            else
                high = middle;
        }
        strainRules = !Sound(high) && Allowed(high);
        return low > most / 60000 ? low : null;
    }

    /// <summary>A depth that surely goes too far, mm.</summary>
    private static double Most(PressBelief belief, NextStroke next)
    {
        var beam = next.Curve.Beam;
        return belief.Yield.High
            * 3
            * (
                next.Curve.LastLoad * (beam.Compliance + PressLimits.MostGive)
                + next.Curve.Set(next.Curve.LastLoad)
            );
    }
}
