using Shaftwright.Findings;
using Shaftwright.Geometry;
using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>Sets a measured linkage up, moves it to the positions asked for, and says by name what it cannot do.</summary>
/// <remarks>Method: docs/linkages.md.</remarks>
internal static class LinkageSolver
{
    private const string Practice = "common practice, no source";
    private const string Derived = "rigid-body geometry, derived in docs/linkages.md";

    /// <summary>The linkage of a corner; null, with the reason said, when it cannot be set up.</summary>
    public static LinkageResult? Solve(
        LinkageInput input,
        CornerInput corner,
        CornerNumbers numbers,
        List<Finding> findings
    )
    {
        if (numbers.Model is not { } model)
        {
            NotSetUp(numbers, findings);
            return null;
        }
        var car = numbers.Car!;
        Assumed(input, model, findings);
        Unasked(input, numbers, findings);
        foreach (var end in numbers.Ends)
            Locked(end, findings);
        LinkageDoubts.Tapes(model, findings);
        if (numbers.Correction is { } correction)
            LinkageDoubts.Readings(correction, corner, findings);
        return new()
        {
            Kind = input.Kind,
            Points = [.. model.Points.Select(p => Placed(model, p))],
            Tapes = model.Tapes,
            Readings = numbers.Correction?.Readings ?? [],
            Corrected = numbers.Correction?.Moved ?? [],
            Positions = Positions(input, numbers, car),
        };
    }

    private static PlacedPoint Placed(LinkageModel model, LinkagePoint p)
    {
        var i = model.PlaceOf(p);
        var u = model.StandardUncertainty;
        return new(p, model.Point(model.Mean, p), new(u[i], u[i + 1], u[i + 2]));
    }

    private static List<SweptPosition> Positions(
        LinkageInput input,
        CornerNumbers numbers,
        LinkageCar car
    )
    {
        var paths = new Dictionary<LinkagePlace, LinkagePath>();
        SweptPosition At(LinkagePlace place, double travel)
        {
            if (!paths.TryGetValue(place, out var path))
                paths[place] = path = new(car, place);
            var end = path.MoveTo(travel).End;
            return new(place, travel, end, end == MoveEnd.Reached ? path.Line(travel) : null);
        }
        if (input.Positions.Count == 0)
            return [.. numbers.Asked.SelectMany(a => a.Travels.Select(t => At(a.Place, t)))];
        return
        [
            .. input
                .Positions.Where(p => p.Travel is not null)
                .Select(p => At(LinkageSweep.PlaceOf(p), p.Travel!.Value)),
        ];
    }

    private static void NotSetUp(CornerNumbers numbers, List<Finding> findings)
    {
        var severity = numbers.ReadingsAlone ? Severity.Caution : Severity.Stop;
        var instead = numbers.ReadingsAlone
            ? " The readings at the car are used alone."
            : " No length follows from it.";
        if (numbers.MissingOfLinkage.Count > 0)
            Add(
                findings,
                severity,
                "linkage-incomplete",
                $"The linkage is not whole. Missing: {string.Join("; ", numbers.MissingOfLinkage)}.{instead}",
                $"Measure what is missing and enter it.",
                Derived
            );
        else
            Add(
                findings,
                severity,
                "linkage-not-assembled",
                $"The linkage cannot be assembled from these points: {numbers.WhyNotAssembled}.{instead}",
                $"Look for two points that were mixed up, or one typed for another, and measure those again.",
                Derived
            );
    }

    private static void Assumed(LinkageInput input, LinkageModel model, List<Finding> findings)
    {
        var assumed = new List<string>();
        if (!model.Has(LinkagePoint.InnerAxis) && input.InnerDirection is null)
            assumed.Add("the inner joint's axis");
        if (!model.Has(LinkagePoint.OuterAxis) && input.OuterDirection is null)
            assumed.Add("the outer joint's axis");
        if (assumed.Count > 0)
            Add(
                findings,
                Severity.Note,
                "direction-assumed",
                $"Taken as level and straight across the car, within {Say.Angle(LinkageModel.Assumed)}: {string.Join(" and ", assumed)}.",
                $"Hold the angle gauge on a true face of the output flange and of the hub.",
                Practice
            );
    }

    private static void Unasked(LinkageInput input, CornerNumbers numbers, List<Finding> findings)
    {
        var without = input.Positions.Count(p => p.Travel is null);
        if (without > 0)
            Add(
                findings,
                Severity.Stop,
                "position-missing",
                $"{without} of {input.Positions.Count} positions are left out: they do not say how far above or below ride height the wheel is.",
                $"Enter their travel, or take them off the list.",
                Derived
            );
        if (numbers.Asked.Count == 0)
            Add(
                findings,
                Severity.Stop,
                "travel-unknown",
                $"It is not said how far the wheel travels, so the linkage has nowhere to go.",
                $"Measure droop and bump from ride height, or list the positions to look at.",
                Derived
            );
        if (
            input.Positions.Any(p => p.Rack is { Value: not 0 }) && !LinkageKinds.Steers(input.Kind)
        )
            Add(
                findings,
                Severity.Caution,
                "rack-does-nothing",
                $"Positions with the rack moved are listed, but this kind of linkage has no steering link: they are as with the rack centred.",
                $"Take the rack off those positions, or say what holds the hub.",
                Derived
            );
    }

    private static void Locked(PathEnd end, List<Finding> findings)
    {
        if (end.Reached.Travel == 0 && end.Place.Rack != 0)
        {
            Add(
                findings,
                Severity.Stop,
                "linkage-locks",
                $"The steering locks at ride height with the rack {Say.Length(Math.Abs(end.Reached.Rack))} {(end.Place.Rack > 0 ? "to the left" : "to the right")}, short of the {Say.Length(Math.Abs(end.Place.Rack))} asked for.",
                $"Measure the steering link's ends and the rack's travel again; if they are right, stop the rack before that.",
                Derived
            );
            return;
        }
        Add(
            findings,
            Severity.Stop,
            "linkage-locks",
            $"The linkage locks inside the travel: {PositionWords.At(end.Reached.Travel, end.Place)}, short of {PositionWords.At(end.Asked, end.Place)}. Beyond that nothing is said.",
            $"Measure the arms again; if they are right, stop the travel well before that.",
            Derived
        );
    }

    private static void Add(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new Finding(severity, Stage.Corner, code, text, action, source));
}
