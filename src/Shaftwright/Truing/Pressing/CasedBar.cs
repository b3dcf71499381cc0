namespace Shaftwright.Truing.Pressing;

/// <summary>A solid round bar with a hard case over a softer core, in bending. One modulus, two yield strengths.</summary>
/// <remarks>Plane sections stay plane, so the moment at a curvature is that of a bar all case, less that of its core as case, plus
/// that of the core as core. Source: derived, superposition. Residual stress of hardening is left out. Nothing here says what a
/// case bears before it cracks; that is the business of the press limits.</remarks>
public sealed class CasedBar : BendSection
{
    private readonly RoundBar _whole;
    private readonly RoundBar? _coreAsCase;
    private readonly RoundBar? _core;
    private readonly double _modulus;
    private readonly double _caseYield;
    private readonly double _coreYield;
    private readonly double _coreRadius;
    private readonly double _hardening;

    /// <summary>A bar.</summary>
    /// <param name="diameter">mm, above 0.</param>
    /// <param name="caseYield">Tensile yield of the case, MPa, above 0.</param>
    /// <param name="coreYield">Tensile yield of the core, MPa, above 0.</param>
    /// <param name="depth">Depth of the case, mm, 0 or more; from the radius up the bar is all case.</param>
    /// <param name="modulus">Young's modulus, MPa.</param>
    /// <param name="hardening">Slope beyond yield as a share of Young's modulus, 0 to below 1; 0 is perfectly plastic.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public CasedBar(
        double diameter,
        double caseYield,
        double coreYield,
        double depth,
        double modulus = Steel,
        double hardening = 0
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegative(depth);
        _whole = new RoundBar(diameter, caseYield, modulus);
        (_modulus, _caseYield, _coreYield) = (modulus, caseYield, coreYield);
        _hardening = hardening;
        _coreRadius = Math.Max(0, Radius - depth);
        if (_coreRadius > 0)
        {
            _coreAsCase = new RoundBar(2 * _coreRadius, caseYield, modulus);
            _core = new RoundBar(2 * _coreRadius, coreYield, modulus);
        }
        YieldMoment =
            Stiffness
            * Math.Min(
                caseYield / (modulus * Radius),
                _coreRadius > 0 ? coreYield / (modulus * _coreRadius) : double.PositiveInfinity
            );
    }

    /// <inheritdoc/>
    public override double Stiffness => _whole.Stiffness;

    /// <inheritdoc/>
    public override double YieldMoment { get; }

    /// <inheritdoc/>
    public override double FullMoment =>
        _hardening > 0
            ? double.PositiveInfinity
            : _whole.FullMoment - (_coreAsCase?.FullMoment ?? 0) + (_core?.FullMoment ?? 0);

    /// <inheritdoc/>
    public override double Radius => _whole.Radius;

    /// <summary>Moment at a curvature, N·mm.</summary>
    /// <param name="curvature">1/mm, 0 or more.</param>
    public double Moment(double curvature)
    {
        var sum = Part(_whole, _caseYield, Radius, curvature).Moment;
        return _core is null
            ? sum
            : sum
                - Part(_coreAsCase!, _caseYield, _coreRadius, curvature).Moment
                + Part(_core, _coreYield, _coreRadius, curvature).Moment;
    }

    /// <inheritdoc/>
    public override double Curvature(double moment)
    {
        if (moment <= YieldMoment)
            return moment / Stiffness;
        if (moment >= FullMoment)
            return double.PositiveInfinity;
        // The moment rises with the curvature and ever more slowly, so Newton from below never passes the root.
        var curvature = moment / Stiffness;
        for (var i = 0; i < 200; i++)
        {
            var (value, slope) = At(curvature);
            var step = (moment - value) / slope;
            curvature += step;
            if (step <= 1e-14 * curvature)
                break;
        }
        return curvature;
    }

    private (double Moment, double Slope) At(double curvature)
    {
        var whole = Part(_whole, _caseYield, Radius, curvature);
        if (_core is null)
            return whole;
        var less = Part(_coreAsCase!, _caseYield, _coreRadius, curvature);
        var more = Part(_core, _coreYield, _coreRadius, curvature);
        return (whole.Moment - less.Moment + more.Moment, whole.Slope - less.Slope + more.Slope);
    }

    private (double Moment, double Slope) Part(
        RoundBar bar,
        double yield,
        double radius,
        double curvature
    )
    {
        var k = curvature * _modulus * radius / yield;
        var h = _hardening;
        return (
            bar.YieldMoment * ((1 - h) * RoundBar.MomentRatio(k) + h * k),
            bar.Stiffness * ((1 - h) * RoundBar.ElasticShare(k) + h)
        );
    }
}
