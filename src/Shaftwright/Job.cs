using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Fit;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using Shaftwright.Weld;

namespace Shaftwright;

/// <summary>Which side of the car a shaft is for. Left and right are different parts.</summary>
public enum Side
{
    /// <summary>Don't know, or does not matter.</summary>
    Unsaid,

    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,
}

/// <summary>Everything measured and decided for one shaft, as it was typed. Each part may be missing: "don't know yet" is legal.</summary>
public sealed record Job
{
    /// <summary>What the fabricator calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>The car and what it is used for, in a line.</summary>
    public string About { get; init; } = "";

    /// <summary>Which side of the car.</summary>
    public Side Side { get; init; }

    /// <summary>The car it is made for.</summary>
    public CarInput? Car { get; init; }

    /// <summary>The cars the donors came from.</summary>
    public DonorCars? DonorCars { get; init; }

    /// <summary>Readings at the corner.</summary>
    public CornerInput? Corner { get; init; }

    /// <summary>The joints.</summary>
    public JointsInput? Joints { get; init; }

    /// <summary>What is asked of the length.</summary>
    public LengthInput? Length { get; init; }

    /// <summary>The donors.</summary>
    public DonorsInput? Donors { get; init; }

    /// <summary>The shafts on the shelf that the donors may be chosen from.</summary>
    public ShelfInput? Shelf { get; init; }

    /// <summary>How they are cut and joined.</summary>
    public CutInput? Cut { get; init; }

    /// <summary>What is known of the weld's strength.</summary>
    public StrengthInput? Strength { get; init; }

    /// <summary>How the ends are set up.</summary>
    public WeldInput? Weld { get; init; }

    /// <summary>Turns under the dial.</summary>
    public TruingInput? Truing { get; init; }

    /// <summary>Press, steel and weld as far as known, and every stroke.</summary>
    public PressInput? Press { get; init; }

    /// <summary>Crack tests, and the work they follow.</summary>
    public CrackTestInput? CrackTest { get; init; }

    /// <summary>How it goes onto the car.</summary>
    public FitInput? Fit { get; init; }

    /// <summary>The job with a choice from its shelf taken: both donors, the cut, and what stands beyond the joints' seats. The
    /// cars of other donors are let go, and what a sample of other offcuts said.</summary>
    /// <param name="choice">The choice.</param>
    /// <exception cref="ArgumentException">The choice is not from this shelf.</exception>
    public Job Taking(ShelfChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        (DonorShaft Shaft, DonorEnd? End) Of(DonorPick pick) =>
            Shelf?.Donors.FirstOrDefault(d => d.Id == pick.Id) is { } donor
            && ShelfProfiles.ShaftFrom(donor, pick.Far) is { } shaft
                ? (shaft, pick.Far ? donor.FarEnd : donor.WalkedEnd)
                : throw new ArgumentException(
                    $"\"{pick.Id}\" is not on this shelf.",
                    nameof(choice)
                );
        var (inner, outer) = (Of(choice.Inner), Of(choice.Outer));
        JointInput? Seated(JointInput? joint, DonorEnd? end) =>
            end?.SeatToEnd is { } beyond && joint is not null
                ? joint with
                {
                    SeatToEnd = beyond,
                }
                : joint;
        return this with
        {
            Donors = new() { InnerEnd = inner.Shaft, OuterEnd = outer.Shaft },
            DonorCars = null,
            Strength = Strength is { } weld
                ? weld with
                {
                    Sample = null,
                    FusionFromSample = false,
                }
                : null,
            Joints = Joints is { } joints
                ? joints with
                {
                    Inner = Seated(joints.Inner, inner.End),
                    Outer = Seated(joints.Outer, outer.End),
                }
                : null,
            Cut = (Cut ?? new()) with
            {
                InnerCutAt = Measured<Distance>.Of(Math.Round(choice.InnerAt, 9), Distance.Mm),
            },
        };
    }

    /// <summary>Everything in it that is out of range, each with its path.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var check = new InputCheck();
        Car?.Check(check, "car");
        DonorCars?.Check(check, "donorCars");
        Corner?.Check(check, "corner");
        Joints?.Check(check, "joints");
        Length?.Check(check, "length");
        Donors?.Check(check, "donors");
        Shelf?.Check(check, "shelf");
        Cut?.Check(check, "cut");
        Strength?.Check(check, "strength");
        Weld?.Check(check, "weld");
        Truing?.Check(check, "truing");
        Press?.Check(check, "press");
        CrackTest?.Check(check, "crackTest");
        Fit?.Check(check, "fit");
        return check.Refusals;
    }
}
