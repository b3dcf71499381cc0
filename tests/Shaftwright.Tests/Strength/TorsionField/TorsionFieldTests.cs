using CsCheck;
using Shaftwright.Strength.TorsionField;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Strength.TorsionField;

public sealed class TorsionFieldTests
{
    private static readonly PublishedFile s_field = PublishedFile.Load("torsion-field");

    public static TheoryData<string> Notches() => PublishedFile.Ids("torsion-field");

    [Theory]
    [MemberData(nameof(Notches))]
    public void Peak_OfANotch_AgreesWithAnotherGrid(string id)
    {
        var c = s_field[id];
        var outline = c.Has("d")
            ? Outline.Shoulder(c.Number("D"), c.Number("d"), c.Number("r"))
            : Outline.Groove(c.Number("D"), c.Number("h"), c.Number("r"));
        var peak = TorsionFieldSolver.Peak(outline);
        Assert.NotNull(peak);
        Assert.True(peak.Reached, $"{peak}");
        c.Agrees("factor", peak.Factor);
    }

    [Fact]
    public void Solve_APlainBar_IsTheTextbook()
    {
        var grid = MeridianGrid.Of(Outline.From(13).Straight(70), 1);
        var solve = TorsionSolve.On(grid)!;
        // One radian over the length: T = GJ/L, and 2πG is left out.
        Assert.Equal(Math.Pow(13, 4) / 4 / 70, solve.Stiffness, 1e-9);
        Assert.All(
            solve.AlongSurface(),
            s => Assert.Equal(16 / (Math.PI * Math.Pow(26, 3)), s.Stress, 1e-15)
        );
    }

    /// <summary>Michell's cone: rings turn by A/ρ³ with ρ from the apex, so the stress at the surface of half angle α is
    /// T·sin α/[2πρ³(2/3 − cos α + cos³α/3)]. What the plain ends disturb dies out towards the middle.</summary>
    [Fact]
    public void Solve_ALongCone_AgreesWithItsClosedFormInTheMiddle()
    {
        const double from = 10,
            to = 20,
            length = 80;
        var outline = Outline.From(from).Straight(60).Straight(length, to).Straight(60);
        var a = Math.Atan((to - from) / length);
        var errors = new List<double>();
        foreach (var fineness in (int[])[1, 2, 4])
        {
            var along = TorsionSolve.On(MeridianGrid.Of(outline, fineness))!.AlongSurface();
            errors.Add(
                along
                    .Where(s => s.R is > 14.5 and < 15.5)
                    .Max(s =>
                    {
                        var apart = s.R / Math.Sin(a);
                        var exact =
                            Math.Sin(a)
                            / (2 * Math.PI * Math.Pow(apart, 3))
                            / (2.0 / 3 - Math.Cos(a) + Math.Pow(Math.Cos(a), 3) / 3);
                        return Math.Abs(s.Stress / exact - 1);
                    })
            );
        }
        Assert.True(errors[2] < 2e-5, string.Join(", ", errors));
        Assert.True(
            errors[1] < errors[0] / 3 && errors[2] < errors[1] / 3,
            string.Join(", ", errors)
        );
    }

    /// <summary>Antiplane shear, a shallow half-round notch in a plane: the stress doubles, whatever its size. On a bar it lies
    /// on the curve of the least diameter.</summary>
    [Fact]
    public void Peak_OfAGrooveTooSmallToMatter_ComesToTheExactTwo()
    {
        var peak = TorsionFieldSolver.Peak(Outline.Groove(30, 0.05, 0.05, 1), 1e-3)!;
        Assert.True(peak.Reached);
        Assert.Equal(2 * Math.Pow(29.9 / 30, 3), peak.Factor, 2 * 0.005);
    }

    /// <summary>The energy of quadratic elements gains four orders where nothing is singular.</summary>
    [Fact]
    public void Stiffness_OnHalvedGrids_ConvergesByTheTheoreticalOrder()
    {
        var outline = Outline.Shoulder(48, 32, 4, 1);
        double[] s =
        [
            .. ((int[])[2, 4, 8]).Select(f =>
                TorsionSolve.On(MeridianGrid.Of(outline, f))!.Stiffness
            ),
        ];
        Assert.InRange(Math.Log2((s[0] - s[1]) / (s[1] - s[2])), 3.5, 4.3);
        // The held angle makes every grid too stiff.
        Assert.True(s[0] > s[1] && s[1] > s[2]);
    }

    [Fact]
    public void Peak_OfAnyShoulderOrGroove_IsFoundAndNotBelowThePlainBar() =>
        Gen.Select(Gen.Double[16, 60], Gen.Double[0.03, 0.35], Gen.Double[0.15, 1], Gen.Bool)
            .Sample(
                (D, depth, round, groove) =>
                {
                    var step = depth * D / 2;
                    var r = Math.Max(0.02 * D / 2, round * step);
                    var outline =
                        groove && r <= step
                            ? Outline.Groove(D, step, r)
                            : Outline.Shoulder(D, D - 2 * step, r);
                    var peak = TorsionFieldSolver.Peak(outline, 0.05, 10_000);
                    return peak is { Factor: > 1 } && peak.AtR < outline.Least + r;
                },
                iter: 60
            );

    [Fact]
    public void Peak_OfAPartTurnedRound_IsTheSame()
    {
        var up = Outline.Shoulder(30, 25, 1);
        var down = Outline
            .From(15)
            .Straight(60)
            .Straight(0, 13.5)
            .Fillet(1, rises: false)
            .Straight(60);
        Assert.Equal(
            TorsionFieldSolver.Peak(up)!.Factor,
            TorsionFieldSolver.Peak(down)!.Factor,
            1e-9
        );
    }
}
