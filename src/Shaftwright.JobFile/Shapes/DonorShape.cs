using Shaftwright.Donors;

namespace Shaftwright.JobFile.Shapes;

/// <summary>A donor shaft of a job file, member by member.</summary>
internal static class DonorShape
{
    private static readonly ObjectShape<ShaftZone> s_zone = new ObjectShape<ShaftZone>(
        "shaftZone",
        "one stretch of a shaft, from where the one before it ends",
        () => new()
    )
        .Choice("kind", "what it is", z => z.Kind, (z, v) => z with { Kind = v })
        .Measure(DonorFields.Until, z => z.Until, (z, v) => z with { Until = v })
        .Measure(DonorFields.Diameter, z => z.Diameter, (z, v) => z with { Diameter = v })
        .Measure(DonorFields.EndDiameter, z => z.EndDiameter, (z, v) => z with { EndDiameter = v })
        .Measure(
            DonorFields.RootDiameter,
            z => z.RootDiameter,
            (z, v) => z with { RootDiameter = v }
        )
        .Measure(DonorFields.Fillet, z => z.Fillet, (z, v) => z with { Fillet = v })
        .Value(
            "teeth",
            "number of teeth of a spline",
            new CountShape(1, 120),
            z => z.Teeth,
            (z, v) => z with { Teeth = v },
            v => v > 0
        )
        .Measure(DonorFields.Module, z => z.Module, (z, v) => z with { Module = v })
        .Measure(
            DonorFields.PressureAngle,
            z => z.PressureAngle,
            (z, v) => z with { PressureAngle = v }
        )
        .Measure(DonorFields.RunOut, z => z.RunOut, (z, v) => z with { RunOut = v });

    private static readonly ObjectShape<Bore> s_bore = new ObjectShape<Bore>(
        "bore",
        "a hollow, from the shaft's joint end",
        () => new()
    )
        .Measure(DonorFields.BoreFrom, b => b.From, (b, v) => b with { From = v })
        .Measure(DonorFields.BoreTo, b => b.To, (b, v) => b with { To = v })
        .Measure(DonorFields.BoreDiameter, b => b.Diameter, (b, v) => b with { Diameter = v });

    private static readonly ObjectShape<HardenedZone> s_hardened = new ObjectShape<HardenedZone>(
        "hardenedZone",
        "a hardened stretch, from the shaft's joint end",
        () => new()
    )
        .Measure(DonorFields.From, h => h.From, (h, v) => h with { From = v })
        .Measure(DonorFields.To, h => h.To, (h, v) => h with { To = v })
        .Measure(DonorFields.CaseDepth, h => h.CaseDepth, (h, v) => h with { CaseDepth = v });

    /// <summary>One donor shaft, on the bench or on the shelf.</summary>
    public static ObjectShape<DonorShaft> Shaft { get; } =
        new ObjectShape<DonorShaft>(
            "donorShaft",
            "one donor shaft, walked from its joint end",
            () => new()
        )
            .Value(
                "name",
                "what the fabricator calls it",
                new TextShape(120),
                d => d.Name,
                (d, v) => d with { Name = v },
                v => v.Length > 0
            )
            .List(
                "zones",
                "its stretches in order from the joint end",
                s_zone,
                200,
                d => d.Zones,
                (d, v) => d with { Zones = v }
            )
            .List(
                "hardened",
                "its hardened stretches",
                s_hardened,
                50,
                d => d.Hardened,
                (d, v) => d with { Hardened = v }
            )
            .List("bores", "its hollows", s_bore, 20, d => d.Bores, (d, v) => d with { Bores = v })
            .Choice(
                "fileTest",
                "what a file does on its bar",
                d => d.FileTest,
                (d, v) => d with { FileTest = v },
                FileTest.Untried
            )
            .Choice(
                "steel",
                "what is known of its steel",
                d => d.Steel,
                (d, v) => d with { Steel = v },
                SteelClass.Unknown
            )
            .Measure(
                DonorFields.CoreHardness,
                d => d.CoreHardness,
                (d, v) => d with { CoreHardness = v }
            )
            .Measure(
                DonorFields.SurfaceHardness,
                d => d.SurfaceHardness,
                (d, v) => d with { SurfaceHardness = v }
            );
}
