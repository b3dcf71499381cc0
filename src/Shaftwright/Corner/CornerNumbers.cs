using Shaftwright.Measures;

namespace Shaftwright.Corner;

/// <summary>The corner's readings as plain numbers in one row, so that an uncertainty can nudge any of them.</summary>
internal sealed class CornerNumbers
{
    /// <summary>Places in the row of values shared by all readings.</summary>
    public const int TrialLength = 0,
        EndFloat = 1,
        TowardsWheel = 2,
        AwayFromWheel = 3,
        Shared = 4;

    /// <summary>Places within one reading.</summary>
    public const int Travel = 0,
        In = 1,
        Out = 2,
        Distance = 3,
        InnerAngle = 4,
        OuterAngle = 5,
        PerReading = 6;

    private CornerNumbers(double[] values, IReadOnlyList<UncertainValue> uncertain)
    {
        Values = values;
        Uncertain = uncertain;
    }

    /// <summary>Every value, internal units; NaN where nothing was read, 0 for an allowance that nobody gave.</summary>
    public double[] Values { get; }

    /// <summary>The values that are uncertain.</summary>
    public IReadOnlyList<UncertainValue> Uncertain { get; }

    /// <summary>Place of a field of a reading.</summary>
    public static int At(int reading, int field) => Shared + reading * PerReading + field;

    public static CornerNumbers Of(CornerInput corner)
    {
        var values = new double[Shared + corner.Readings.Count * PerReading];
        var uncertain = new List<UncertainValue>();

        void Put<T>(
            int place,
            int? reading,
            Field<T> field,
            Measured<T>? measure,
            double otherwise = double.NaN
        )
            where T : IDimension<T>
        {
            values[place] = measure?.Value ?? otherwise;
            if (measure is not null && field.StandardUncertainty(measure) is > 0 and var u)
                uncertain.Add(new UncertainValue(place, reading, field.Name, field.Words, u));
        }

        Put(TrialLength, null, CornerFields.TrialLength, corner.TrialLength);
        Put(EndFloat, null, CornerFields.OutputEndFloat, corner.OutputEndFloat, 0);
        Put(
            TowardsWheel,
            null,
            CornerFields.PowerUnitTowardsWheel,
            corner.PowerUnitTowardsWheel,
            0
        );
        Put(
            AwayFromWheel,
            null,
            CornerFields.PowerUnitAwayFromWheel,
            corner.PowerUnitAwayFromWheel,
            0
        );
        for (var i = 0; i < corner.Readings.Count; i++)
        {
            var r = corner.Readings[i];
            Put(At(i, Travel), i, CornerFields.Travel, r.Travel);
            Put(At(i, In), i, CornerFields.In, r.In);
            Put(At(i, Out), i, CornerFields.Out, r.Out);
            Put(At(i, Distance), i, CornerFields.Distance, r.Distance);
            Put(At(i, InnerAngle), i, CornerFields.InnerAngle, r.InnerAngle);
            Put(At(i, OuterAngle), i, CornerFields.OuterAngle, r.OuterAngle);
        }
        return new CornerNumbers(values, uncertain);
    }
}

/// <summary>A value that may be off.</summary>
/// <param name="Place">Where it stands in the row.</param>
/// <param name="Reading">Which reading it belongs to; null when all share it.</param>
/// <param name="Field">The field's name.</param>
/// <param name="Words">The field's words.</param>
/// <param name="StandardUncertainty">Internal unit.</param>
internal sealed record UncertainValue(
    int Place,
    int? Reading,
    string Field,
    string Words,
    double StandardUncertainty
);
