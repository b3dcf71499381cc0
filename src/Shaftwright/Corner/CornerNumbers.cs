using Shaftwright.Corner.Linkages;
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

    /// <summary>The linkage; null when there is none, or it cannot be set up.</summary>
    public LinkageModel? Model { get; private init; }

    /// <summary>The linkage as it most likely is.</summary>
    public LinkageCar? Car { get; private init; }

    /// <summary>What the readings corrected of it; null without readings that say anything of it.</summary>
    public Correction? Correction { get; private init; }

    /// <summary>The paths it was asked to go.</summary>
    public IReadOnlyList<SweptPath> Asked { get; private init; } = [];

    /// <summary>What it can go of them.</summary>
    public IReadOnlyList<SweptPath> Paths { get; private init; } = [];

    /// <summary>Where it ends before that.</summary>
    public IReadOnlyList<PathEnd> Ends { get; private init; } = [];

    /// <summary>What is missing of the linkage, in words.</summary>
    public IReadOnlyList<string> MissingOfLinkage { get; private init; } = [];

    /// <summary>Why a whole linkage cannot be assembled, in words.</summary>
    public string WhyNotAssembled { get; private init; } = "";

    /// <summary>True when there are readings beside a linkage that cannot be set up.</summary>
    public bool ReadingsAlone { get; private init; }

    /// <summary>The linkage of a row of values.</summary>
    /// <returns>The car, and whether it is the likely one with one coordinate nudged by its standard uncertainty or none.</returns>
    private (LinkageCar Car, bool Near) CarOf(double[] values)
    {
        var z = values.AsSpan(First, Model!.Mean.Length);
        var nudged = z.IndexOfAnyExcept(0);
        if (nudged < 0)
            return (Car!, true);
        if (Math.Abs(z[nudged]) != 1 || z[(nudged + 1)..].IndexOfAnyExcept(0) >= 0)
            return (new(Model, Model.Coordinates(z)), false);
        // One coordinate nudged: every set and every bound asks for the same car again.
        var key = (nudged, z[nudged] > 0);
        if (!_nudged.TryGetValue(key, out var car))
            _nudged[key] = car = new(Model, Model.Coordinates(z));
        return (car, true);
    }

    private readonly Dictionary<(int Place, bool Up), LinkageCar> _nudged = [];
    private readonly Dictionary<LinkagePlace, LinkagePath> _leads = [];

    /// <summary>The path of a row of values at a place. A car with one coordinate nudged follows the likely one, and both are kept, so
    /// those are for one thread; cars drawn at random share nothing that changes, and may run on many.</summary>
    /// <param name="values">The row, possibly nudged or drawn; its last places are the linkage's.</param>
    /// <param name="likely">True when nothing in the row is nudged or drawn.</param>
    /// <param name="place">Rack, power unit and the other wheel.</param>
    public LinkagePath PathOf(double[] values, bool likely, LinkagePlace place)
    {
        var (car, near) = CarOf(values);
        if (!near || (ReferenceEquals(car, Car) && !likely))
            return new(car, place);
        if (!_leads.TryGetValue(place, out var lead))
            _leads[place] = lead = new(Car!, place);
        return likely ? lead : new(car, place, lead);
    }

    /// <summary>Where the linkage's places begin.</summary>
    public int First { get; private init; }

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
        return corner.Linkage is { } linkage
            ? WithLinkage(corner, linkage, values, uncertain)
            : new CornerNumbers(values, uncertain);
    }

    private static CornerNumbers WithLinkage(
        CornerInput corner,
        LinkageInput linkage,
        double[] values,
        List<UncertainValue> uncertain
    )
    {
        var model = LinkageModel.Of(linkage, out var missing);
        var (car, why) = model is null ? (null, "") : Assembled(model);
        Correction? correction = null;
        if (car is not null)
        {
            correction = Correction.Of(model!, LinkageReading.Of(corner, linkage));
            if (correction is not null)
                (model, car) = (correction.Model, new(correction.Model, correction.Model.Mean));
        }
        if (model is null || car is null)
            return new CornerNumbers(values, uncertain)
            {
                MissingOfLinkage = missing,
                WhyNotAssembled = why,
                ReadingsAlone = corner.Readings.Count > 0,
            };
        var asked = LinkageSweep.Asked(linkage);
        var (paths, ends) = LinkageSweep.Reached(car, asked);
        var all = new double[values.Length + model.Mean.Length];
        values.CopyTo(all, 0);
        for (var k = 0; k < model.Mean.Length; k++)
        {
            if (model.Moves(k))
                uncertain.Add(
                    new UncertainValue(values.Length + k, null, "linkage", model.Words[k], 1)
                );
        }
        if (linkage.Bushes is { } bushes)
        {
            all[TowardsWheel] += bushes.Value;
            all[AwayFromWheel] += bushes.Value;
            if (LinkageFields.Bushes.StandardUncertainty(bushes) is > 0 and var u)
            {
                var field = LinkageFields.Bushes;
                uncertain.Add(new UncertainValue(TowardsWheel, null, field.Name, field.Words, u));
                uncertain.Add(new UncertainValue(AwayFromWheel, null, field.Name, field.Words, u));
            }
        }
        return new CornerNumbers(all, uncertain)
        {
            Model = model,
            Car = car,
            Correction = correction,
            First = values.Length,
            Asked = asked,
            Paths = paths,
            Ends = ends,
        };
    }

    /// <summary>The linkage at ride height, or why it does not hold together there.</summary>
    private static (LinkageCar? Car, string Why) Assembled(LinkageModel model)
    {
        if (model.Coincident() is { } pair)
            return (null, $"{pair.One} and {pair.Other} are one point");
        var car = new LinkageCar(model, model.Mean);
        return new CarrierSolver(car.Linkage).MoveTo(new(1e-3)).End == MoveEnd.Loose
            ? (null, "they leave the hub loose or stand at a dead centre")
            : (car, "");
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
