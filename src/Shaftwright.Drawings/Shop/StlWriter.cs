using System.Globalization;
using System.Text;
using Shaftwright.Weld;

namespace Shaftwright.Drawings.Shop;

/// <summary>A corner of a solid, mm: across, up, along the shaft.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Up.</param>
/// <param name="Z">Along the shaft.</param>
public readonly record struct SkinCorner(double X, double Y, double Z);

/// <summary>Writes the alignment jig as STL, one closed skin.</summary>
/// <remarks>Source: the format as its users know it (ASCII: facets with an outward normal, corners counter-clockwise seen from
/// outside), from memory. mm; the format itself knows no unit.</remarks>
public static class StlWriter
{
    /// <summary>The text of the file.</summary>
    /// <param name="jig">The jig.</param>
    public static string Write(AlignmentJig jig)
    {
        ArgumentNullException.ThrowIfNull(jig);
        var stl = new StringBuilder("solid alignment-jig\n");
        foreach (var (a, b, c) in Skin(jig))
        {
            var n = Normal(a, b, c);
            stl.Append($"facet normal {N(n.X)} {N(n.Y)} {N(n.Z)}\nouter loop\n");
            foreach (var v in (SkinCorner[])[a, b, c])
                stl.Append($"vertex {N(v.X)} {N(v.Y)} {N(v.Z)}\n");
            stl.Append("endloop\nendfacet\n");
        }
        return stl.Append("endsolid alignment-jig\n").ToString();
    }

    /// <summary>The triangles of the skin, each counter-clockwise seen from outside.</summary>
    /// <param name="jig">The jig.</param>
    public static IReadOnlyList<(SkinCorner A, SkinCorner B, SkinCorner C)> Skin(AlignmentJig jig)
    {
        ArgumentNullException.ThrowIfNull(jig);
        var skin = new List<(SkinCorner, SkinCorner, SkinCorner)>();
        var (w, m, b, h) = (jig.Width, jig.Width / 2, jig.Base, jig.Height);
        double[] z = [0, jig.Hold, jig.Hold + jig.Window, jig.Length];

        // A flat face of several corners from its first; seen from outside they turn counter-clockwise.
        void Face(params SkinCorner[] corners)
        {
            for (var i = 1; i + 1 < corners.Length; i++)
                skin.Add((corners[0], corners[i], corners[i + 1]));
        }
        for (var k = 0; k < 3; k++)
        {
            var (z1, z2) = (z[k], z[k + 1]);
            Face(new(0, 0, z1), new(m, 0, z1), new(m, 0, z2), new(0, 0, z2));
            Face(new(m, 0, z1), new(w, 0, z1), new(w, 0, z2), new(m, 0, z2));
            if (k == 1)
            {
                Face(new(0, 0, z1), new(0, 0, z2), new(0, b, z2), new(0, b, z1));
                Face(new(w, 0, z1), new(w, b, z1), new(w, b, z2), new(w, 0, z2));
                Face(new(0, b, z1), new(0, b, z2), new(m, b, z2), new(m, b, z1));
                Face(new(m, b, z1), new(m, b, z2), new(w, b, z2), new(w, b, z1));
                continue;
            }
            var apex = k == 0 ? jig.InnerApex : jig.OuterApex;
            var v = jig.HalfOpening(apex);
            // The top and the vee.
            Face(new(0, h, z1), new(0, h, z2), new(m - v, h, z2), new(m - v, h, z1));
            Face(new(m - v, h, z1), new(m - v, h, z2), new(m, apex, z2), new(m, apex, z1));
            Face(new(m, apex, z1), new(m, apex, z2), new(m + v, h, z2), new(m + v, h, z1));
            Face(new(m + v, h, z1), new(m + v, h, z2), new(w, h, z2), new(w, h, z1));
            // The sides have one corner more where the bridge meets them.
            if (k == 0)
            {
                Face(new(0, h, z1), new(0, 0, z1), new(0, 0, z2), new(0, b, z2), new(0, h, z2));
                Face(new(w, h, z1), new(w, h, z2), new(w, b, z2), new(w, 0, z2), new(w, 0, z1));
            }
            else
            {
                Face(new(0, h, z2), new(0, h, z1), new(0, b, z1), new(0, 0, z1), new(0, 0, z2));
                Face(new(w, h, z2), new(w, 0, z2), new(w, 0, z1), new(w, b, z1), new(w, h, z1));
            }
            // The outer end whole; the inner one above the bridge.
            SkinCorner L(double x, double y) => new(x, y, k == 0 ? z1 : z2);
            SkinCorner[] left = [L(m, apex), L(m, 0), L(0, 0), L(0, h), L(m - v, h)];
            SkinCorner[] right = [L(m, apex), L(m + v, h), L(w, h), L(w, 0), L(m, 0)];
            Face(k == 0 ? left : Turned(left));
            Face(k == 0 ? right : Turned(right));
            SkinCorner M(double x, double y) => new(x, y, k == 0 ? z2 : z1);
            SkinCorner[] left2 = [M(m, apex), M(m - v, h), M(0, h), M(0, b), M(m, b)];
            SkinCorner[] right2 = [M(m, apex), M(m, b), M(w, b), M(w, h), M(m + v, h)];
            Face(k == 0 ? left2 : Turned(left2));
            Face(k == 0 ? right2 : Turned(right2));
        }
        return skin;
    }

    private static SkinCorner[] Turned(SkinCorner[] corners) =>
        [corners[0], .. corners.Skip(1).Reverse()];

    private static SkinCorner Normal(SkinCorner a, SkinCorner b, SkinCorner c)
    {
        var (ux, uy, uz) = (b.X - a.X, b.Y - a.Y, b.Z - a.Z);
        var (vx, vy, vz) = (c.X - a.X, c.Y - a.Y, c.Z - a.Z);
        var (x, y, z) = (uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
        var length = Math.Sqrt(x * x + y * y + z * z);
        return new(x / length, y / length, z / length);
    }

    private static string N(double number) =>
        Math.Round(number, 6).ToString("0.######", CultureInfo.InvariantCulture);
}
