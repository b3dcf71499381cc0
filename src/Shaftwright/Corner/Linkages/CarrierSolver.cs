using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Moves the carrier of any linkage along travel and rack: Newton's method with an analytic Jacobian on six conditions,
/// warm-started along the path from ride height.</summary>
/// <remarks><para>Method: predictor and corrector along a homotopy path; a step counts only when the corrections shrink and the
/// Jacobian keeps its sign, and is halved otherwise. So the path cannot pass a dead centre, and cannot jump to the mirror assembly.
/// Source: Deuflhard, Newton Methods for Nonlinear Problems, 2004, ch. 5 (from memory).</para>
/// <para>Accuracy: positions to 1e-9 mm, seen on linkages with a closed form and on rods that keep their length.
/// It keeps its scratch, so that a position allocates nothing; several threads take one each.</para></remarks>
public sealed class CarrierSolver
{
    /// <summary>Turns are weighed against shifts at this arm, mm: the size of a carrier.</summary>
    private const double Arm = 300;

    /// <summary>A correction below this leaves, squared by Newton's method, far less than 1e-9 mm.</summary>
    private const double Settled = 1e-7;

    /// <summary>What may be left of the error when a position counts, mm.</summary>
    private const double Owed = 1e-11;

    /// <summary>After a correction smaller than this the next is made with the same Jacobian: it is right to that part of
    /// <see cref="Arm"/>.</summary>
    private const double Nearly = 0.3;

    /// <summary>A step this many times as long as the last does not bend as that did.</summary>
    private const double MostBend = 2;

    /// <summary>Steps shorter than this are not tried: the path has ended.</summary>
    private const double ShortestStep = 1e-7;

    /// <summary>Determinants this far below the one at ride height, or than 1 for unit rows, are a dead centre.</summary>
    private const double DeadCentre = 1e-9;

    private const int MostCorrections = 12;

    private readonly Constraint[] _holds;
    private readonly Vec3[] _arms;
    private readonly double[] _lengths;
    private readonly Vec3 _reference;
    private readonly SixBySix _jacobian = new();
    private readonly double[] _f = new double[6];
    private readonly double[] _step = new double[6];
    private double[] _bend = new double[6];
    private double[] _bent = new double[6];
    private Drive _bendOver;
    private bool _bendKnown;
    private readonly bool _loose;
    private readonly int _sign;
    private Pose _at;
    private Drive _drive;

    /// <summary>Sets a linkage up at ride height.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="linkage"/> is null.</exception>
    public CarrierSolver(Linkage linkage)
    {
        ArgumentNullException.ThrowIfNull(linkage);
        _holds = [.. linkage.Constraints];
        _reference = linkage.WheelCentre;
        _arms = [.. _holds.Select(h => h.Carrier - _reference)];
        _lengths = [.. _holds.Select(h => (h.Carrier - h.Chassis).Length)];
        _at = Pose.Straight(_reference);
        Linearise(_at, default);
        var rows = _jacobian.RowProduct();
        _loose = !_jacobian.Factor() || !(Math.Abs(_jacobian.Determinant) > DeadCentre * rows);
        _sign = Math.Sign(_jacobian.Determinant);
    }

    /// <summary>Where the carrier stands.</summary>
    public Pose Carrier => _at;

    /// <summary>Travel and rack it stands at.</summary>
    public Drive Drive => _drive;

    /// <summary>A point of the carrier as it stands, mm.</summary>
    /// <param name="atRide">The point at ride height, mm.</param>
    public Vec3 Point(Vec3 atRide) => _at.Place(atRide - _reference);

    /// <summary>A direction of the carrier as it stands.</summary>
    /// <param name="atRide">The direction at ride height.</param>
    public Vec3 Direction(Vec3 atRide) => _at.Turn(atRide);

    /// <summary>Puts it back to ride height, wheels straight.</summary>
    public void Reset()
    {
        _at = Pose.Straight(_reference);
        _drive = default;
        _bendKnown = false;
        Linearise(_at, default);
        _jacobian.Factor();
    }

    /// <summary>Moves it on from where it stands, straight from drive to drive. At a lock it stays there.</summary>
    /// <param name="target">Where to.</param>
    public CarrierMove MoveTo(Drive target)
    {
        if (_loose)
            return new(MoveEnd.Loose, _drive, _at);
        var begin = _drive;
        var whole = begin.DistanceTo(target);
        var done = 0.0;
        var stride = 1.0;
        while (done < 1 && whole > 0)
        {
            var next = done + stride >= 1 ? 1 : done + stride;
            if (Step(next == 1 ? target : begin.Towards(target, next)))
            {
                done = next;
                stride *= 2;
                continue;
            }
            stride = (next - done) / 2;
            if (stride * whole < ShortestStep)
                return new(MoveEnd.Locked, _drive, _at);
        }
        return new(MoveEnd.Reached, _drive, _at);
    }

    /// <summary>A solver of its own that stands where this one stands.</summary>
    internal CarrierSolver Standing() => new(this);

    private CarrierSolver(CarrierSolver from)
    {
        (_holds, _arms, _lengths, _reference) = (
            from._holds,
            from._arms,
            from._lengths,
            from._reference
        );
        (_loose, _sign, _at, _drive) = (from._loose, from._sign, from._at, from._drive);
        _jacobian.CopyFrom(from._jacobian);
    }

    /// <summary>Moves straight to where a linkage of nearly the same points stands, with that one's Jacobian; false, and not to be
    /// asked for a place, when the two are not near enough for that.</summary>
    /// <param name="near">The other, standing where it was asked to go.</param>
    internal bool Follow(CarrierSolver near)
    {
        if (_loose || near._loose)
            return false;
        var to = near._drive;
        // The same place of the body; each has a reference point of its own on it.
        var pose = near._at with
        {
            At = near.Point(_reference),
        };
        var before = double.PositiveInfinity;
        for (var k = 0; k < 2 * MostCorrections; k++)
        {
            Residuals(pose, to);
            near._jacobian.Solve(_f, _step);
            for (var i = 0; i < 6; i++)
                _step[i] = -_step[i];
            var size = Size(_step);
            if (!(size <= MostBetween) || size > Contraction * before)
                return false;
            pose = Moved(pose, _step);
            if (size < Settled || (k > 0 && size * size / before < Owed))
            {
                (_at, _drive, _bendKnown) = (pose, to, false);
                return true;
            }
            before = size;
        }
        return false;
    }

    /// <summary>Two linkages further apart than this, mm, are not nearly the same.</summary>
    private const double MostBetween = 20;

    /// <summary>One predicted and corrected step; false, and nothing moved, when it cannot be trusted. The Jacobian is factored near
    /// where the carrier stands when it begins, and after it.</summary>
    private bool Step(Drive to)
    {
        for (var i = 0; i < 6; i++)
            _f[i] = -DriverRate(i) * Difference(i, to);
        _jacobian.Solve(_f, _step);
        var predicted = Size(_step);
        // The path bends on as it bent on the step before, when this one goes the same way.
        var bend = Bend(to);
        for (var i = 0; i < 6; i++)
        {
            _step[i] += bend * _bend[i];
            _bent[i] = bend * _bend[i];
        }
        var pose = Moved(_at, _step);
        var before = Math.Max(predicted, Nearly);
        var fresh = true;
        for (var k = 0; k < MostCorrections; k++)
        {
            if (fresh)
            {
                Linearise(pose, to);
                if (!_jacobian.Factor() || Math.Sign(_jacobian.Determinant) != _sign)
                    break;
            }
            else
            {
                Residuals(pose, to);
            }
            _jacobian.Solve(_f, _step);
            for (var i = 0; i < 6; i++)
            {
                _step[i] = -_step[i];
                _bent[i] += _step[i];
            }
            var size = Size(_step);
            // A correction must be much smaller than the one before, the first than the step predicted.
            if (!(size <= Contraction * before || size < Settled))
                break;
            pose = Moved(pose, _step);
            // What is left is less than this correction by as much as this one is less than the last: it shrinks faster, not slower.
            var left = k == 0 ? size : size * size / before;
            if (size < Settled || left < Owed)
            {
                Keep(to);
                _at = pose;
                _drive = to;
                return true;
            }
            before = size;
            // Near enough, the Jacobian of the last correction is as good as new.
            fresh = size > Nearly;
        }
        // Back to where it stands.
        _bendKnown = false;
        Linearise(_at, _drive);
        _jacobian.Factor();
        return false;
    }

    /// <summary>Keeps how far the path bent off its tangent on the step just made.</summary>
    private void Keep(Drive to)
    {
        (_bend, _bent) = (_bent, _bend);
        _bendOver = to.Less(_drive);
        _bendKnown = true;
    }

    /// <summary>How many times the last step's bend a step to here bends; 0 when it goes another way. A bend grows with the square of
    /// the step.</summary>
    private double Bend(Drive to)
    {
        if (!_bendKnown)
            return 0;
        var now = to.Less(_drive);
        var ratio = now.Dot(_bendOver) / _bendOver.Dot(_bendOver);
        var aside = now.Dot(now) - ratio * ratio * _bendOver.Dot(_bendOver);
        return Math.Abs(ratio) <= MostBend && aside < 1e-6 * now.Dot(now) ? ratio * ratio : 0;
    }

    private const double Contraction = 0.5;

    private double Difference(int i, Drive to) =>
        to.Of(_holds[i].Driver) - _drive.Of(_holds[i].Driver);

    /// <summary>How a residual changes with its driver, where the carrier stands.</summary>
    private double DriverRate(int i)
    {
        ref readonly var h = ref _holds[i];
        if (h.Driver == Driver.None)
            return 0;
        return h.Hold switch
        {
            Hold.Rod => -(_at.Place(_arms[i]) - Chassis(in h, _drive)).Dot(h.Along) / _lengths[i],
            Hold.Plane => -h.Normal.Dot(h.Along),
            _ => _at.Turn(h.Normal).Dot(h.Along),
        };
    }

    private static Vec3 Chassis(in Constraint h, Drive drive) =>
        h.Driver == Driver.None ? h.Chassis : h.Chassis + h.Along * drive.Of(h.Driver);

    private static Pose Moved(Pose pose, double[] step) =>
        pose.Then(new(step[0], step[1], step[2]), new(step[3] / Arm, step[4] / Arm, step[5] / Arm));

    private static double Size(double[] step)
    {
        var sum = 0.0;
        for (var i = 0; i < 6; i++)
            sum += step[i] * step[i];
        return Math.Sqrt(sum);
    }

    /// <summary>Residuals alone, mm.</summary>
    private void Residuals(Pose pose, Drive drive)
    {
        for (var i = 0; i < 6; i++)
        {
            ref readonly var h = ref _holds[i];
            var u = pose.Place(_arms[i]) - Chassis(in h, drive);
            _f[i] = h.Hold switch
            {
                Hold.Rod => RodError(u, _lengths[i]),
                Hold.Plane => h.Normal.Dot(u),
                _ => -pose.Turn(h.Normal).Dot(u),
            };
        }
    }

    /// <summary>(|u|² − L²)/2L: what a rod is too long by, to first order, without a root.</summary>
    private static double RodError(Vec3 u, double L) => (u.Dot(u) - L * L) / (2 * L);

    /// <summary>Residuals and their Jacobian. A shift δ and a turn ω move a carrier point x by δ + ω × r, r from the reference to it.</summary>
    private void Linearise(Pose pose, Drive drive)
    {
        for (var i = 0; i < 6; i++)
        {
            ref readonly var h = ref _holds[i];
            var r = pose.Turn(_arms[i]);
            var u = pose.At + r - Chassis(in h, drive);
            Vec3 shift,
                turn;
            switch (h.Hold)
            {
                case Hold.Rod:
                    _f[i] = RodError(u, _lengths[i]);
                    shift = u * (1 / _lengths[i]);
                    turn = r.Cross(shift);
                    break;
                case Hold.Plane:
                    _f[i] = h.Normal.Dot(u);
                    shift = h.Normal;
                    turn = r.Cross(shift);
                    break;
                default:
                    var n = pose.Turn(h.Normal);
                    _f[i] = -n.Dot(u);
                    shift = -n;
                    turn = r.Cross(shift) - n.Cross(u);
                    break;
            }
            _jacobian.Row(i, shift, turn * (1 / Arm));
        }
    }
}
