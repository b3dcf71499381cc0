using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What the dial says of the tacks.</summary>
public enum TackCall
{
    /// <summary>Too little was read.</summary>
    NotKnown,

    /// <summary>Go on.</summary>
    Weld,

    /// <summary>Too near to call: read again.</summary>
    ReadAgain,

    /// <summary>Break the tacks and set up again.</summary>
    Break,
}

/// <summary>Where the two axes stand to each other at the joint.</summary>
/// <param name="Offset">Distance of the two axes at the joint, mm: what can never be pressed out; null when not known.</param>
/// <param name="OffsetUncertainty">Expanded uncertainty of it, k = 2, mm.</param>
/// <param name="OffsetAt">Towards which angle the outer piece is off, rad; null when there is none to speak of.</param>
/// <param name="Tilt">Angle between the two axes, rad: what can be pressed out later; null when a piece was read at one place only.</param>
/// <param name="TiltUncertainty">Expanded uncertainty of it, rad.</param>
/// <param name="OffsetAllowed">Largest offset that can still end inside the usual run-out, mm.</param>
/// <param name="Call">What to do.</param>
public sealed record TackStand(
    double? Offset,
    double OffsetUncertainty,
    double? OffsetAt,
    double? Tilt,
    double TiltUncertainty,
    double OffsetAllowed,
    TackCall Call
)
{
    /// <summary>What to know of it.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>Tells a parallel offset of the two pieces from a tilt between them.</summary>
/// <remarks>A round section whose axis is e off the turning line shows a run-out of 2e, highest towards e. So each reading gives
/// e as a vector; on each piece a straight line through two or more of them gives its axis. At the joint their difference is the
/// offset, and the difference of their slopes the tilt. With one place on a piece its slope is not known: the offset is then
/// what stands at the two places, each carried straight to the joint, and its uncertainty says nothing of a slope.
/// Own derivation. An offset of δ stays a run-out of δ on each side at best, however the shaft is pressed: half of it to each.</remarks>
public static class TackSolver
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "own derivation: axes of the two pieces as vectors";

    /// <summary>Run-out usually accepted after the butt, mm. Common practice, no source.</summary>
    public const double UsualRunOut = 0.15;

    /// <summary>Tilt above which breaking the tacks costs less than the press, rad: what makes ten times the usual run-out in the
    /// middle of 600 mm between supports. Common practice, no source.</summary>
    public const double MuchTilt = 0.005;

    /// <summary>Judges the tacks; null when none were read.</summary>
    /// <param name="tacks">What the dial showed.</param>
    public static TackStand? Solve(IReadOnlyList<TackNote> tacks)
    {
        ArgumentNullException.ThrowIfNull(tacks);
        if (tacks.Count == 0)
            return null;
        var findings = new List<Finding>();
        void Add(Severity severity, string code, Sentence text, Sentence action, string source) =>
            findings.Add(new(severity, Stage.Weld, code, text, action, source));
        var inner = Line.Of(tacks, ShaftEnd.Inner);
        var outer = Line.Of(tacks, ShaftEnd.Outer);
        if (inner is null || outer is null)
        {
            Add(
                Severity.Note,
                "tacks-one-side",
                $"The dial was read on one side of the joint only.",
                $"Read close to the joint on the other piece too: run-out, and where it stands highest.",
                Geometry
            );
            return new(null, 0, null, null, 0, UsualRunOut, TackCall.NotKnown)
            {
                Findings = findings,
            };
        }
        var (x, y) = (outer.X - inner.X, outer.Y - inner.Y);
        var offset = double.Hypot(x, y);
        var u = 2 * Math.Sqrt(inner.Square + outer.Square);
        double? tilt =
            inner.HasSlope && outer.HasSlope
                // Away from the joint both distances grow outwards, so the slopes point opposite ways.
                ? double.Hypot(outer.SlopeX + inner.SlopeX, outer.SlopeY + inner.SlopeY)
                : null;
        var tiltU = tilt is null ? 0 : 2 * Math.Sqrt(inner.SlopeSquare + outer.SlopeSquare);
        var call =
            offset - u > UsualRunOut ? TackCall.Break
            : tilt - tiltU > MuchTilt ? TackCall.Break
            : offset + u <= UsualRunOut && (tilt ?? 0) <= MuchTilt ? TackCall.Weld
            : TackCall.ReadAgain;
        Sentence leaning = tilt is { } t
            ? (Sentence)$" They lean {Say.Angle(t)} to each other; that can be pressed out later."
            : $" Whether they lean to each other is not known: a piece was read at one place only.";
        switch (call)
        {
            case TackCall.Break when offset - u > UsualRunOut:
                Add(
                    Severity.Stop,
                    "tacks-offset",
                    $"At the joint the two axes stand {Say.Fine(offset)} apart, give or take {Say.Fine(u)}. That is a parallel offset: no press takes it out, and at best it stays as {Say.Fine(offset)} of run-out on each side.{leaning}",
                    $"Break the tacks, grind them off, and set up again. At most {Say.Fine(UsualRunOut)} can still end inside the usual run-out.",
                    Geometry + "; limit " + Practice
                );
                break;
            case TackCall.Break:
                Add(
                    Severity.Caution,
                    "tacks-tilt",
                    $"The two pieces lean {Say.Angle(tilt!.Value)} to each other, with {Say.Fine(offset)} of offset at the joint.",
                    $"It could be pressed out, at the cost of a hard bend beside the weld. Breaking the tacks now is cheaper.",
                    Geometry + "; limit " + Practice
                );
                break;
            case TackCall.Weld:
                Add(
                    Severity.Note,
                    "tacks-fine",
                    $"At the joint the two axes stand {Say.Fine(offset)} apart, give or take {Say.Fine(u)}.{leaning}",
                    $"Weld.",
                    Geometry + "; limit " + Practice
                );
                break;
            default:
                Add(
                    Severity.Note,
                    "tacks-unsure",
                    $"At the joint the two axes stand {Say.Fine(offset)} apart, give or take {Say.Fine(u)}: too near to {Say.Fine(UsualRunOut)} to call.{leaning}",
                    $"Read again, at two places on each piece, with a dial that reads finer.",
                    Geometry + "; limit " + Practice
                );
                break;
        }
        return new(
            offset,
            u,
            offset > u ? Turned(Math.Atan2(y, x)) : null,
            tilt,
            tiltU,
            UsualRunOut,
            call
        )
        {
            Findings = findings,
        };
    }

    private static double Turned(double angle) => angle < 0 ? angle + Math.Tau : angle;

    /// <summary>One piece's axis: where it stands at the joint, and its slope away from it.</summary>
    private sealed record Line(
        double X,
        double Y,
        double SlopeX,
        double SlopeY,
        double Square,
        double SlopeSquare,
        bool HasSlope
    )
    {
        public static Line? Of(IReadOnlyList<TackNote> notes, ShaftEnd piece)
        {
            List<(double S, double X, double Y, double U2)> read =
            [
                .. notes
                    .Where(n => n.Piece == piece)
                    .Where(n => n is { FromJoint: not null, RunOut: not null, HighPoint: not null })
                    .Select(n => Vector(n)),
            ];
            if (read.Count == 0)
                return null;
            var u2 = read.Max(r => r.U2);
            var mean = read.Average(r => r.S);
            var spread = read.Sum(r => (r.S - mean) * (r.S - mean));
            var (mx, my) = (read.Average(r => r.X), read.Average(r => r.Y));
            // Places nearer than this to each other fix no slope, mm².
            if (spread < 50)
                return new(mx, my, 0, 0, u2 / read.Count, 0, false);
            var sx = read.Sum(r => (r.S - mean) * (r.X - mx)) / spread;
            var sy = read.Sum(r => (r.S - mean) * (r.Y - my)) / spread;
            return new(
                mx - sx * mean,
                my - sy * mean,
                sx,
                sy,
                u2 * (1.0 / read.Count + mean * mean / spread),
                u2 / spread,
                true
            );
        }
    }

    private static (double S, double X, double Y, double U2) Vector(TackNote n)
    {
        var e = n.RunOut!.Value / 2;
        var (sin, cos) = Math.SinCos(n.HighPoint!.Value);
        var along = DialNoteFields.RunOut.StandardUncertainty(n.RunOut) / 2;
        var across = e * DialNoteFields.HighPoint.StandardUncertainty(n.HighPoint);
        // Either way round it counts as off by the worse of the two.
        var u = Math.Max(along, across);
        return (n.FromJoint!.Value, e * cos, e * sin, u * u);
    }
}
