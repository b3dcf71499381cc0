using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>The line of the shaft over a wheel's travel at one place of rack and power unit, solved wherever it is asked for.</summary>
/// <remarks>A car that differs from another by a nudge follows it from place to place, which is some ten times as fast as going its
/// own way from ride height, and as exact. What was solved once is kept: searches come back to the same travels.</remarks>
internal sealed class LinkagePath
{
    /// <summary>Lines kept at most.</summary>
    private const int MostKept = 1000;

    private readonly LinkageCar _car;
    private readonly LinkagePlace _place;
    private readonly LinkagePath? _lead;
    private readonly Dictionary<double, ShaftLine> _lines = [];
    private readonly Dictionary<double, CarrierSolver?> _standing = [];
    private CarrierSolver? _solver;
    private CarrierMove _steered;
    private CarrierSolver? _follower;

    /// <summary>Sets one up.</summary>
    /// <param name="car">The car.</param>
    /// <param name="place">Rack, power unit and the other wheel.</param>
    /// <param name="lead">The path of nearly the same car at the same place; null without one.</param>
    public LinkagePath(LinkageCar car, LinkagePlace place, LinkagePath? lead = null)
    {
        (_car, _place, _lead) = (car, place, lead);
    }

    /// <summary>Moves to a travel.</summary>
    public CarrierMove MoveTo(double travel)
    {
        var solver = Solver();
        return _steered.End == MoveEnd.Reached ? solver.MoveTo(_place.At(travel)) : _steered;
    }

    /// <summary>The shaft's line at a travel, mm; all NaN beyond a lock.</summary>
    public ShaftLine Line(double travel)
    {
        if (_lines.TryGetValue(travel, out var kept))
            return kept;
        var (inner, axis) = _car.Inner(_place.PowerUnit);
        var solver = Reached(travel);
        ShaftLine line = solver is not null
            ? new(inner, axis, solver.Point(_car.Outer), solver.Direction(_car.OuterAxis))
            : new(inner, axis, s_nowhere, s_nowhere);
        if (_lines.Count < MostKept)
            _lines[travel] = line;
        return line;
    }

    private CarrierSolver? Reached(double travel)
    {
        if (_lead?.StandingAt(travel) is { } lead)
        {
            var follower = _follower ??= new(_car.Linkage);
            if (follower.Follow(lead))
                return follower;
        }
        return MoveTo(travel).End == MoveEnd.Reached ? _solver : null;
    }

    /// <summary>A solver that stays at a travel, for others to follow; null where it does not get there.</summary>
    private CarrierSolver? StandingAt(double travel)
    {
        if (!_standing.TryGetValue(travel, out var standing))
        {
            standing = MoveTo(travel).End == MoveEnd.Reached ? _solver!.Standing() : null;
            if (_standing.Count < MostKept)
                _standing[travel] = standing;
        }
        return standing;
    }

    /// <summary>Steered first, at ride height, so that every travel is reached along the same path.</summary>
    private CarrierSolver Solver()
    {
        if (_solver is null)
        {
            _solver = new(_car.Linkage);
            _steered = _solver.MoveTo(_place.At(0));
        }
        return _solver;
    }

    private static readonly Vec3 s_nowhere = new(double.NaN, double.NaN, double.NaN);
}
