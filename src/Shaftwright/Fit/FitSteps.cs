using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Fit;

/// <summary>What is known of the job that decides which steps it has and how they read.</summary>
/// <param name="InnerSeat">What locates the inner joint on the shaft.</param>
/// <param name="OuterSeat">What locates the outer joint.</param>
/// <param name="Sleeve">True with a sleeve.</param>
/// <param name="ClampsBearing">Whether the stub clamps the hub bearing.</param>
/// <param name="Proof">True when a proof twist is wanted.</param>
/// <param name="Ends">What must be left at both ends of the plunge.</param>
/// <param name="Fit">The rest.</param>
internal sealed record FitConditions(
    SeatKind InnerSeat,
    SeatKind OuterSeat,
    bool Sleeve,
    bool? ClampsBearing,
    bool Proof,
    TrialEnds? Ends,
    FitInput Fit
);

/// <summary>What a step is, whatever its state.</summary>
/// <param name="Step">Which.</param>
/// <param name="Title">What it is called.</param>
/// <param name="WhatToDo">What to do.</param>
internal sealed record FitStepKind(
    FitStep Step,
    string Title,
    Func<FitConditions, Sentence> WhatToDo
)
{
    /// <summary>Why the job does not have it; null when it does.</summary>
    public Func<FitConditions, Sentence?> NotHere { get; init; } = _ => null;

    /// <summary>Its caution; each stands at one step only.</summary>
    public string? Caution { get; init; }

    /// <summary>Where it comes from.</summary>
    public string Source { get; init; } = "common practice, no source";
}

/// <summary>The steps, in order.</summary>
internal static class FitSteps
{
    public static IReadOnlyList<FitStepKind> All { get; } =
    [
        new(
            FitStep.PaintLine,
            "Paint a line along it",
            _ =>
                $"Lay the shaft in the vee, and with a straight-edge paint one thin straight line along all of it, over weld and sleeve. Its offset will show any twist that stays."
        ),
        new(
            FitStep.ProofTwist,
            "Proof twist",
            c =>
                c.Fit.ProofTorque is { } t
                    ? $"Hold one end, load the other to {Say.Torque(t.Value)} slowly, take it off, and read the line. Then crack-test every weld again."
                    : (Sentence)$"Twist it to the proof torque, take it off, and read the line."
        )
        {
            NotHere = c =>
                c.Proof ? null : (Sentence)$"No proof torque is given; the twist is optional.",
            Caution =
                "A wound-up shaft stores energy and throws parts when it or a grip lets go: a guard round all of it, stand aside, nobody in line, load by a long pump or a winch from a distance.",
        },
        new(
            FitStep.Boots,
            "Boots and clamps on",
            c =>
                c.Sleeve
                    ? $"From each end: small clamp, boot, large clamp, in that order, tape over the splines. A boot that does not pass the sleeve went on before it was welded; look it over for burns."
                    : (Sentence)
                        $"From each end: small clamp, boot, large clamp, in that order, tape over the splines so that they do not cut the boots."
        ),
        new(
            FitStep.Joints,
            "Joints on, new clips",
            c =>
                (c.InnerSeat, c.OuterSeat) switch
                {
                    (SeatKind.Clip, _) or (_, SeatKind.Clip) =>
                        $"A new clip in each clip groove, never an old one. Drive the joint on squarely with soft metal, the way round that was measured, until the clip snaps, and pull on it.",
                    (SeatKind.Unknown, _) or (_, SeatKind.Unknown) =>
                        $"What locates the joints is not noted. If there is a clip, fit a new one; then drive the joint on squarely, the way round that was measured, and pull on it.",
                    _ => (Sentence)
                        $"Drive each joint on squarely with soft metal until it sits on its shoulder or stop, the way round that was measured, and pull on it.",
                }
        ),
        new(
            FitStep.Grease,
            "Grease, and close the boots",
            _ =>
                $"The joint maker's grease, all of the amount. Seat the boots with the joints at mid-plunge, let the air out under the lip, close the large clamp, then the small one. New clamps."
        ),
        new(
            FitStep.Stands,
            "Car on stands",
            _ => $"Both wheels of the axle off the ground, gearbox in neutral."
        )
        {
            Caution =
                "Rated stands on level ground, never a jack alone. Let hub and suspension loads go in control.",
        },
        new(
            FitStep.Seal,
            "Seal land and seal",
            _ =>
                $"The land must be smooth where the lip runs: no weld spatter, no tool mark, no rust. A new seal, its lip oiled; the splines guided past it."
        ),
        new(
            FitStep.InnerIn,
            "Inner end in",
            _ =>
                $"A new clip on the stub if it has one. Push the inner end in level, turning it until the splines take, and push home until you feel the clip snap."
        ),
        new(
            FitStep.PullCheck,
            "Pull check",
            c =>
                c.Fit.PullByMaker is { } by
                    ? $"Pull the inner joint's housing outwards with {Say.Force(by.Value)}, its maker's figure. It must stay in."
                    : (Sentence)
                        $"Pull the inner joint's housing outwards, firmly by hand, about {Say.Force(FitFields.UsualPull)}; the maker's figure wins. Pull on the housing, not on the shaft: that pulls the joint apart."
        ),
        new(
            FitStep.OuterIn,
            "Outer end in, nut on",
            _ =>
                $"Draw the outer stub into the hub by hand, not with a hammer on the joint. New nut, run up by hand; connect the suspension."
        ),
        new(
            FitStep.BearingClamp,
            "Hub nut to full torque",
            c =>
                c.Fit.HubNutByMaker is { } by
                    ? $"Tighten to {Say.Torque(by.Value)}, the maker's figure, with the wheel still off the ground and the brake held. Then lock the nut."
                    : (Sentence)
                        $"Tighten to the hub maker's figure with the wheel still off the ground and the brake held. Then lock the nut."
        )
        {
            NotHere = c =>
                c.ClampsBearing == false && c.Fit.HubNutByMaker is null
                    ? (Sentence)$"The stub does not clamp the hub bearing."
                    : null,
            Caution =
                "Where the stub clamps the hub bearing, no weight on the wheel and no rolling before the nut has its full torque: the bearing falls apart, in the stand or later on the road.",
            Source = "the hub maker's data; the order is common practice, no source",
        },
        new(
            FitStep.TrialEnds,
            "Both ends of the plunge",
            c =>
                c.Ends is { } e
                    ? $"Lift the wheel through all its travel, springs out. Near {Say.Length(e.InAtTravel)} of travel {Say.Length(e.LeftIn)} must be left inwards; near {Say.Length(e.OutAtTravel)}, {Say.Length(e.LeftOut)} outwards. Bump counts as plus."
                    : (Sentence)
                        $"Lift the wheel through all its travel, springs out, at both locks. Feel what is left of the plunge inwards and outwards where each is least."
        )
        {
            Source = "the length stage",
        },
        new(
            FitStep.FreeTurn,
            "Free turn",
            _ =>
                $"Turn the wheel by hand through whole turns at full droop, full bump and both full locks. It must turn freely and touch nothing: boots, arms, brake hoses."
        )
        {
            Caution =
                "By hand only, no loose clothing. No running with the wheels off the ground while anyone stands in line with the shaft.",
        },
        new(
            FitStep.Oil,
            "Gearbox oil",
            _ =>
                $"Make good what ran out, by the gearbox maker's level and oil, with the car level."
        )
        {
            Source = "the gearbox maker's data",
        },
        new(
            FitStep.FirstRun,
            "Check after the first run",
            _ =>
                $"A few gentle minutes, then look: boots and clamps, oil at the seal, hub nut, clips, the painted line, every weld. Then harder, and look again."
        )
        {
            Caution = "Stop at any new vibration, click or thrown grease.",
        },
    ];
}
