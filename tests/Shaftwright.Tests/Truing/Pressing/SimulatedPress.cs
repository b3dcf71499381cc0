namespace Shaftwright.Tests.Truing.Pressing;

/// <summary>What the simulator knows and the advisor does not.</summary>
/// <param name="Inner">Diameter of the inner piece, mm.</param>
/// <param name="Outer">Diameter of the outer piece, mm.</param>
/// <param name="Length">Overall length, mm.</param>
/// <param name="Weld">Weld from the inner end, mm.</param>
/// <param name="Heat">Softened length on each side of the weld, mm.</param>
/// <param name="Soft">Yield of the softened metal, MPa.</param>
/// <param name="Core">Yield of the bar beyond it, MPa.</param>
/// <param name="Case">Yield of the hard case beyond the heat, MPa; 0 for none.</param>
/// <param name="CaseDepth">Its depth, mm.</param>
/// <param name="Round">How gradually it yields: the first fibres at (1 − this) of the yield, the last at (1 + this).</param>
/// <param name="Hardening">Slope of hardening as a share of Young's modulus; kinematic.</param>
/// <param name="Modulus">Young's modulus, MPa.</param>
/// <param name="Give">Give of press and blocks, mm/N.</param>
/// <param name="Friction">Friction of the shaft on its blocks.</param>
/// <param name="ContactError">Standard deviation of finding contact, mm.</param>
/// <param name="UpError">Standard deviation of laying the mark under the ram, rad.</param>
internal sealed record Truth(
    double Inner,
    double Outer,
    double Length,
    double Weld,
    double Heat,
    double Soft,
    double Core,
    double Case,
    double CaseDepth,
    double Round,
    double Hardening,
    double Modulus,
    double Give,
    double Friction,
    double ContactError,
    double UpError
);

/// <summary>A press and a shaft in it, with true history: every station between the blocks is a bundle of fibres over the whole
/// round section, each made of three elements side by side (one yields early, one late, one not at all), which gives gradual
/// yielding, kinematic hardening and the Bauschinger effect. It shares no line with the library.</summary>
internal sealed class SimulatedPress
{
    private const int Rings = 7;
    private const int Spokes = 16;
    private const double Grid = 2;

    private readonly Truth _truth;
    private readonly Random _random;
    private readonly int _count;
    private readonly double[] _x;
    private readonly Bundle?[] _bundles;
    private readonly double[] _keptY;
    private readonly double[] _keptZ;
    private readonly double _kinkY;
    private readonly double _kinkZ;

    public SimulatedPress(Truth truth, double runOut, double direction, int seed)
    {
        (_truth, _random) = (truth, new Random(seed));
        _count = (int)Math.Round(truth.Length / Grid) + 1;
        _x = [.. Enumerable.Range(0, _count).Select(i => i * truth.Length / (_count - 1))];
        (_bundles, _keptY, _keptZ) = (new Bundle?[_count], new double[_count], new double[_count]);
        // A kink at the weld that shows the wanted run-out there, between centres.
        var kink = runOut / 2 / (truth.Weld * (truth.Length - truth.Weld) / truth.Length);
        (_kinkY, _kinkZ) = (kink * Math.Cos(direction), kink * Math.Sin(direction));
        Oval = 0.004 + 0.006 * _random.NextDouble();
    }

    /// <summary>Half of what an oval section adds to the dial, mm.</summary>
    public double Oval { get; }

    /// <summary>Largest strain at the surface so far.</summary>
    public double LargestStrain { get; private set; }

    /// <summary>Largest share of its yield that the surface of a hard case has seen.</summary>
    public double LargestCase { get; private set; }

    /// <summary>True offset of the axis at a place, between centres, mm.</summary>
    public (double Y, double Z) Offset(double at)
    {
        // Slope and shape by summing up twice, then the chord taken off. What a press leaves is low where the kink is high.
        double slopeY = 0,
            slopeZ = 0,
            shapeY = 0,
            shapeZ = 0,
            hereY = 0,
            hereZ = 0;
        var step = _truth.Length / (_count - 1);
        var kinked = false;
        for (var i = 0; i < _count; i++)
        {
            if (i > 0)
            {
                shapeY += slopeY * step;
                shapeZ += slopeZ * step;
            }
            slopeY -= _keptY[i] * step;
            slopeZ -= _keptZ[i] * step;
            if (!kinked && _x[i] >= _truth.Weld - step / 2)
            {
                kinked = true;
                slopeY += _kinkY;
                slopeZ += _kinkZ;
            }
            if (_x[i] <= at + 1e-9)
                (hereY, hereZ) = (shapeY + slopeY * (at - _x[i]), shapeZ + slopeZ * (at - _x[i]));
        }
        return (shapeY * at / _truth.Length - hereY, shapeZ * at / _truth.Length - hereZ);
    }

    /// <summary>True run-out of the axis at a place, mm.</summary>
    public double RunOut(double at)
    {
        var (y, z) = Offset(at);
        return 2 * Math.Sqrt(y * y + z * z);
    }

    /// <summary>Readings of a dial at even angles, to a hundredth, with noise, an oval and angles a little off.</summary>
    public IReadOnlyList<(double Degrees, double Dial)> Turn(double at, int places = 8)
    {
        var (y, z) = Offset(at);
        var list = new List<(double, double)>();
        for (var i = 0; i < places; i++)
        {
            var degrees = 360.0 * i / places;
            var angle =
                degrees * Math.PI / 180 + (_random.NextDouble() - 0.5) * 2 * 2 * Math.PI / 180;
            var dial =
                y * Math.Cos(angle)
                + z * Math.Sin(angle)
                + Oval * Math.Cos(2 * angle + 1)
                + 0.004 * Gauss();
            list.Add((degrees, Math.Round(dial, 2)));
        }
        return list;
    }

    /// <summary>Presses to a depth past contact. Returns the depth and load that are then read.</summary>
    /// <param name="up">Angle from the mark under the ram, rad.</param>
    public (double Depth, double Load) Press(
        double first,
        double second,
        double ram,
        double up,
        double asked
    )
    {
        // Contact is found a little early or late; the depth is stopped and read to a twentieth.
        var meant = asked + 0.03 * (2 * _random.NextDouble() - 1);
        var depth = Math.Max(0.01, meant + _truth.ContactError * Gauss());
        var way = up + _truth.UpError * Gauss();
        var (low, high) = (0.0, 5000.0);
        while (Depth(first, second, ram, way, high) < depth && high < 2e6)
            high *= 1.5;
        for (var i = 0; i < 40 && high - low > 1; i++)
        {
            var middle = (low + high) / 2;
            if (Depth(first, second, ram, way, middle) < depth)
                low = middle;
            else
                high = middle;
        }
        Commit(first, second, ram, way, low);
        return (Math.Round(meant * 20) / 20, low * (1 + 0.03 * Gauss()));
    }

    private double Moment(double x, double first, double second, double ram, double load)
    {
        if (x <= first || x >= second)
            return 0;
        var span = second - first;
        var unit =
            x <= ram ? (x - first) * (second - ram) / span : (second - x) * (ram - first) / span;
        // The shaft slides outwards over its blocks as it bends; friction there pushes back at its lower side.
        var radius = (x < _truth.Weld ? _truth.Inner : _truth.Outer) / 2;
        return load * Math.Max(0, unit - _truth.Friction * radius / 2);
    }

    /// <summary>Depth under the ram for a load, by summing curvature times the moment of a unit load.</summary>
    private double Depth(double first, double second, double ram, double way, double load)
    {
        double depth = _truth.Give * load;
        var step = _truth.Length / (_count - 1);
        for (var i = 0; i < _count; i++)
        {
            if (_x[i] <= first || _x[i] >= second)
                continue;
            var moment = Moment(_x[i], first, second, ram, load);
            var unit = Moment(_x[i], first, second, ram, 1);
            var before = _keptY[i] * Math.Cos(way) + _keptZ[i] * Math.Sin(way);
            depth += (At(i).Curve(moment, way, out _) - before) * unit * step;
        }
        return depth;
    }

    private void Commit(double first, double second, double ram, double way, double load)
    {
        for (var i = 0; i < _count; i++)
        {
            if (_x[i] <= first || _x[i] >= second)
                continue;
            var bundle = At(i);
            var moment = Moment(_x[i], first, second, ram, load);
            bundle.Press(moment, way);
            LargestStrain = Math.Max(LargestStrain, bundle.Strain);
            LargestCase = Math.Max(LargestCase, bundle.CaseShare(moment));
            (_keptY[i], _keptZ[i]) = bundle.Release();
        }
    }

    private Bundle At(int i)
    {
        if (_bundles[i] is { } known)
            return known;
        var heated = Math.Abs(_x[i] - _truth.Weld) <= _truth.Heat;
        var radius = (_x[i] < _truth.Weld ? _truth.Inner : _truth.Outer) / 2;
        return _bundles[i] = new Bundle(
            _truth,
            radius,
            heated ? _truth.Soft : _truth.Core,
            heated ? 0 : _truth.Case
        );
    }

    private double Gauss() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()))
        * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>The fibres of one section.</summary>
    private sealed class Bundle
    {
        private readonly double _radius;
        private readonly double _case;
        private readonly double[] _y = new double[Rings * Spokes];
        private readonly double[] _z = new double[Rings * Spokes];
        private readonly double[] _area = new double[Rings * Spokes];
        private readonly double[] _yield = new double[Rings * Spokes];
        private readonly double[] _early = new double[Rings * Spokes];
        private readonly double[] _late = new double[Rings * Spokes];
        private readonly double _e;
        private readonly double _round;
        private readonly double _hardening;
        private readonly double _firstYield;
        private bool _virgin = true;
        private double _ky,
            _kz;

        public Bundle(Truth truth, double radius, double core, double hard)
        {
            (_radius, _case, _e, _round, _hardening) = (
                radius,
                hard,
                truth.Modulus,
                truth.Round,
                truth.Hardening
            );
            for (var r = 0; r < Rings; r++)
            {
                // Thinner rings outside, where yielding begins.
                var inside = radius * Math.Sqrt((double)r / Rings);
                var outside = radius * Math.Sqrt((r + 1.0) / Rings);
                // The radius at which the ring's whole area has its own second moment.
                var at = Math.Sqrt((inside * inside + outside * outside) / 2);
                for (var s = 0; s < Spokes; s++)
                {
                    var i = r * Spokes + s;
                    var angle = 2 * Math.PI * (s + 0.5 * (r % 2)) / Spokes;
                    (_y[i], _z[i]) = (at * Math.Cos(angle), at * Math.Sin(angle));
                    _area[i] = Math.PI * (outside * outside - inside * inside) / Spokes;
                    _yield[i] = hard > 0 && at > radius - truth.CaseDepth ? hard : core;
                }
            }
            Stiffness = _e * Math.PI / 4 * radius * radius * radius * radius;
            _firstYield = double.PositiveInfinity;
            for (var i = 0; i < _y.Length; i++)
                _firstYield = Math.Min(
                    _firstYield,
                    Stiffness * _yield[i] * (1 - _round) / (_e * radius)
                );
        }

        public double Stiffness { get; }

        /// <summary>Largest strain at the surface.</summary>
        public double Strain => _radius * Math.Sqrt(_ky * _ky + _kz * _kz);

        public double CaseShare(double moment) =>
            _case > 0 ? moment * _radius / (Stiffness / _e) / _case : 0;

        /// <summary>Curvature in the direction of pressing under a moment, nothing remembered.</summary>
        public double Curve(double moment, double way, out (double Y, double Z) both)
        {
            if (_virgin && moment < _firstYield)
            {
                var k = moment / Stiffness;
                both = (k * Math.Cos(way), k * Math.Sin(way));
                return k;
            }
            both = Solve(moment * Math.Cos(way), moment * Math.Sin(way));
            return both.Y * Math.Cos(way) + both.Z * Math.Sin(way);
        }

        public void Press(double moment, double way)
        {
            if (_virgin && moment < _firstYield)
            {
                (_ky, _kz) = (
                    moment / Stiffness * Math.Cos(way),
                    moment / Stiffness * Math.Sin(way)
                );
                return;
            }
            _virgin = false;
            (_ky, _kz) = Solve(moment * Math.Cos(way), moment * Math.Sin(way));
            Remember();
        }

        public (double Y, double Z) Release()
        {
            if (_virgin)
                return (_ky, _kz) = (0, 0);
            (_ky, _kz) = Solve(0, 0);
            Remember();
            return (_ky, _kz);
        }

        /// <summary>Newton on both curvatures, halved where it would overshoot.</summary>
        private (double, double) Solve(double my, double mz)
        {
            var (ky, kz) = (_ky, _kz);
            for (var n = 0; n < 60; n++)
            {
                double fy = 0,
                    fz = 0,
                    a = 0,
                    b = 0,
                    c = 0;
                for (var i = 0; i < _y.Length; i++)
                {
                    var (stress, slope) = Fibre(i, ky * _y[i] + kz * _z[i]);
                    var w = _area[i];
                    fy += w * stress * _y[i];
                    fz += w * stress * _z[i];
                    a += w * slope * _y[i] * _y[i];
                    b += w * slope * _y[i] * _z[i];
                    c += w * slope * _z[i] * _z[i];
                }
                var (ry, rz) = (my - fy, mz - fz);
                if (Math.Abs(ry) + Math.Abs(rz) < 1e-3)
                    break;
                if (n == 0)
                    // Fibres that stand at their yield go back elastically; the first step must not take them for spent.
                    (a, b, c) = (Stiffness, 0, Stiffness);
                var det = a * c - b * b;
                if (det < 1e-12 * Stiffness * Stiffness)
                    det = 1e-12 * Stiffness * Stiffness;
                ky += (c * ry - b * rz) / det;
                kz += (a * rz - b * ry) / det;
            }
            return (ky, kz);
        }

        private (double Stress, double Slope) Fibre(int i, double strain)
        {
            double stress = _hardening * _e * strain,
                slope = _hardening * _e;
            var share = (1 - _hardening) / 2;
            Element(_early[i], _yield[i] * (1 - _round));
            Element(_late[i], _yield[i] * (1 + _round));
            return (stress, slope);

            void Element(double plastic, double yield)
            {
                var s = _e * (strain - plastic);
                var inside = Math.Abs(s) < yield;
                stress += share * (inside ? s : Math.CopySign(yield, s));
                slope += inside ? share * _e : 0;
            }
        }

        private void Remember()
        {
            for (var i = 0; i < _y.Length; i++)
            {
                var strain = _ky * _y[i] + _kz * _z[i];
                _early[i] = Plastic(_early[i], _yield[i] * (1 - _round), strain);
                _late[i] = Plastic(_late[i], _yield[i] * (1 + _round), strain);
            }

            double Plastic(double plastic, double yield, double strain)
            {
                var s = _e * (strain - plastic);
                return Math.Abs(s) <= yield ? plastic : strain - Math.CopySign(yield, s) / _e;
            }
        }
    }
}
