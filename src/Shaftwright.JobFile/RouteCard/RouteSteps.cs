using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.JobFile;

/// <summary>What never changes about an operation.</summary>
/// <param name="Code">Stable kebab-case id.</param>
/// <param name="Title">What it is called.</param>
/// <param name="WhatToDo">What to do.</param>
internal sealed record RouteStep(string Code, string Title, string WhatToDo)
{
    /// <summary>What to measure so that it can be answered; null when it has no answer to wait for.</summary>
    public string? Needs { get; init; }

    /// <summary>True when its answer is what gets signed, not only something to know beside it.</summary>
    public bool Answers { get; init; }

    /// <summary>True when it is numbers only: no metal is touched.</summary>
    public bool OnPaper { get; init; }

    /// <summary>The moment of its turns under the dial.</summary>
    public Moment? Moment { get; init; }

    /// <summary>Operations that must stand signed before it.</summary>
    public string[] After { get; init; } = [];

    /// <summary>A number that a reader could expect and does not get.</summary>
    public string? NoNumber { get; init; }

    /// <summary>Cautions of this step.</summary>
    public string[] Cautions { get; init; } = [];

    /// <summary>Whether a job has it.</summary>
    public Func<Job, bool> InJob { get; init; } = _ => true;
}

/// <summary>The operations of every route card, in making order. Cautions: usual workshop practice and the hazards named in
/// docs/route-card.md, each once, where it matters.</summary>
internal static class RouteSteps
{
    public const string MeasureCar = "measure-car";
    public const string CheckJoints = "check-joints";
    public const string Length = "length";
    public const string WalkDonors = "walk-donors";
    public const string Cut = "cut";
    public const string Strength = "strength";
    public const string PrepareEnds = "prepare-ends";
    public const string WeldSample = "weld-sample";
    public const string SetUp = "set-up";
    public const string Tack = "tack";
    public const string CheckTacks = "check-tacks";
    public const string Preheat = "preheat";
    public const string Weld = "weld";
    public const string SlowCool = "slow-cool";
    public const string Temper = "temper";
    public const string Cool = "cool";
    public const string TrueButt = "true-butt";
    public const string CrackTestButt = "crack-test-butt";
    public const string Sleeve = "sleeve";
    public const string CloseVent = "close-vent";
    public const string TrueSleeved = "true-sleeved";
    public const string CrackTestSleeved = "crack-test-sleeved";
    public const string LateCrackTest = "crack-test-late";
    public const string Fit = "fit";
    public const string FirstRun = "first-run";
    public const string CrackTestEvent = "crack-test-event";
    public const string Service = "service";

    private static readonly Func<Job, bool> s_sleeved = job =>
        job.Cut is null || job.Cut.SleeveLength is not null;

    /// <summary>All of them, in order.</summary>
    public static IReadOnlyList<RouteStep> All { get; } =
    [
        new(
            MeasureCar,
            "Measure the car",
            "Car on stands, spring out, roll bar off. At full droop, ride height and full bump, and at each full lock if the wheel steers, read how far the trial shaft still goes in and comes out."
        )
        {
            Needs = "Read at full droop, ride height and full bump.",
            Answers = true,
            OnPaper = true,
            Cautions =
            [
                "Rated stands on level ground, never a jack alone. Let hub and suspension loads go in control.",
                "Road approval, insurance and a sport's technical rules may forbid or control welded driveline parts: ask first, and keep the records.",
            ],
        },
        new(
            CheckJoints,
            "Check the joints",
            "Slide each joint through its stroke and swing it to its stop on the bench. Measure from what locates it on the shaft to its centre, and from there to the shaft's end."
        )
        {
            Needs = "Measure each joint's angle limit, its plunge, and where it sits on the shaft.",
            Answers = true,
            OnPaper = true,
        },
        new(
            Length,
            "Settle the length",
            "Take the length to make and its tolerance. If a reading is named as worth taking again, take it again before any metal is cut."
        )
        {
            Needs = "The length follows from the readings at the car.",
            Answers = true,
            OnPaper = true,
        },
        new(
            WalkDonors,
            "Walk the donors",
            "Walk each donor from its joint end with the caliper: up to where, how thick, what is here. Run a file along it to find where it is hard."
        )
        {
            Needs = "Walk both donors with the caliper.",
            Answers = true,
            OnPaper = true,
        },
        new(
            Cut,
            "Choose the cuts",
            "Take the proposed cut or choose your own, and read what each rule says of it. Left and right are different shafts."
        )
        {
            Needs = "The cuts follow from both donors and the overall length.",
            Answers = true,
            OnPaper = true,
        },
        new(
            Strength,
            "Judge the strength",
            "Compare the torque that can reach the shaft with what its weakest place carries, and with what each donor was made for."
        )
        {
            Needs = "It follows from the cuts, the car's figures and what is known of the steel.",
            Answers = true,
            OnPaper = true,
        },
        new(
            PrepareEnds,
            "Cut and prepare the ends",
            "Cut both donors at the marks, square. Grind the welding preparation alike on both, strip coatings well back, and clean to bare metal. Put boots and rings that will not pass later onto the shaft now."
        )
        {
            After = [Length, Cut, Strength],
            NoNumber =
                "How steep the bevel is and how far it goes in is agreed with the welder. Typed in, it gives runs, rod, share of torque and shrinkage.",
            Cautions =
            [
                "Never use chlorinated brake cleaner or degreaser before welding: under the arc even its residue or vapour makes phosgene. Check the label and move the can out of the room.",
                "Zinc fume gives fever hours later; cadmium and chromate can kill. Find out what the coating is, strip it well back, and extract the fume.",
            ],
        },
        new(
            WeldSample,
            "Weld a sample and cut it",
            "From offcuts of both donors, prepared, heated and welded as the shaft will be. Cut it through, grind, etch, and read how deep it is fused at four places or more, and the hardness across. Photograph it."
        )
        {
            Needs =
                "Fusion depth at four places round the etched sample, hardness across it, and that it is of the same offcuts and set-up. Without a sample the low guesses count: sign with a note why there is none.",
            Answers = true,
            After = [PrepareEnds],
            Cautions =
            [
                "Etchants burn skin and eyes: gloves, goggles, acid into water, and rinse before you handle or photograph it.",
            ],
        },
        new(
            SetUp,
            "Set up in the vee",
            "Lay both ends in the vee, the smaller one on equal shim packs on both faces. Set the gap and check the overall length before anything is tacked."
        )
        {
            Needs = "Both diameters in the vee, and the feeler blades on hand.",
            Answers = true,
            After = [PrepareEnds],
        },
        new(
            Tack,
            "Tack and check the run-out",
            "Warm the ends as for the weld, then four tacks at 0°, 180°, 90° and 270° from a painted mark, earth clamp beside the weld. Turn it under the dial; if it runs out, see whether it is offset or tilted."
        )
        {
            Needs = "A turn under the dial, tacked.",
            Answers = true,
            Moment = Moment.Tacked,
            After = [SetUp],
            Cautions =
            [
                "A driveshaft weld can injure others: a competent welder, and a test piece in the same steel cut and examined first.",
                "The arc burns eyes and skin, others' too: screen it, keep a fire watch, and disconnect electronics if any welding is on the car.",
                "Turn the shaft by hand for run-out, with no loose clothing.",
                "Earth clamp on bright metal right beside the weld, never beyond a joint, bearing or spline: the current burns what it passes through.",
            ],
        },
        new(
            CheckTacks,
            "Offset or tilt?",
            "Read the dial close to the joint on each piece, and again further out. A tilt or a bow can be pressed out later. A parallel offset never can: break the tacks and set up again."
        )
        {
            Needs =
                "On each piece, at two places: distance from the joint, run-out, and where it stands highest.",
            Answers = true,
            After = [Tack],
        },
        new(
            Preheat,
            "Preheat",
            "Joints off, boots off or well away, wet cloth round splines. Heat slowly and right through, both pieces alike, and let it soak; a temperature crayon on the far side of the bar says when."
        )
        {
            Needs = "Both diameters at the weld; better, what the steel and the filler are.",
            Answers = true,
            After = [CheckTacks],
            Cautions = ["Preheated steel looks cold. Mark it."],
        },
        new(
            Weld,
            "Weld the butt",
            "Short beads on opposite sides, each layer begun on the side that stands highest, with low-hydrogen filler. Measure the temperature between runs, and read the dial after each layer. Fill every crater before you lift."
        )
        {
            After = [WeldSample, Preheat],
            Cautions =
            [
                "Hydrogen cracks a hardenable steel, sometimes a day or two later: dry, clean, preheated, low-hydrogen filler, cooled slowly.",
                "No spray, penetrant or developer cans near the arc, the preheat flame or the hot part: propellant and solvent burn. Ventilate; wear gloves.",
            ],
        },
        new(
            SlowCool,
            "Cool slowly",
            "Straight from the weld: hold it warm if you can, then wrap it or bury it in dry sand or lime, out of any draught. No water, no wet cloth, no air line."
        )
        {
            After = [Weld],
        },
        new(
            Temper,
            "Temper",
            "Temper the weld before it is pressed. Heat the weld and its heat band only, and hold by the clock."
        )
        {
            After = [SlowCool],
            NoNumber =
                "By your steel's data or a heat treater, whose word goes before any number here. Never above the temperature the part was tempered at before.",
        },
        new(
            Cool,
            "Let it cool right through",
            "In still air until the hand can stay on it. Only then is it turned under the dial and pressed: a warm shaft reads false."
        )
        {
            After = [Temper],
        },
        new(
            TrueButt,
            "True the butt",
            "Turn the cold shaft under the dial, mark the high point, press as the next stroke says, and turn it again. Never press a hardened case or an untempered weld."
        )
        {
            Needs = "A turn under the dial, butt welded and cold.",
            Answers = true,
            Moment = Moment.ButtWelded,
            After = [Cool],
            Cautions = [PressCautions.Burst],
        },
        new(
            CrackTestButt,
            "Crack-test the butt",
            "Before the sleeve hides it for good: clean, penetrant on, a quarter of an hour or the maker's time if that is longer, wipe, developer, look. Photograph and record it."
        )
        {
            Answers = true,
            After = [TrueButt],
            Cautions =
            [
                "A clean penetrant test is no proof of strength. A shaft with a crack is scrapped, not welded again.",
            ],
        },
        new(
            Sleeve,
            "Fit and weld the sleeve",
            "Only now: crack-tested butt, shaft trued. Drill its vent. In halves, the long seams opposite each other and away from the butt's starts and stops. Preheat, cool and temper as for the butt; weld every seam right round, with no crater at a toe."
        )
        {
            After = [CrackTestButt],
            InJob = s_sleeved,
            NoNumber =
                "No strength is credited to the sleeve until every seam is closed, clear and tested.",
            Cautions =
            [
                "A closed hollow can burst or blow out hot metal when it is heated: vent it before any heat.",
            ],
        },
        new(
            CloseVent,
            "Close the vent, last",
            "After the last heat, cold and dry right through: plug the vent and close it, best with a driven and staked plug. A bead is heat again: note it as sleeve welding, and the two days begin anew."
        )
        {
            After = [Sleeve],
            InJob = s_sleeved,
        },
        new(
            TrueSleeved,
            "True it again",
            "Turn the cold shaft under the dial with the sleeve on and true it again, outside the sleeve."
        )
        {
            Needs = "A turn under the dial, sleeved and cold.",
            Answers = true,
            Moment = Moment.Sleeved,
            After = [CloseVent],
            InJob = s_sleeved,
        },
        new(
            CrackTestSleeved,
            "Crack-test after truing",
            "Test every seam of the sleeve and the bar beside it, as before: pressing opens what heat began."
        )
        {
            Answers = true,
            After = [TrueSleeved],
            InJob = s_sleeved,
        },
        new(
            LateCrackTest,
            "Crack-test again after two days",
            "Test the same places again two days after the last heat. Cracks from hydrogen come late."
        )
        {
            Answers = true,
            After = [CrackTestSleeved, CrackTestButt],
        },
        new(
            Fit,
            "Fit it",
            "On stands as when it was measured. New clips, grease and boots; feel the inner clip snap, pull to check it, and turn the wheel by hand at full droop, full bump and full lock. Paint a straight line along the shaft to show a twist."
        )
        {
            Answers = true,
            After = [LateCrackTest],
            NoNumber =
                "Tightening torques are not given here: by the data of the hub and gearbox you have.",
        },
        new(
            FirstRun,
            "Check after the first run",
            "A few gentle minutes, then look at boots, clips, the painted line and the weld; turn the shaft under the dial if it is out. Then harder, and look again."
        )
        {
            Moment = Moment.AfterFirstRun,
            After = [Fit],
            Cautions =
            [
                "No running with the wheels off the ground while anyone stands in line with the shaft.",
            ],
        },
        new(
            CrackTestEvent,
            "Crack-test after the first event",
            "Note when the event ended, and test every weld again before it runs once more: the first event shows what the bench could not."
        )
        {
            Answers = true,
            After = [FirstRun],
        },
        new(
            Service,
            "Service and retire",
            "Crack-test on time; read the painted line each event. Retire the shaft at any crack, twist or doubt."
        )
        {
            After = [CrackTestEvent],
            NoNumber =
                "Intervals and life are not worked out in this version: look early, look often, and set a number of events after which it is scrapped.",
            Cautions = ["Stop at any new vibration, click or thrown grease."],
        },
    ];

    /// <summary>One of them.</summary>
    /// <exception cref="InvalidOperationException">There is none of that code.</exception>
    public static RouteStep Of(string code) =>
        All.First(s => string.Equals(s.Code, code, StringComparison.Ordinal));
}
