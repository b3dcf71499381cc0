using CsCheck;
using MathNet.Numerics.Integration;
using Shaftwright.Fit;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Fit;

/// <summary>Torsion past first yield: against the closed form as published, and against a plain integral of the stress.</summary>
public sealed class PlasticTorsionTests
{
    public static TheoryData<string> Ids() => PublishedFile.Ids("plastic-torsion");

    [Theory]
    [MemberData(nameof(Ids))]
    public void Torque_EachPublishedBar_Agrees(string id)
    {
        var row = PublishedFile.Load("plastic-torsion")[id];
        var yield = row.Input<Stress>("shearYield").Value;
        var (D, bore) = (row.Input<Distance>("D").Value, row.Input<Distance>("bore").Value);
        row.Agrees("yieldTorque", PlasticTorsion.Torque(yield, D, bore, 1) / 1000);
        row.Agrees("fullTorque", PlasticTorsion.FullTorque(yield, D, bore) / 1000);
        if (!row.Has("twist"))
            return;
        var twist = row.Number("twist");
        var torque = PlasticTorsion.Torque(yield, D, bore, twist);
        row.Agrees("torque", torque / 1000);
        if (!row.Expects("permanentTwist"))
            return;
        row.Agrees("permanentTwist", PlasticTorsion.Set(yield, D, bore, torque));
        row.Agrees("surfaceStress", PlasticTorsion.ResidualStress(yield, D, bore, twist, D / 2));
        row.Agrees("halfRadiusStress", PlasticTorsion.ResidualStress(yield, D, bore, twist, D / 4));
    }

    private static readonly Gen<(double Yield, double D, double Bore, double Twist)> s_bar =
        Gen.Select(
            Gen.Double[150, 1000],
            Gen.Double[15, 60],
            Gen.Double[0, 0.9],
            Gen.Double[0.01, 12],
            (yield, d, bore, twist) => (yield, d, bore < 0.2 ? 0 : bore * d, twist)
        );

    [Fact]
    public void Torque_OfAnyBar_IsTheIntegralOfItsStress() =>
        s_bar.Sample(
            b =>
            {
                var (yield, d, bore, twist) = b;
                // 2π ∫ τ r² dr, cut where the stress bends.
                var bend = Math.Clamp(d / 2 / twist, bore / 2, d / 2);
                double Part(double from, double to) =>
                    GaussLegendreRule.Integrate(
                        r => 2 * Math.PI * Math.Min(1, twist * r / (d / 2)) * yield * r * r,
                        from,
                        to,
                        10
                    );
                var sum = Part(bore / 2, bend) + Part(bend, d / 2);
                return Math.Abs(PlasticTorsion.Torque(yield, d, bore, twist) - sum) < 1e-9 * sum;
            },
            iter: 2000
        );

    [Fact]
    public void Twist_OfATorque_TurnsItBack() =>
        s_bar.Sample(
            b =>
            {
                var torque = PlasticTorsion.Torque(b.Yield, b.D, b.Bore, b.Twist);
                var back = PlasticTorsion.Twist(b.Yield, b.D, b.Bore, torque);
                // Near the limit torque hardly grows with twist, so the torque is what must agree.
                return Math.Abs(PlasticTorsion.Torque(b.Yield, b.D, b.Bore, back) - torque)
                    <= 1e-9 * torque;
            },
            iter: 2000
        );

    [Fact]
    public void ResidualStress_OverTheSection_CarriesNoTorque() =>
        s_bar.Sample(
            b =>
            {
                var bend = Math.Clamp(b.D / 2 / b.Twist, b.Bore / 2, b.D / 2);
                double Part(double from, double to) =>
                    GaussLegendreRule.Integrate(
                        r =>
                            PlasticTorsion.ResidualStress(b.Yield, b.D, b.Bore, b.Twist, r) * r * r,
                        from,
                        to,
                        10
                    );
                return Math.Abs(Part(b.Bore / 2, bend) + Part(bend, b.D / 2))
                    < 1e-9 * b.Yield * b.D * b.D * b.D;
            },
            iter: 500
        );

    [Fact]
    public void Twist_FromTheFullTorqueUp_IsWithoutEnd() =>
        Assert.Equal(
            double.PositiveInfinity,
            PlasticTorsion.Twist(400, 28, 0, PlasticTorsion.FullTorque(400, 28))
        );

    [Fact]
    public void WindUp_OfOneBar_IsTorqueLengthOverStiffnessAndTheClosedFormOfItsSet()
    {
        TwistStretch[] bar = [new(400, 28, 28, Band.Exactly(400))];
        var torque = PlasticTorsion.Torque(400, 28, 0, 2);
        var (loaded, set) = WindUp.Of(bar, torque);
        var atYield = 2 * 400.0 / (WindUp.ShearModulus * 28) * 400;
        Assert.Equal(2 * atYield, loaded.High, 1e-9);
        // θy·(2 − T/Ty), strength.md 1.1.
        Assert.Equal(0.7083333 * atYield, set.High, 1e-7);
        Assert.Equal(set.Low, set.High, 1e-12);
    }

    [Fact]
    public void WindUp_OfATaper_IsItsClosedForm()
    {
        // ∫ dx/J along a straight taper: 32/π · L/(3(D2 − D1)) · (D1⁻³ − D2⁻³).
        var (loaded, set) = WindUp.Of([new(200, 24, 36, Band.Exactly(700))], 500_000);
        var closed =
            500_000
            * 32
            / Math.PI
            * 200
            / (3 * 12.0)
            * (Math.Pow(24, -3) - Math.Pow(36, -3))
            / WindUp.ShearModulus;
        Assert.Equal(closed, loaded.High, closed * 1e-9);
        Assert.Equal(0, set.High);
    }

    [Fact]
    public void WindUp_MoreTorqueOrWeakerMetal_NeverLeavesLess() =>
        Gen.Select(
                Gen.Double[200, 600],
                Gen.Double[200, 600],
                Gen.Double[1e5, 4e6],
                Gen.Double[0, 1e6]
            )
            .Sample(
                (a, b, torque, more) =>
                {
                    TwistStretch Bar(double yield) => new(300, 26, 30, Band.Exactly(yield));
                    var less = WindUp.Of([Bar(Math.Max(a, b))], torque).Set.High;
                    return less >= 0
                        && WindUp.Of([Bar(Math.Min(a, b))], torque).Set.High >= less - 1e-12
                        && WindUp.Of([Bar(Math.Max(a, b))], torque + more).Set.High >= less - 1e-12;
                },
                iter: 500
            );

    [Fact]
    public void PaintedLine_OffsetAndTwist_AreAnArc()
    {
        Assert.Equal(Math.PI, PaintedLine.Twist(Math.PI * 14, 28), 1e-12);
        Gen.Select(Gen.Double[-100, 100], Gen.Double[10, 100])
            .Sample(
                (offset, d) =>
                    Math.Abs(PaintedLine.Offset(PaintedLine.Twist(offset, d), d) - offset) < 1e-9
            );
    }
}
