using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>What state a shaft on the shelf is in.</summary>
public enum DonorCondition
{
    /// <summary>Nobody said.</summary>
    Unsaid,

    /// <summary>Nothing wrong with it was found.</summary>
    Sound,

    /// <summary>Bent: to be straightened before it is cut.</summary>
    Bent,

    /// <summary>Set aside: nothing of it is to be used.</summary>
    Scrap,
}

/// <summary>Why a stretch cannot be used.</summary>
public enum GoneWhy
{
    /// <summary>It was cut away and used.</summary>
    Used,

    /// <summary>It is damaged: pitted, nicked, burnt, cracked.</summary>
    Damaged,
}

/// <summary>A stretch that is no longer there, or no longer good, from the end the shaft was walked from.</summary>
public sealed record GoneStretch
{
    /// <summary>Cut away or damaged.</summary>
    public GoneWhy Why { get; init; }

    /// <summary>Where it begins; null from the walked end.</summary>
    public Measured<Distance>? From { get; init; }

    /// <summary>Where it ends; null to the far end.</summary>
    public Measured<Distance>? To { get; init; }

    /// <summary>What is there, or what it went into.</summary>
    public string Note { get; init; } = "";
}

/// <summary>One end of a shaft on the shelf.</summary>
public sealed record DonorEnd
{
    /// <summary>Names of the joints it was tried in and fits.</summary>
    public IReadOnlyList<string> Fits { get; init; } = [];

    /// <summary>What locates a joint on it.</summary>
    public SeatKind Seat { get; init; }

    /// <summary>From the locating feature to the shaft's end; positive away from the middle of the shaft.</summary>
    public Measured<Distance>? SeatToEnd { get; init; }
}

/// <summary>One shaft on the shelf, walked from one end to the other.</summary>
public sealed record ShelfDonor
{
    /// <summary>A stable id, unique on the shelf.</summary>
    public string Id { get; init; } = "";

    /// <summary>Where it lies.</summary>
    public string Place { get; init; } = "";

    /// <summary>What state it is in.</summary>
    public DonorCondition Condition { get; init; }

    /// <summary>Which side of its car it was on.</summary>
    public Side Side { get; init; }

    /// <summary>The torque that its own car put through it.</summary>
    public Measured<Torque>? Carried { get; init; }

    /// <summary>The shaft, with its name.</summary>
    public DonorShaft? Shaft { get; init; }

    /// <summary>The end it was walked from; null when no joint goes on it.</summary>
    public DonorEnd? WalkedEnd { get; init; }

    /// <summary>The other end; null when no joint goes on it.</summary>
    public DonorEnd? FarEnd { get; init; }

    /// <summary>What is cut away or damaged.</summary>
    public IReadOnlyList<GoneStretch> Gone { get; init; } = [];

    /// <summary>What one calls it: its name, or its id when it has none.</summary>
    public string Called => Shaft?.Name is { Length: > 0 } name ? name : Id;

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, ShelfFields.Carried, Carried);
        Shaft?.Check(check, path + ".shaft");
        check.Range(path + ".walkedEnd", ShelfFields.SeatToEnd, WalkedEnd?.SeatToEnd);
        check.Range(path + ".farEnd", ShelfFields.SeatToEnd, FarEnd?.SeatToEnd);
        for (var i = 0; i < Gone.Count; i++)
        {
            var at = $"{path}.gone[{i}]";
            check.Range(at, ShelfFields.GoneFrom, Gone[i].From);
            check.Range(at, ShelfFields.GoneTo, Gone[i].To);
            if (Gone[i] is { From: { } from, To: { } to })
                check.That(
                    to.Value > from.Value,
                    at + ".to",
                    to.Typed,
                    "does not lie beyond \"from\"",
                    "more than " + from.Typed
                );
        }
    }
}

/// <summary>The shafts on the shelf.</summary>
public sealed record ShelfInput
{
    /// <summary>In any order.</summary>
    public IReadOnlyList<ShelfDonor> Donors { get; init; } = [];

    /// <summary>Collects what is out of range, and ids that stand twice.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < Donors.Count; i++)
        {
            var at = $"{path}.donors[{i}]";
            check.That(
                ids.Add(Donors[i].Id),
                at + ".id",
                Donors[i].Id,
                "is another shaft's id",
                "an id of its own"
            );
            Donors[i].Check(check, at);
        }
    }
}

/// <summary>The questions of <see cref="ShelfDonor"/>.</summary>
public static class ShelfFields
{
    /// <summary>Torque its own car put through it, N·mm.</summary>
    public static Field<Torque> Carried { get; } =
        new("carried", "torque its own car put through it", 10_000, 20_000_000);

    /// <summary>Seat to end, mm.</summary>
    public static Field<Distance> SeatToEnd { get; } = JointFields.SeatToEnd;

    /// <summary>Beginning of what is gone, mm.</summary>
    public static Field<Distance> GoneFrom { get; } = new("from", "gone from", 0, 2000, 1);

    /// <summary>End of what is gone, mm.</summary>
    public static Field<Distance> GoneTo { get; } = new("to", "gone to", 0, 2000, 1);
}
