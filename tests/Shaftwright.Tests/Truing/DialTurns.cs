using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

/// <summary>Turns under the dial for the tests of this folder.</summary>
internal static class DialTurns
{
    public static Measured<Distance> Mm(double mm) => Measured<Distance>.Of(mm, Distance.Mm);

    public static DialReading Reading(double degrees, double mm) =>
        new() { Angle = Measured<Angle>.Of(degrees, Angle.Degree), Dial = Mm(mm) };

    /// <summary>Evenly spaced readings from the mark on, the dial to a hundredth as it is read.</summary>
    public static DialTurn Even(params double[] dial) =>
        At([.. dial.Select((mm, i) => (360.0 * i / dial.Length, mm))]);

    public static DialTurn At(params (double Degrees, double Mm)[] readings) =>
        new()
        {
            Moment = Moment.ButtWelded,
            Support = Support.Centres,
            Station = Mm(250),
            Readings = [.. readings.Select(r => Reading(r.Degrees, r.Mm))],
        };

    /// <summary>A round section turning off its axis, read exactly at n even places.</summary>
    public static DialTurn Eccentric(
        double offset,
        double highDegrees,
        int n = 8,
        double middle = 0.5
    ) =>
        At([
            .. Enumerable
                .Range(0, n)
                .Select(i => 360.0 * i / n)
                .Select(a => (a, middle + offset * Math.Cos((a - highDegrees) * Math.PI / 180))),
        ]);

    public static TruingResult Solve(params DialTurn[] turns) =>
        TruingSolver.Solve(new TruingInput { Turns = turns });

    public static TurnResult Judge(DialTurn turn) => Solve(turn).Turns.Single();

    public static Finding? Find(this TruingResult result, string code) =>
        result.Findings.SingleOrDefault(f => f.Code == code);

    /// <summary>Degrees between two directions, by the short way.</summary>
    public static double Between(double oneRad, double otherRad) =>
        Math.Abs(Math.IEEERemainder(oneRad - otherRad, Math.Tau)) * 180 / Math.PI;
}
