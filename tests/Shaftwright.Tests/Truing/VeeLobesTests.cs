using CsCheck;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

/// <summary>Lobes of the bar under the dial told from those in the vees. The readings come from three lobed sections: two laid into
/// their vees by a search for where they touch, turn by turn, the third riding on the line through their middles.</summary>
public sealed class VeeLobesTests
{
    private const double Radius = 12;
    private const double FirstAt = 100;
    private const double SecondAt = 500;

    // Between the vees, not midway, and beyond them.
    private static readonly double[] s_stations = [60, 180, 300, 430, 620];

    /// <summary>Lobes of a section: its size and its phase.</summary>
    private readonly record struct Lobed(int Order, double Size, double Phase)
    {
        public double At(double shaftAngle) => Size * Math.Cos(Order * shaftAngle - Phase);
    }

    /// <summary>How high the middle of a section stands in its vee when an angle of the shaft is uppermost.</summary>
    private static double Middle(Lobed lobes, double vee, double uppermost)
    {
        double Surface(double direction) => Radius + lobes.At(uppermost + Math.PI / 2 - direction);
        // How far the section reaches in a direction: the best of its points, by halving in on it.
        double Reach(double direction)
        {
            double from = direction - 0.2,
                to = direction + 0.2;
            for (var i = 0; i < 60; i++)
            {
                double a = from + (to - from) / 3,
                    b = to - (to - from) / 3;
                if (Surface(a) * Math.Cos(a - direction) < Surface(b) * Math.Cos(b - direction))
                    from = a;
                else
                    to = b;
            }
            var at = (from + to) / 2;
            return Surface(at) * Math.Cos(at - direction);
        }
        var half = vee / 2;
        return (Reach(-Math.PI + half) + Reach(-half)) / (2 * Math.Sin(half));
    }

    private static DialTurn Turn(
        double station,
        double vee,
        Lobed first,
        Lobed second,
        Lobed here,
        double bow
    ) =>
        DialTurns.At([
            .. Enumerable
                .Range(0, 24)
                .Select(i =>
                {
                    var angle = Math.Tau * i / 24;
                    var share = (station - FirstAt) / (SecondAt - FirstAt);
                    var axis =
                        (1 - share) * Middle(first, vee, angle)
                        + share * Middle(second, vee, angle);
                    var straight = Radius / Math.Sin(vee / 2);
                    return (
                        360.0 * i / 24,
                        Math.Round(
                            0.5 + axis - straight + here.At(angle) + bow * Math.Cos(angle - 1),
                            7
                        )
                    );
                }),
        ]) with
        {
            Id = "at-" + station.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Support = Support.Vees,
            VeeAngle = Measured<Angle>.Of(Math.Round(vee * 180 / Math.PI, 6), Angle.Degree),
            FirstSupportAt = DialTurns.Mm(FirstAt),
            SecondSupportAt = DialTurns.Mm(SecondAt),
            Station = DialTurns.Mm(station),
        };

    [Fact]
    public void Own_OfAStationAnywhere_IsTheBarsOwnWhateverTheVeesLeakIn() =>
        Gen.Select(
                Gen.Int[2, 3],
                Gen.Bool,
                Gen.Double[0.01, 0.03],
                Gen.Double[0.01, 0.03],
                Gen.Double[0, 6],
                Gen.Int[0, 4]
            )
            .Sample(
                (order, steep, a, b, pa, where) =>
                {
                    var vee = (steep ? 90 : 120) * Math.PI / 180;
                    var pb = 1.7 * pa + 0.4;
                    var station = s_stations[where];
                    Lobed first = new(order, a, pa),
                        second = new(order, b, pb),
                        here = new(order, 0.02, 2.5);
                    DialTurn At(double x, Lobed own, double bow) =>
                        Turn(x, vee, first, second, own, bow);
                    var turns = DialTurns
                        .Solve(
                            At(FirstAt, first, 0),
                            At(SecondAt, second, 0),
                            At(station, here, 0.15)
                        )
                        .Turns;
                    var seen = turns[2].Harmonics.FirstOrDefault(h => h.Order == order);
                    // Where own lobes and leak cancel, there is nothing to see.
                    if (seen is null)
                        return;
                    var own = seen.Own!;
                    var truth = Across.Of(here.Size, here.Phase);
                    // The lobes are small and not nothing beside the bar: their square over the radius is left.
                    Assert.True(
                        (Across.Of(own.Amplitude, own.Phase) - truth).Size < 1e-3,
                        $"{own.Amplitude} at {own.Phase}, seen {seen.Amplitude}"
                    );
                    // The bend is told whatever the lobes do.
                    Assert.Equal(0.15, turns[2].Offset!.Value, 1e-3);
                    // Without the leak taken off it would have been wrong.
                    var leak = VeeSensitivity.Elsewhere(
                        order,
                        vee,
                        Across.Of(a, pa),
                        Across.Of(b, pb),
                        station,
                        FirstAt,
                        SecondAt
                    );
                    Assert.Equal(
                        leak.Size,
                        (Across.Of(seen.Amplitude, seen.Phase) - truth).Size,
                        1e-3
                    );
                },
                iter: 60
            );

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)] // One of the vees was not read: nothing is told.
    public void Own_NeedsReadingsOverBothVees(bool both, bool told)
    {
        Lobed first = new(3, 0.03, 1),
            here = new(3, 0.02, 2.5);
        DialTurn At(double x, Lobed own) => Turn(x, Math.PI / 2, first, first, own, 0.1);
        DialTurn[] turns =
        [
            At(FirstAt, first),
            .. both ? [At(SecondAt, first)] : Array.Empty<DialTurn>(),
            At(300, here),
        ];
        var result = DialTurns.Solve(turns);
        Assert.Equal(told, result.Turns[^1].Harmonics.Single(h => h.Order == 3).Own is not null);
        Assert.Equal(told, result.Findings.Any(f => f.Code == "vee-lobes"));
        // Read after another stroke they are of another shape.
        if (both)
            Assert.Null(
                DialTurns
                    .Solve(turns[0] with { AfterStroke = 1 }, turns[1], turns[2])
                    .Turns[^1]
                    .Harmonics.Single(h => h.Order == 3)
                    .Own
            );
    }

    [Fact]
    public void Own_OfAnOrderThatTheVeesDoNotShow_IsNotTold()
    {
        // Vees of 60° are blind to an oval over themselves.
        Lobed oval = new(2, 0.03, 1);
        DialTurn At(double x) => Turn(x, Math.PI / 3, oval, oval, new(2, 0.05, 4), 0.1);
        var turns = DialTurns.Solve(At(FirstAt), At(SecondAt), At(300)).Turns;
        Assert.Null(turns[2].Harmonics.Single(h => h.Order == 2).Own);
    }
}
