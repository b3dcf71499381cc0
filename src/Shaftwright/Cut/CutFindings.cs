using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>What the stage says.</summary>
internal sealed class CutFindings(JoinPlan plan, List<Finding> findings)
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "geometry of the two pieces";

    /// <summary>Difference of diameters at the weld from which the thicker end is better turned down, mm. Common practice, no source.</summary>
    private const double BigStep = 2;

    /// <summary>Change of bar diameter under one half of the sleeve that a plain bore does not follow, mm. Common practice, no source.</summary>
    private const double SleeveTaper = 0.3;

    public void DonorMissing() =>
        Add(
            Severity.Caution,
            "cut-needs-donors",
            $"Both shafts must be walked before a cut can be placed.",
            $"Walk the missing one with a caliper from its joint end.",
            Practice
        );

    public void LengthUnknown(Band? possible)
    {
        Sentence makes = possible is { } p
            ? (Sentence)
                $" These two can make any length you need that lies within {Say.Length(p.Low)} to {Say.Length(p.High)}, gaps in that range aside."
            : $" Whatever it is, these two leave no place for a sound cut.";
        Add(
            Severity.Caution,
            "overall-unknown",
            $"The overall length is not known, so no cut is placed.{makes}",
            $"Type the overall length, or give the length stage both joints' seats and ends.",
            Geometry
        );
    }

    public void TwoLengths(double asked, double found)
    {
        if (Math.Abs(asked - found) > CutFields.OverallLength.UsualPlusMinus)
            Add(
                Severity.Caution,
                "two-lengths",
                $"You ask for {Say.Length(asked)} overall; the car asks for {Say.Length(found)}. Yours is taken.",
                $"Settle which is right before you cut.",
                Geometry
            );
    }

    public void Assumed(CutInput cut, MeasuredHeat? heat)
    {
        var taken = new List<Sentence>();
        if (cut.RootGap is null)
            taken.Add($"a gap of {Say.Length(plan.Gap)}");
        if (cut.Shrinkage is null)
            taken.Add($"{Say.Length(plan.Shrinkage)} drawn in by the weld");
        if (cut.HeatBand is null && heat is null)
            taken.Add($"{Say.Length(plan.HeatBand)} of heat on each side of a weld");
        if (cut.BootSlideRoom is null)
            taken.Add($"{Say.Length(plan.SlideRoom)} for a boot to slide back");
        if (taken.Count == 0)
            return;
        Add(
            Severity.Note,
            "cut-assumed",
            $"Nobody said otherwise, so these are taken: {Join(taken)}.",
            $"Weld and etch a sample from the offcuts: it gives the shrinkage and the width of the heat. Measure the boot for its room.",
            Practice
        );
    }

    /// <summary>The heat band that the sample gave, and how it stands to the one that was typed.</summary>
    public void Measured(CutInput cut, MeasuredHeat? heat)
    {
        if (heat is not { Band: var band })
            return;
        if (cut.HeatBand is { } typed && typed.Value < band)
            Add(
                Severity.Caution,
                "cut-heat-wider",
                $"You typed {Say.Length(typed.Value)} of heat on each side of a weld; on the sample it reaches {Say.Length(band)}, and that counts.",
                $"Take out what was typed, or read the sample again.",
                "the sample"
            );
        else
            Add(
                Severity.Note,
                "cut-heat-measured",
                cut.HeatBand is { } wider
                    ? $"On the sample the heat reaches {Say.Length(band)} from the middle of the weld; you typed {Say.Length(wider.Value)}, and the wider counts."
                    : (Sentence)
                        $"On the sample the heat reaches {Say.Length(band)} from the middle of the weld. That counts here and in the strength, in place of the usual {Say.Length(CutFields.UsualHeatBand)}.",
                heat.BothSides
                    ? (Sentence)$"Weld the shaft as the sample was welded, nothing changed."
                    : $"Read the hardness on the other side of the sample too: until then no less than the usual width counts.",
                "the sample: farthest reading that differs by a tenth or more from the bar beyond it; the tenth is common practice, no source"
            );
    }

    public void TackFirst(double T) =>
        Add(
            Severity.Note,
            "tack-and-measure",
            $"Gap and shrinkage leave the overall length of {Say.Length(T)} open by {Say.Length(plan.PlusMinus)} each way. The pieces are cut longer by what the weld draws in, shorter by the gap.",
            $"Cut, tack, and measure end to end before you weld: it should read {Say.Length(T + plan.Shrinkage)}. Correct the gap, not the finished shaft.",
            Geometry
        );

    public void Step(double inner, double outer)
    {
        var step = Math.Abs(inner - outer);
        if (step > BigStep)
            Add(
                Severity.Caution,
                "big-step",
                $"The diameters at the weld differ by {Say.Length(step)}. That is a notch in the worst place.",
                $"Turn the thicker end down in a long cone over the heat band, or look for a donor that matches better.",
                Practice
            );
    }

    public void Weighed(IReadOnlyList<CutCheck> checks)
    {
        foreach (var c in checks.Where(c => c.Code == CutRules.Hardened && !c.Holds))
            Add(
                Severity.Caution,
                "hardened-softened",
                $"On the {Words(c.End)} piece the heat takes the hardness out of {Say.Length(-c.Has)} of hardened shaft. Softened strength counts there, and the strength stage takes it.",
                $"Look at the margins beside the weld and at the sleeve's end. If they are thin, cut where the bar was soft already.",
                Practice
            );
        if (checks.FirstOrDefault(c => c.Code == CutRules.SleeveClearOfWeld && !c.Holds) is { } s)
            Add(
                Severity.Caution,
                "sleeve-short",
                $"The sleeve ends {Say.Length(s.Has)} from the weld, inside the {Say.Length(s.Needs)} that the butt weld's own heat has changed. That metal is heated twice, and the sleeve covers less than what was softened.",
                $"Use a sleeve longer than {Say.Length(2 * s.Needs)}, or none.",
                Practice
            );
    }

    public void UnderSleeve(Piece piece, double c)
    {
        if (plan.SleeveHalf is null)
            return;
        double least = double.PositiveInfinity,
            most = 0;
        foreach (var s in piece.Donor.Stretches)
        {
            var from = Math.Max(s.From, c - plan.SleeveReach);
            var to = Math.Min(s.To, c);
            if (from >= to || !Piece.IsBar(s))
                continue;
            foreach (var d in new[] { s.At(from), s.At(to) })
                (least, most) = (Math.Min(least, d), Math.Max(most, d));
        }
        if (most - least > SleeveTaper)
            Add(
                Severity.Caution,
                "sleeve-on-taper",
                $"Under the sleeve the {Words(piece.End)} piece changes by {Say.Length(most - least)} in diameter, so a plain bore fits at one place only.",
                $"Bore the sleeve to follow the bar, or turn the bar parallel under it; then enter what you turned.",
                Practice
            );
    }

    public void Boots(Piece inner, Piece outer)
    {
        foreach (var piece in new[] { inner, outer })
        {
            if (!piece.AllFeatures.Any(f => f.Kind == FeatureKind.BootSeat))
                Add(
                    Severity.Note,
                    "boot-seat-unknown",
                    $"No boot seat is marked on the {Words(piece.End)} donor, so room for that boot is not checked.",
                    $"Mark where the small end of the boot sits.",
                    Practice
                );
        }
        if (
            plan.SleeveHalf is not null
            && !(plan.BootPasses(ShaftEnd.Inner) && plan.BootPasses(ShaftEnd.Outer))
        )
            Add(
                Severity.Caution,
                "boot-order",
                plan.SleeveOutside is { } outside
                    ? (Sentence)
                        $"A boot must go on from its own end: it cannot pass the sleeve of {Say.Length(outside)}, or its bore is not known."
                    : $"A boot must go on from its own end: nothing says that it can pass the sleeve.",
                $"Both boots and their clamps go on before the joints do. Check that each passes over the splines of its own end.",
                Practice
            );
    }

    public void BreaksRule(
        List<CutCheck> broken,
        double x,
        double? nearest,
        CutResult judged,
        Piece inner,
        Piece outer
    )
    {
        Sentence what;
        if (judged.OuterAt is { } y && y > outer.Length)
            what =
                $"With the inner-end donor cut at {Say.Length(x)}, the outer-end piece would have to be {Say.Length(y)} long, and only {Say.Length(outer.Length)} of it was measured.";
        else if (x > inner.Length)
            what =
                $"The cut at {Say.Length(x)} lies beyond the {Say.Length(inner.Length)} measured of the inner-end donor.";
        else if (judged.OuterAt is { } z && z <= 0)
            what =
                $"With the inner-end donor cut at {Say.Length(x)}, nothing is left for the outer-end piece: the shaft is {Say.Length(judged.Overall ?? 0)} overall.";
        else
            what =
                $"The cut at {Say.Length(x)} breaks {Count(broken.Count)}: {Join(broken.ConvertAll(Broken), "; ")}.";
        Sentence todo = nearest is { } n
            ? (Sentence)
                $"Move the cut {Say.Length(Math.Abs(n - x))} towards the {(n > x ? "wheel" : "power unit")}: cut the inner-end donor at {Say.Length(n)}."
            : $"No other place will do with this length, sleeve and heat band. {Relax(judged.OverallPossible)}";
        Add(Severity.Stop, "cut-breaks-rule", what, todo, Practice);
    }

    public void NoPlace(
        Piece inner,
        Piece outer,
        double T,
        IReadOnlyList<(double From, double To)> possible
    )
    {
        var together = plan.PiecesTogether(T);
        var most = inner.Length + outer.Length;
        Band? band =
            possible.Count == 0
                ? null
                : new Band(possible[0].From + plan.GapLeft, possible.Max(p => p.To) + plan.GapLeft);
        Sentence what;
        Sentence? todo = null;
        if (together > most)
        {
            what =
                $"The two donors are too short by {Say.Length(together - most)}: all that was measured of them makes {Say.Length(most + plan.GapLeft)}, and {Say.Length(T)} is wanted.";
            todo = $"Measure the rest of them if there is more, or find a longer donor.";
        }
        else if (Placing.LeastBad(inner, outer, together) is { } near)
        {
            var worst = CutRules
                .Checks(inner, plan, near.InnerAt)
                .Concat(CutRules.Checks(outer, plan, near.OuterAt))
                .Where(c => c.Heavy)
                .MinBy(c => c.Has - c.Needs)!;
            what =
                $"No cut makes {Say.Length(T)} with every rule kept. The nearest to it is {Say.Length(near.InnerAt)} on the inner-end donor, and there {Say.Length(worst.Needs - worst.Has)} is lacking: {Broken(worst)}.";
        }
        else
            what =
                $"At {Say.Length(T)} overall no cut lies in plain bar on both donors: where one is plain, the other is not.";
        todo ??= (Sentence)$"{Relax(band)}{Nearest(possible, together)}";
        Add(Severity.Stop, "no-place-to-cut", what, todo, Practice);
    }

    private Sentence Relax(Band? possible)
    {
        Sentence sleeve = plan.SleeveHalf is null ? $"" : (Sentence)$"shorten the sleeve, ";
        return possible is { } p
            ? (Sentence)
                $"These two can make lengths within {Say.Length(p.Low)} to {Say.Length(p.High)}. Otherwise {sleeve}measure the heat band on a sample, measure the boot's real room, or find another donor."
            : $"These two leave no sound cut at any length. To change that, {sleeve}measure the heat band on a sample, measure the boot's real room, or find another donor.";
    }

    /// <summary>The nearest lengths on both sides, where the wanted one falls in a hole between two that can be made.</summary>
    private Sentence Nearest(IReadOnlyList<(double From, double To)> possible, double together)
    {
        var below = possible.Where(p => p.To < together).ToList();
        var above = possible.Where(p => p.From > together).ToList();
        if (below.Count == 0 || above.Count == 0)
            return $"";
        return $" Nearest that work: {Say.Length(below.Max(p => p.To) + plan.GapLeft)} and {Say.Length(above.Min(p => p.From) + plan.GapLeft)}.";
    }

    private static Sentence Broken(CutCheck c) =>
        c.Code == CutRules.InBar
            ? (Sentence)
                $"on the {Words(c.End)} piece it is {Say.Length(-c.Has)} away from plain bar"
            : $"on the {Words(c.End)} piece, {c.Rule}: {Say.Length(c.Needs)} needed, {Say.Length(c.Has)} there";

    private static string Count(int n) => n == 1 ? "a rule" : "these rules";

    private static string Words(ShaftEnd end) => end == ShaftEnd.Inner ? "inner-end" : "outer-end";

    private static Sentence Join(List<Sentence> parts, string by = ", ")
    {
        var all = Sentence.Plain("");
        for (var i = 0; i < parts.Count; i++)
        {
            if (i > 0)
                all.AppendLiteral(by);
            all.AppendFormatted(parts[i]);
        }
        return all;
    }

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new(severity, Stage.Cut, code, text, action, source));
}
