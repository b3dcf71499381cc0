using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>Turns shafts walked with a caliper into plain numbers, and says what is missing and what that costs.</summary>
public static class DonorsSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="donors">Either donor may be missing.</param>
    /// <returns>A profile for each donor of which at least one stretch has an end and a diameter; null for the others, with a
    /// Caution that says why.</returns>
    public static DonorsResult Solve(DonorsInput donors)
    {
        ArgumentNullException.ThrowIfNull(donors);
        var findings = new List<Finding>();
        return new DonorsResult
        {
            InnerEnd = Profile(donors.InnerEnd, "inner-end", findings),
            OuterEnd = Profile(donors.OuterEnd, "outer-end", findings),
            Findings = findings,
        };
    }

    private static DonorProfile? Profile(DonorShaft? shaft, string end, List<Finding> findings) =>
        Profile(
            shaft,
            new DonorFindings(
                shaft?.Name is { Length: > 0 } n ? $"{end} donor ({n})" : $"{end} donor",
                findings
            )
        );

    /// <summary>The profile of one shaft; null when nothing of it can be placed.</summary>
    internal static DonorProfile? Profile(DonorShaft? shaft, DonorFindings say)
    {
        if (shaft is null || shaft.Zones.Count == 0)
        {
            say.NotWalked();
            return null;
        }
        var stretches = CaliperWalk.Stretches(shaft.Zones, say);
        if (stretches.Count == 0)
        {
            say.NothingMeasured();
            return null;
        }
        say.Shape(stretches);
        say.Splines(shaft.Zones);
        var hardened = Hardened(shaft, stretches[^1].To, say);
        var steel = new SteelKnown(
            shaft.Steel,
            Range(DonorFields.CoreHardness, shaft.CoreHardness),
            Range(DonorFields.SurfaceHardness, shaft.SurfaceHardness)
        );
        say.Steel(steel);
        return new DonorProfile(shaft.Name, stretches, hardened, steel)
        {
            Hollows = Hollows(shaft, stretches[^1].To, say),
        };
    }

    /// <summary>Hardened stretches in order along the shaft; one without both ends cannot be placed and is left out.</summary>
    private static List<HardStretch> Hardened(DonorShaft shaft, double length, DonorFindings say)
    {
        var hardened = new List<HardStretch>();
        foreach (var zone in shaft.Hardened)
        {
            if (zone is not { From: { } from, To: { } to } || to.Value <= from.Value)
            {
                say.HardZoneUnplaced();
                continue;
            }
            if (from.Value >= length)
                continue;
            hardened.Add(new HardStretch(from.Value, Math.Min(to.Value, length), CaseDepth(zone)));
        }
        hardened.Sort((a, b) => a.From.CompareTo(b.From));
        say.Hardening(hardened, shaft.FileTest);
        return hardened;
    }

    /// <summary>Hollows in order along the shaft, each as wide as it can be. One without its end or width goes as far as it may.</summary>
    private static List<HollowStretch> Hollows(DonorShaft shaft, double length, DonorFindings say)
    {
        var hollows = new List<HollowStretch>();
        foreach (var bore in shaft.Bores)
        {
            if (bore is not { From: { } from, To: { } to, Diameter: { } d })
            {
                say.HollowUnplaced();
                continue;
            }
            if (from.Value < length && to.Value > from.Value)
                hollows.Add(
                    new HollowStretch(
                        from.Value,
                        Math.Min(to.Value, length),
                        d.Value + (d.PlusMinus ?? DonorFields.BoreDiameter.UsualPlusMinus)
                    )
                );
        }
        hollows.Sort((a, b) => a.From.CompareTo(b.From));
        return hollows;
    }

    private static Band? CaseDepth(HardenedZone zone)
    {
        if (zone.CaseDepth is not { } depth)
            return null;
        var a = depth.PlusMinus ?? DonorFields.CaseDepth.UsualPlusMinus;
        return new Band(Math.Max(0, depth.Value - a), depth.Value + a);
    }

    private static Band? Range(Field<Hardness> field, Measured<Hardness>? hardness)
    {
        if (hardness is not { } h)
            return null;
        var a = h.PlusMinus ?? field.UsualPlusMinus;
        return new Band(Math.Max(0, h.Value - a), h.Value + a);
    }
}
