using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>What the search says beside its list.</summary>
internal sealed class ShelfFindings(List<Finding> findings)
{
    private const string Geometry = "geometry of the two pieces";
    private const string Practice = "common practice, no source";

    public void LengthUnknown() =>
        Add(
            Severity.Caution,
            "shelf-needs-length",
            $"Nothing says how long the shaft is to be, so the shelf is not searched.",
            $"Type the overall length, or measure the car: the length and where each joint sits give it.",
            Geometry
        );

    public void Joints(ShelfRequest request)
    {
        var inner = EndFit.Known(request.Joints?.Inner);
        var outer = EndFit.Known(request.Joints?.Outer);
        if (inner && outer)
            return;
        var which =
            inner ? "outer joint"
            : outer ? "inner joint"
            : "joints";
        Add(
            Severity.Caution,
            "shelf-joint-unknown",
            $"Nothing is written down of the {which} that an end could be told to fit by, so every end is offered.",
            $"Name the joint as on the shelf, or count its teeth. Push the joint on before you cut.",
            Practice
        );
    }

    public void NoPair(ShelfStock stock, double span, JoinPlan plan)
    {
        if (stock.Inner.Count == 0 || stock.Outer.Count == 0)
        {
            var which =
                stock.Inner.Count + stock.Outer.Count == 0 ? "either joint"
                : stock.Inner.Count == 0 ? "the inner joint"
                : "the outer joint";
            Add(
                Severity.Stop,
                "shelf-no-end",
                $"No end on the shelf can be used for {which}.",
                $"Look at the reason beside each shaft; the nearest to usable come first. Otherwise find another donor.",
                Practice
            );
            return;
        }
        var together = span - plan.GapLeft;
        var most = stock.Inner.Max(p => p.High) + stock.Outer.Max(p => p.High);
        var least = stock.Inner.Min(p => p.Low) + stock.Outer.Min(p => p.Low);
        Sentence what =
            most < together
                ? (Sentence)
                    $"The longest two pieces on the shelf fall short by {Say.Length(together - most)} with every rule kept."
            : least > together
                ? (Sentence)
                    $"The shortest two pieces on the shelf are {Say.Length(least - together)} too long together with every rule kept."
            : $"No two pieces on the shelf make the length with every rule kept.";
        Add(
            Severity.Stop,
            "shelf-no-pair",
            what,
            $"Shorten the sleeve or leave it out, measure the heat band on a sample, or find another donor. A tube between two stub ends reaches any length.",
            Geometry
        );
    }

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new(severity, Stage.Cut, code, text, action, source));
}
