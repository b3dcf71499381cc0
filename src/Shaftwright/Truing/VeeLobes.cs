namespace Shaftwright.Truing;

/// <summary>Tells the lobes of the bar under the dial from those of the bar in the vees, where the dial was put over both vees too.</summary>
/// <remarks>
/// <para>On two vees at a and b a dial at s reads, order by order, m(s) = f(s) + L_n·[(1 − λ)·f(a) + λ·f(b)] with
/// λ = (s − a)/(b − a), f the lobes of the bar at each place and L_n the leak of the vees (<see cref="VeeSensitivity"/>): outside
/// the vees λ leaves 0 to 1 and the lever arm makes more of them. Over a vee m = K_n·f, so that readings there give f(a) and f(b),
/// and with them f anywhere. An order that the vees hardly show over themselves cannot be told so.</para>
/// <para>Valid as <see cref="VeeSensitivity"/>, both vees of one angle. Source: own derivation. Checked by laying lobed sections
/// into two vees step by step.</para>
/// </remarks>
internal static class VeeLobes
{
    /// <summary>A vee that shows less than this of an order over itself is blind to it.</summary>
    private const double Blind = 0.3;

    // As near as stations count as one, mm.
    private const double Over = 5;

    /// <summary>Puts the bar's own lobes into the harmonics of every turn for which both vees were read in the same state.</summary>
    public static void Tell(IReadOnlyList<DialTurn> turns, List<TurnResult> results)
    {
        for (var i = 0; i < results.Count; i++)
        {
            if (Stand.Of(turns[i]) is not { } here || results[i].Harmonics.Count < 2)
                continue;
            if (
                At(turns, results, here, here.First) is not { } first
                || At(turns, results, here, here.Second) is not { } second
            )
                continue;
            results[i] = results[i] with
            {
                Harmonics =
                [
                    .. results[i]
                        .Harmonics.Select(h => h.Order == 1 ? h : Own(h, here, first, second)),
                ],
            };
        }
    }

    private static Harmonic Own(Harmonic seen, Stand here, TurnResult first, TurnResult second)
    {
        var k = VeeSensitivity.Over(seen.Order, here.Angle);
        var leak = VeeSensitivity.Leak(seen.Order, here.Angle);
        if (Math.Abs(k) < Blind)
            return seen;
        var (a, ua) = Part(first, seen.Order);
        var (b, ub) = Part(second, seen.Order);
        var share = (here.Station - here.First) / (here.Second - here.First);
        var leaked = VeeSensitivity.Elsewhere(
            seen.Order,
            here.Angle,
            1 / k * a,
            1 / k * b,
            here.Station,
            here.First,
            here.Second
        );
        var own = Across.Of(seen.Amplitude, seen.Phase) - leaked;
        var (pa, pb) = (leak * (1 - share) / k * ua, leak * share / k * ub);
        return seen with
        {
            Own = new(
                own.Size,
                own.Direction,
                Math.Sqrt(seen.Uncertainty * seen.Uncertainty + pa * pa + pb * pb)
            ),
        };
    }

    /// <summary>What a turn shows of an order; nothing of one that its readings did not call for.</summary>
    private static (Across Part, double Uncertainty) Part(TurnResult turn, int order) =>
        turn.Harmonics.FirstOrDefault(h => h.Order == order) is { } h
            ? (Across.Of(h.Amplitude, h.Phase), h.Uncertainty)
            : (new(0, 0), turn.OffsetUncertainty);

    /// <summary>The last turn over a place that was read on the same vees in the same state of the shaft, and could tell as much.</summary>
    private static TurnResult? At(
        IReadOnlyList<DialTurn> turns,
        List<TurnResult> results,
        Stand here,
        double place
    )
    {
        for (var i = turns.Count - 1; i >= 0; i--)
        {
            if (
                Stand.Of(turns[i]) is { } there
                && there.IsOf(here)
                && Math.Abs(there.Station - place) <= Over
                && results[i].HighestOrder > 1
            )
                return results[i];
        }
        return null;
    }

    private sealed record Stand(
        Moment Moment,
        int? Layer,
        int? AfterStroke,
        double Angle,
        double Station,
        double First,
        double Second
    )
    {
        public static Stand? Of(DialTurn turn) =>
            turn
                is {
                    Support: Support.Vees,
                    VeeAngle: { } angle,
                    Station: { } station,
                    FirstSupportAt: { } first,
                    SecondSupportAt: { } second
                }
            && Math.Abs(first.Value - second.Value) > 2 * Over
                ? new(
                    turn.Moment,
                    turn.Layer,
                    turn.AfterStroke,
                    angle.Value,
                    station.Value,
                    first.Value,
                    second.Value
                )
                : null;

        public bool IsOf(Stand other) =>
            Moment == other.Moment
            && Layer == other.Layer
            && AfterStroke == other.AfterStroke
            && Math.Abs(Angle - other.Angle) < 0.01
            && Math.Abs(First - other.First) <= Over
            && Math.Abs(Second - other.Second) <= Over;
    }
}
