using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>Set-ups for the tests of this folder.</summary>
internal static class WeldJobs
{
    public static Measured<Distance> Mm(double mm, double? plusMinus = null) =>
        Measured<Distance>.Of(mm, Distance.Mm, plusMinus);

    public static Measured<Angle> Degrees(double degrees) =>
        Measured<Angle>.Of(degrees, Angle.Degree);

    /// <summary>Two pieces whose shim is exactly the given one.</summary>
    public static WeldInput ForShim(double shim, double vee = 90) =>
        new()
        {
            InnerDiameter = Mm(Math.Round(25 + 2 * shim, 9)),
            OuterDiameter = Mm(25),
            VeeAngle = Degrees(vee),
        };

    public static WeldResult Solve(WeldInput weld) => WeldSolver.Solve(weld);

    public static bool Has(this WeldResult result, string code) =>
        result.Findings.Any(f => f.Code == code);

    public static string Text(this WeldResult result, string code) =>
        result.Findings.Single(f => f.Code == code).Text.ToString();

    /// <summary>The blades of a named set as its doc comment lists them, written out apart from the solver's.</summary>
    public static double[] Blades(string set) =>
        set switch
        {
            "Metric20" =>
            [
                .. Enumerable
                    .Range(1, 20)
                    .Select(i =>
                        double.Parse(
                            (i * 0.05m).ToString(CultureInfo.InvariantCulture),
                            CultureInfo.InvariantCulture
                        )
                    ),
            ],
            "Metric13" => [.05, .1, .15, .2, .25, .3, .4, .5, .6, .7, .8, .9, 1],
            _ => throw new ArgumentOutOfRangeException(nameof(set), set, "No such set."),
        };
}
