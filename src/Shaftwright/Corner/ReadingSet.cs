using Shaftwright.Corner.Linkages;

namespace Shaftwright.Corner;

/// <summary>Readings of one form at one steering position, that one set of curves is fitted to; or a path along which a linkage is
/// solved, which counts as distance and angle read at every travel.</summary>
internal sealed class ReadingSet
{
    private ReadingSet(ReadingForm form, Steering steering, int[] readings, int distinctTravels)
    {
        Form = form;
        Steering = steering;
        Readings = readings;
        // Two travels fix a straight line and say nothing of the bend between them: they stand alone.
        Fitted = distinctTravels >= 3;
        Degree = distinctTravels switch
        {
            <= 2 => distinctTravels - 1,
            <= 4 => 2,
            _ => 3,
        };
    }

    private ReadingSet(SweptPath path)
    {
        Form = ReadingForm.DistanceAndAngle;
        Steering =
            path.Place.Rack > 0 ? Steering.FullLeft
            : path.Place.Rack < 0 ? Steering.FullRight
            : Steering.Straight;
        // Each travel stands for no reading of the corner.
        Readings = [.. path.Travels.Select(_ => NoReading)];
        Fitted = true;
        _travels = [.. path.Travels];
        Place = path.Place;
    }

    private const int NoReading = -1;

    private readonly double[]? _travels;

    /// <summary>True for one reading of two that contradict each other: it stands for itself beside its set's curves.</summary>
    public bool Disputed { get; private init; }

    /// <summary>One reading of a set by itself.</summary>
    public ReadingSet Alone(int reading) =>
        new(Form, Steering, [reading], distinctTravels: 1) { Disputed = true };

    /// <summary>Rack, power unit and the other wheel, where a linkage is solved; null for readings.</summary>
    public LinkagePlace? Place { get; }

    public ReadingForm Form { get; }

    public Steering Steering { get; }

    /// <summary>Indexes of the readings, in order of travel; −1 where a linkage is solved.</summary>
    public int[] Readings { get; }

    /// <summary>True when the travel between the readings is covered by curves.</summary>
    public bool Fitted { get; }

    public int Degree { get; }

    public double Travel(double[] values, int k) =>
        _travels is { } travels
            ? travels[k]
            : values[CornerNumbers.At(Readings[k], CornerNumbers.Travel)];

    /// <summary>The values of a field over the set, in order of travel.</summary>
    public double[] Column(double[] values, int field)
    {
        if (_travels is { } travels)
            return travels;
        var column = new double[Readings.Length];
        for (var k = 0; k < column.Length; k++)
            column[k] = values[CornerNumbers.At(Readings[k], field)];
        return column;
    }

    /// <summary>True when the field was read at every position of the set.</summary>
    public bool Has(double[] values, int field) =>
        Readings.All(i => !double.IsNaN(values[CornerNumbers.At(i, field)]));

    /// <summary>What a length is found from: the linkage's paths where there is one, else the readings.</summary>
    public static IReadOnlyList<ReadingSet> Of(CornerInput corner, CornerNumbers numbers) =>
        numbers.Model is null
            ? Of(corner, numbers.Values)
            : [.. numbers.Paths.Select(p => new ReadingSet(p))];

    /// <summary>Sorts the usable readings into sets. A reading that gives both forms stands in both.</summary>
    public static IReadOnlyList<ReadingSet> Of(CornerInput corner, double[] values)
    {
        var sets = new List<ReadingSet>();
        foreach (var steering in Enum.GetValues<Steering>())
        {
            foreach (var form in Enum.GetValues<ReadingForm>())
            {
                int[] readings =
                [
                    .. Enumerable
                        .Range(0, corner.Readings.Count)
                        .Where(i =>
                            corner.Readings[i].Steering == steering
                            && Usable(corner, values, i, form)
                        )
                        .OrderBy(i => values[CornerNumbers.At(i, CornerNumbers.Travel)]),
                ];
                if (readings.Length > 0)
                {
                    var travels = Apart(readings, values);
                    sets.Add(new ReadingSet(form, steering, readings, travels));
                }
            }
        }
        return sets;
    }

    /// <summary>Heights nearer than this cannot be told apart by a tape that is off by ±2 mm at each, mm.</summary>
    public const double Together = 5;

    /// <summary>How many heights stand apart; readings close together check each other but do not show how a curve bends.</summary>
    private static int Apart(int[] byTravel, double[] values)
    {
        var count = 0;
        var last = double.NegativeInfinity;
        foreach (var i in byTravel)
        {
            var travel = values[CornerNumbers.At(i, CornerNumbers.Travel)];
            if (travel - last < Together)
                continue;
            count++;
            last = travel;
        }
        return count;
    }

    /// <summary>True when a reading holds all that its form needs.</summary>
    public static bool Usable(CornerInput corner, double[] values, int reading, ReadingForm form)
    {
        bool Read(int field) => !double.IsNaN(values[CornerNumbers.At(reading, field)]);
        return Read(CornerNumbers.Travel)
            && (
                form == ReadingForm.DistanceAndAngle
                    ? Read(CornerNumbers.Distance) && Read(CornerNumbers.InnerAngle)
                    : Read(CornerNumbers.In)
                        && Read(CornerNumbers.Out)
                        && !double.IsNaN(values[CornerNumbers.TrialLength])
                        && (corner.ReadAlong == SlideLine.Shaft || Read(CornerNumbers.InnerAngle))
            );
    }
}
