using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>What a stretch of a shaft is.</summary>
public enum ZoneKind
{
    /// <summary>Plain round bar.</summary>
    Plain,

    /// <summary>Diameter changes evenly from this zone's diameter to its end diameter.</summary>
    Taper,

    /// <summary>Spline, run-out included; the diameter is over the teeth.</summary>
    Spline,

    /// <summary>Groove, for a clip or a clamp; the diameter is at its floor.</summary>
    Groove,

    /// <summary>Seat of a boot.</summary>
    BootSeat,

    /// <summary>A short step of larger diameter: a shoulder or stop.</summary>
    Step,

    /// <summary>A wheel-speed ring pressed on; the diameter is that of the bar under it.</summary>
    SensorRing,

    /// <summary>A vibration damper; the diameter is that of the bar under it.</summary>
    Damper,
}

/// <summary>One stretch of a shaft, walked with a caliper from the joint's end: up to where, how thick, what is here.</summary>
public sealed record ShaftZone
{
    /// <summary>What it is.</summary>
    public ZoneKind Kind { get; init; }

    /// <summary>Where it ends, from the shaft's joint end. It begins where the zone before it ends.</summary>
    public Measured<Distance>? Until { get; init; }

    /// <summary>Diameter (of a taper: at its beginning).</summary>
    public Measured<Distance>? Diameter { get; init; }

    /// <summary>Diameter at the end of a taper.</summary>
    public Measured<Distance>? EndDiameter { get; init; }

    /// <summary>Spline: diameter at the root of the teeth.</summary>
    public Measured<Distance>? RootDiameter { get; init; }

    /// <summary>Radius of the fillet where the diameter changes at the beginning of this stretch.</summary>
    public Measured<Distance>? Fillet { get; init; }

    /// <summary>Spline: number of teeth; 0 when not counted.</summary>
    public int Teeth { get; init; }

    /// <summary>Spline: module; 25.4 mm ÷ diametral pitch.</summary>
    public Measured<Distance>? Module { get; init; }

    /// <summary>Spline: pressure angle.</summary>
    public Measured<Angle>? PressureAngle { get; init; }

    /// <summary>Spline: how much of its length is run-out, where the teeth rise to nothing.</summary>
    public Measured<Distance>? RunOut { get; init; }
}

/// <summary>A drilled or forged hollow, from the shaft's joint end.</summary>
public sealed record Bore
{
    /// <summary>Where it begins.</summary>
    public Measured<Distance>? From { get; init; }

    /// <summary>Where it ends.</summary>
    public Measured<Distance>? To { get; init; }

    /// <summary>Its diameter.</summary>
    public Measured<Distance>? Diameter { get; init; }
}

/// <summary>What a file does on the bar where it is to be cut.</summary>
public enum FileTest
{
    /// <summary>Not tried.</summary>
    Untried,

    /// <summary>It bites: the surface there is soft.</summary>
    Bites,

    /// <summary>It skates: the surface there is hard.</summary>
    Skates,
}

/// <summary>A hardened stretch, from the shaft's joint end.</summary>
public sealed record HardenedZone
{
    /// <summary>Where it begins.</summary>
    public Measured<Distance>? From { get; init; }

    /// <summary>Where it ends.</summary>
    public Measured<Distance>? To { get; init; }

    /// <summary>Depth of the case.</summary>
    public Measured<Distance>? CaseDepth { get; init; }
}

/// <summary>What is known of a shaft's steel.</summary>
public enum SteelClass
{
    /// <summary>Nothing but that it was a driveshaft.</summary>
    Unknown,

    /// <summary>Medium-carbon steel (0.35–0.55 % C), not hardened through; most induction-hardened shafts.</summary>
    MediumCarbon,

    /// <summary>Quenched and tempered low-alloy steel of the 42CrMo4 / 4140 family.</summary>
    QuenchedTemperedAlloy,
}

/// <summary>One donor shaft, walked from its joint end.</summary>
public sealed record DonorShaft
{
    /// <summary>What the fabricator calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>Its stretches in order from the joint end.</summary>
    public IReadOnlyList<ShaftZone> Zones { get; init; } = [];

    /// <summary>Its hardened stretches.</summary>
    public IReadOnlyList<HardenedZone> Hardened { get; init; } = [];

    /// <summary>What is known of its steel.</summary>
    public SteelClass Steel { get; init; }

    /// <summary>Its hollows.</summary>
    public IReadOnlyList<Bore> Bores { get; init; } = [];

    /// <summary>What a file does on its bar.</summary>
    public FileTest FileTest { get; init; }

    /// <summary>Hardness of its core, if measured on a cut face.</summary>
    public Measured<Hardness>? CoreHardness { get; init; }

    /// <summary>Hardness of its surface, if measured.</summary>
    public Measured<Hardness>? SurfaceHardness { get; init; }

    /// <summary>Collects what is out of range or out of order.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        var last = 0.0;
        for (var i = 0; i < Zones.Count; i++)
        {
            var at = $"{path}.zones[{i}]";
            var zone = Zones[i];
            check.Range(at, DonorFields.Until, zone.Until);
            check.Range(at, DonorFields.Diameter, zone.Diameter);
            check.Range(at, DonorFields.EndDiameter, zone.EndDiameter);
            check.Range(at, DonorFields.RootDiameter, zone.RootDiameter);
            check.Range(at, DonorFields.Fillet, zone.Fillet);
            check.Range(at, DonorFields.Module, zone.Module);
            check.Range(at, DonorFields.PressureAngle, zone.PressureAngle);
            check.Range(at, DonorFields.RunOut, zone.RunOut);
            if (zone.Until is not { } until)
                continue;
            check.That(
                until.Value > last,
                at + ".until",
                until.Typed,
                "does not lie beyond the zone before it",
                Distance
                    .Mm.FromInternal(last)
                    .ToString(
                        "more than 0.## mm",
                        System.Globalization.CultureInfo.InvariantCulture
                    )
            );
            last = Math.Max(last, until.Value);
        }
        for (var i = 0; i < Hardened.Count; i++)
        {
            var at = $"{path}.hardened[{i}]";
            check.Range(at, DonorFields.From, Hardened[i].From);
            check.Range(at, DonorFields.To, Hardened[i].To);
            check.Range(at, DonorFields.CaseDepth, Hardened[i].CaseDepth);
            if (Hardened[i] is { From: { } from, To: { } to })
                check.That(
                    to.Value > from.Value,
                    at + ".to",
                    to.Typed,
                    "does not lie beyond \"from\"",
                    "more than " + from.Typed
                );
        }
        for (var i = 0; i < Bores.Count; i++)
        {
            var at = $"{path}.bores[{i}]";
            check.Range(at, DonorFields.BoreFrom, Bores[i].From);
            check.Range(at, DonorFields.BoreTo, Bores[i].To);
            check.Range(at, DonorFields.BoreDiameter, Bores[i].Diameter);
            if (Bores[i] is { From: { } from, To: { } to })
                check.That(
                    to.Value > from.Value,
                    at + ".to",
                    to.Typed,
                    "does not lie beyond \"from\"",
                    "more than " + from.Typed
                );
        }
        check.Range(path, DonorFields.CoreHardness, CoreHardness);
        check.Range(path, DonorFields.SurfaceHardness, SurfaceHardness);
    }
}

/// <summary>The two shafts the new one is made from.</summary>
public sealed record DonorsInput
{
    /// <summary>Gives the inner (power unit) end.</summary>
    public DonorShaft? InnerEnd { get; init; }

    /// <summary>Gives the outer (wheel) end.</summary>
    public DonorShaft? OuterEnd { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        InnerEnd?.Check(check, path + ".innerEnd");
        OuterEnd?.Check(check, path + ".outerEnd");
    }
}

/// <summary>The questions of <see cref="DonorShaft"/>.</summary>
public static class DonorFields
{
    private const double Degree = Math.PI / 180;

    /// <summary>End of a zone, mm.</summary>
    public static Field<Distance> Until { get; } =
        new("until", "from the joint end to where this ends", 0.5, 2000, 0.5, "steel rule");

    /// <summary>Diameter, mm.</summary>
    public static Field<Distance> Diameter { get; } =
        new("diameter", "diameter", 8, 120, 0.05, "caliper");

    /// <summary>Diameter at the end of a taper, mm.</summary>
    public static Field<Distance> EndDiameter { get; } =
        new("endDiameter", "diameter where the taper ends", 8, 120, 0.05, "caliper");

    /// <summary>Root diameter of a spline, mm.</summary>
    public static Field<Distance> RootDiameter { get; } =
        new("rootDiameter", "diameter at the root of the spline", 8, 120, 0.1, "caliper");

    /// <summary>Fillet radius, mm.</summary>
    public static Field<Distance> Fillet { get; } =
        new("fillet", "radius of the fillet at the step", 0, 60, 0.5, "radius gauge");

    /// <summary>Module of a spline, mm.</summary>
    public static Field<Distance> Module { get; } =
        new("module", "module of the spline (25.4 mm ÷ diametral pitch)", 0.2, 5);

    /// <summary>Pressure angle of a spline, rad.</summary>
    public static Field<Angle> PressureAngle { get; } =
        new("pressureAngle", "pressure angle of the spline", 14 * Degree, 50 * Degree);

    /// <summary>Run-out of a spline, mm.</summary>
    public static Field<Distance> RunOut { get; } =
        new("runOut", "length of the spline's run-out", 0, 60, 0.5, "steel rule");

    /// <summary>Beginning of a bore, mm.</summary>
    public static Field<Distance> BoreFrom { get; } =
        new("from", "hollow from", 0, 2000, 1, "steel rule");

    /// <summary>End of a bore, mm.</summary>
    public static Field<Distance> BoreTo { get; } = new("to", "hollow to", 0, 2000, 1, "wire");

    /// <summary>Diameter of a bore, mm.</summary>
    public static Field<Distance> BoreDiameter { get; } =
        new("diameter", "diameter of the hollow", 1, 110, 0.1, "caliper");

    /// <summary>Beginning of a hardened zone, mm.</summary>
    public static Field<Distance> From { get; } =
        new("from", "hardened from", 0, 2000, 2, "file test");

    /// <summary>End of a hardened zone, mm.</summary>
    public static Field<Distance> To { get; } = new("to", "hardened to", 0, 2000, 2, "file test");

    /// <summary>Case depth, mm.</summary>
    public static Field<Distance> CaseDepth { get; } =
        new("caseDepth", "depth of the hard case", 0.1, 20, 0.5, "etched cut face");

    /// <summary>Core hardness.</summary>
    public static Field<Hardness> CoreHardness { get; } =
        new("coreHardness", "hardness of the core", 0, 65, 3, "rebound tester");

    /// <summary>Surface hardness.</summary>
    public static Field<Hardness> SurfaceHardness { get; } =
        new("surfaceHardness", "hardness of the surface", 0, 68, 3, "rebound tester");
}
