namespace Shaftwright.Corner.Linkages;

/// <summary>One thing that was read at the car, against what the linkage does there.</summary>
/// <param name="Reading">Index of the reading.</param>
/// <param name="What">What was read, in words.</param>
/// <param name="Read">As read: mm, or rad.</param>
/// <param name="Fitted">By the linkage after the readings corrected it; by the linkage as it was where this was left out.</param>
/// <param name="StandardUncertainty">Of the reading, with what its height may be off by: mm, or rad.</param>
/// <param name="LeftOut">True when it did not fit and corrected nothing.</param>
public sealed record ReadingFit(
    int Reading,
    string What,
    double Read,
    double Fitted,
    double StandardUncertainty,
    bool LeftOut
);

/// <summary>A coordinate that the readings moved.</summary>
/// <param name="Words">Which.</param>
/// <param name="Before">As measured: mm, or rad.</param>
/// <param name="After">As corrected.</param>
/// <param name="UncertaintyBefore">Standard uncertainty as measured.</param>
/// <param name="UncertaintyAfter">Standard uncertainty with the readings.</param>
/// <param name="IsAngle">True for rad.</param>
public sealed record CorrectedCoordinate(
    string Words,
    double Before,
    double After,
    double UncertaintyBefore,
    double UncertaintyAfter,
    bool IsAngle
);

/// <summary>What can be read of a linkage at one reading, as numbers that the linkage can be asked for.</summary>
internal sealed record LinkageReading(
    int Reading,
    ReadingQuantity Quantity,
    LinkagePlace Place,
    double Travel,
    double TravelUncertainty,
    double Value,
    double Uncertainty,
    double Trial
)
{
    /// <summary>What it is, in words.</summary>
    public string Words =>
        Quantity switch
        {
            ReadingQuantity.Distance => "distance",
            ReadingQuantity.InnerAngle => "inner angle",
            ReadingQuantity.OuterAngle => "outer angle",
            _ => "in and out",
        };

    public bool IsAngle => Quantity is ReadingQuantity.InnerAngle or ReadingQuantity.OuterAngle;

    /// <summary>What the linkage says there: distance, angle, or for in and out the trial shaft's plunge at half-way between its stops,
    /// which is what the reading says too.</summary>
    public double Of(ShaftLine line) =>
        Quantity switch
        {
            ReadingQuantity.Distance => line.Distance,
            ReadingQuantity.InnerAngle => Math.Atan2(line.Across, line.Axial),
            ReadingQuantity.OuterAngle => line.OuterAngleAt(0),
            _ => line.Axial,
        };

    /// <summary>The reading itself; in and out become a distance along the inner axis through the linkage's own distance across.</summary>
    public double ReadAt(ShaftLine line)
    {
        double Along(double length) =>
            Math.Sqrt(Math.Max(0, length * length - line.Across * line.Across));
        return Quantity switch
        {
            // Half-way between the stops is mid-plunge.
            ReadingQuantity.InAndOutAlongShaft => (Along(Trial + Value) + Along(Trial - Out)) / 2,
            ReadingQuantity.InAndOutAlongAxis => Along(Trial) + (Value - Out) / 2,
            _ => Value,
        };
    }

    /// <summary>How far a trial shaft came out, mm.</summary>
    public double Out { get; init; }

    /// <summary>Everything that readings say of a linkage.</summary>
    public static List<LinkageReading> Of(CornerInput corner, LinkageInput linkage)
    {
        var all = new List<LinkageReading>();
        for (var i = 0; i < corner.Readings.Count; i++)
        {
            var r = corner.Readings[i];
            if (r.Travel is not { } travel)
                continue;
            var rack = r.Steering switch
            {
                Steering.FullLeft => linkage.RackLeft?.Value,
                Steering.FullRight => -linkage.RackRight?.Value,
                _ => 0,
            };
            // At a lock whose rack is not known nothing can be said.
            if (rack is not { } at)
                continue;
            void Add(ReadingQuantity quantity, double value, double u, double goesOut = 0) =>
                all.Add(
                    new(
                        i,
                        quantity,
                        new(at, PowerUnitState.AtRest),
                        travel.Value,
                        CornerFields.Travel.StandardUncertainty(travel),
                        value,
                        u,
                        corner.TrialLength?.Value ?? 0
                    )
                    {
                        Out = goesOut,
                    }
                );
            if (r.Distance is { } d)
                Add(
                    ReadingQuantity.Distance,
                    d.Value,
                    CornerFields.Distance.StandardUncertainty(d)
                );
            if (r.InnerAngle is { } phi && r.Distance is not null)
                Add(
                    ReadingQuantity.InnerAngle,
                    phi.Value,
                    CornerFields.InnerAngle.StandardUncertainty(phi)
                );
            if (r is { In: { } goesIn, Out: { } comesOut } && corner.TrialLength is { } trial)
                Add(
                    corner.ReadAlong == SlideLine.Shaft
                        ? ReadingQuantity.InAndOutAlongShaft
                        : ReadingQuantity.InAndOutAlongAxis,
                    goesIn.Value,
                    double.Hypot(
                        double.Hypot(
                            CornerFields.In.StandardUncertainty(goesIn),
                            CornerFields.Out.StandardUncertainty(comesOut)
                        ) / 2,
                        CornerFields.TrialLength.StandardUncertainty(trial)
                    ),
                    comesOut.Value
                );
        }
        return all;
    }
}

/// <summary>What was read.</summary>
internal enum ReadingQuantity
{
    /// <summary>Distance between the joint centres.</summary>
    Distance,

    /// <summary>Angle between the line of centres and the inner axis.</summary>
    InnerAngle,

    /// <summary>Angle between the line of centres and the outer axis.</summary>
    OuterAngle,

    /// <summary>In and out of a trial shaft, read along it.</summary>
    InAndOutAlongShaft,

    /// <summary>In and out read along the inner axis.</summary>
    InAndOutAlongAxis,
}
