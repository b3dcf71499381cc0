using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>The line of the shaft over a wheel's travel at one place of rack and power unit, solved wherever it is asked for.</summary>
internal sealed class LinkagePath
{
    private readonly LinkageCar _car;
    private readonly LinkagePlace _place;
    private readonly CarrierSolver _solver;
    private double _at = double.NaN;
    private ShaftLine _line;

    public LinkagePath(LinkageCar car, LinkagePlace place)
    {
        _car = car;
        _place = place;
        _solver = new(car.Linkage);
        // Steered first, at ride height, so that every travel is reached along the same path.
        Steered = _solver.MoveTo(place.At(0));
    }

    /// <summary>How steering at ride height ended.</summary>
    public CarrierMove Steered { get; }

    /// <summary>Moves to a travel.</summary>
    public CarrierMove MoveTo(double travel) =>
        Steered.End == MoveEnd.Reached ? _solver.MoveTo(_place.At(travel)) : Steered;

    /// <summary>The shaft's line at a travel, mm; all NaN beyond a lock.</summary>
    public ShaftLine Line(double travel)
    {
        if (travel == _at)
            return _line;
        var (inner, axis) = _car.Inner(_place.PowerUnit);
        _line =
            MoveTo(travel).End == MoveEnd.Reached
                ? new(inner, axis, _solver.Point(_car.Outer), _solver.Direction(_car.OuterAxis))
                : new(inner, axis, s_nowhere, s_nowhere);
        _at = travel;
        return _line;
    }

    private static readonly Vec3 s_nowhere = new(double.NaN, double.NaN, double.NaN);
}
