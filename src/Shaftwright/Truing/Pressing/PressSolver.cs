using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>The next stroke of the press, from the real sections with their yield as a range, then from this shaft's own strokes.</summary>
/// <remarks>
/// <para>A stroke is reckoned as elastic–plastic bending of the shaft on its blocks (<see cref="PressBeam"/>). How hard this shaft is
/// to bend in this press, and how much the press gives, is not known; both are carried as weighed possibilities, even over the
/// range of the steel before the first stroke, and after each stroke weighed by how well they foresaw it. The next stroke goes as
/// deep as leaves the shaft straight as likely as not, unless the chance of ending bent the other way by more than the limit is
/// above <see cref="PressLimits.ChanceTooFar"/>; then it is shorter.</para>
/// <para>History: pressing again in the same place and way starts where the last stroke ended; pressing back after a turn follows
/// Masing's rule, and is known less well, so it comes out shorter. A stroke elsewhere, or sideways, starts as if the metal were
/// fresh, which in the same way round errs on the short side. Hardening with strain is left out, short side again.</para>
/// <para>Says nothing of cracks. Its promise is tested on a simulator (docs/pressing.md), not on your shaft.</para>
/// <para>Source: own derivation. Check values: Published/press-stroke.json, press-cases.json, press-rectangle.json.</para>
/// </remarks>
public static class PressSolver
{
    /// <summary>Says what the press does next.</summary>
    /// <param name="press">What is known of press and steel, and the strokes; null for nothing.</param>
    /// <param name="truing">The turns under the dial.</param>
    /// <param name="judged">The same, judged.</param>
    /// <param name="cut">The shaft that is made; null when there is none.</param>
    /// <param name="donors">What it is made from.</param>
    /// <param name="record">What crack tests and work on record say of it.</param>
    /// <param name="at">The moment to answer for; null for the latest that was read or pressed.</param>
    public static PressResult Solve(
        PressInput? press,
        TruingInput? truing,
        TruingResult? judged,
        CutResult? cut,
        DonorsResult? donors,
        ShaftRecord record = default,
        Moment? at = null
    )
    {
        press ??= new PressInput();
        var standing = press.Standing();
        var moment =
            truing is { Turns.Count: > 0 } turned ? turned.Turns.Max(t => t.Moment)
            : standing.Count > 0 ? standing.Max(s => s.Moment)
            : Moment.ButtWelded;
        if (standing.Count > 0 && standing[^1].Moment > moment)
            moment = standing[^1].Moment;
        return new PressSession(
            press,
            standing,
            truing,
            judged,
            cut?.Made,
            donors,
            record,
            at ?? moment
        ).Answer();
    }

    /// <summary>The stroke that was made as planned, ready to be kept: places and angle as the plan said, what was read before it.</summary>
    /// <param name="result">The answer that held the plan.</param>
    /// <param name="id">An id of its own.</param>
    /// <exception cref="ArgumentException">The answer holds no plan.</exception>
    public static PressStroke Planned(PressResult result, string id)
    {
        ArgumentNullException.ThrowIfNull(result);
        var plan =
            result.Plan ?? throw new ArgumentException("There is no stroke in it.", nameof(result));
        Measured<Distance> Mm(double mm, int digits) =>
            Measured<Distance>.Of(Math.Round(mm, digits), Distance.Mm);
        Measured<Angle> Degrees(double rad) =>
            Measured<Angle>.Of(Math.Round(rad * 180 / Math.PI), Angle.Degree);
        return new()
        {
            Id = id,
            Moment = result.Moment,
            RamAt = Mm(plan.RamAt, 1),
            FirstBlockAt = Mm(plan.FirstBlockAt, 1),
            SecondBlockAt = Mm(plan.SecondBlockAt, 1),
            Up = Degrees(plan.Up),
            Depth = Mm(Math.Max(plan.Depth, PressFields.Depth.Least), 2),
            RunOutBefore = Mm(result.RunOut ?? 2 * plan.Wanted, 3),
            HighBefore = Degrees(result.HighPoint ?? plan.Up),
            Turn = result.NewestTurn,
            Dial = result.Dial,
        };
    }
}
