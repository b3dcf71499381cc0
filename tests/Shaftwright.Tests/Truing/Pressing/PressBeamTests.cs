using CsCheck;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Tests.Truing.Pressing;

public sealed class PressBeamTests
{
    public static TheoryData<string> Rows() => PublishedFile.Ids("press-stroke");

    public static TheoryData<string> Rectangles() => PublishedFile.Ids("press-rectangle");

    public static TheoryData<string> Strokes() => PublishedFile.Ids("press-cases");

    public static TheoryData<string> Seen() => PublishedFile.Ids("dial-supports");

    [Theory]
    [MemberData(nameof(Rows))]
    public void At_RoundBarAtMidSpan_GivesThePublishedStrokeAndSet(string id)
    {
        var c = PublishedFile.Load("press-stroke")[id];
        var (beam, load, depth) = Plain(new RoundBar(25, 500), 300);
        var at = beam.At(load * c.Number("m"));
        c.Agrees("stroke", at.Depth / depth);
        c.Agrees("set", at.Set / depth);
    }

    [Theory]
    [MemberData(nameof(Rectangles))]
    public void At_RectangularBar_GivesTheClosedForm(string id)
    {
        var c = PublishedFile.Load("press-rectangle")[id];
        var (beam, load, depth) = Plain(new Rectangle(20, 25, 500), 300);
        var m = c.Number("m");
        var stroke = beam.At(load * m).Depth / depth;
        c.Agrees("stroke", stroke);
        Assert.Equal((5 - (3 + m) * Math.Sqrt(3 - 2 * m)) / (m * m), stroke, 2e-6);
    }

    [Theory]
    [MemberData(nameof(Strokes))]
    public void LoadForSet_PublishedCase_GivesLoadAndStroke(string id)
    {
        var c = PublishedFile.Load("press-cases")[id];
        var (d, span) = (c.Input<Distance>("D").Value, c.Input<Distance>("span").Value);
        var (beam, load, depth) = Plain(
            new RoundBar(d, c.Input<Stress>("yield").Value, c.Number("E")),
            span
        );
        c.Agrees("yieldDepth", depth);
        c.Agrees("yieldLoad", load);
        var found = beam.LoadForSet(c.Input<Distance>("set").Value);
        c.Agrees("m", found / load);
        c.Agrees("load", found);
        c.Agrees("stroke", beam.At(found).Depth);
    }

    [Theory]
    [MemberData(nameof(Seen))]
    public void UnitMoment_OfAKink_IsWhatTheDialSeesOfIt(string id)
    {
        var c = PublishedFile.Load("dial-supports")[id];
        c.Agrees(
            "seen",
            c.Number("kink")
                * PressBeam.UnitMoment(
                    c.Number("bend"),
                    c.Number("first"),
                    c.Number("second"),
                    c.Number("dial")
                )
        );
    }

    [Fact]
    public void At_DialUnderTheRamOnTheBlocks_SeesTheSetItself() =>
        Check.Sample(
            Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[1.02, 1.6]),
            t =>
            {
                var ram = 100 + 300 * t.Item1;
                BendStretch[] bar = [new(0, 600, new RoundBar(26, 450))];
                var beam = new PressBeam(bar, 100, 400, ram, new DialPlace(ram, 100, 400));
                var at = beam.At(beam.YieldLoad * t.Item2);
                return at.Set > 0 && Math.Abs(at.Seen - at.Set) < 1e-12;
            }
        );

    [Fact]
    public void At_TurnedEndForEnd_DoesTheSame() =>
        Check.Sample(
            Gen.Select(
                Gen.Double[0.25, 0.75],
                Gen.Double[18, 34],
                Gen.Double[18, 34],
                Gen.Double[0.5, 1.5]
            ),
            t =>
            {
                var (share, left, right, m) = t;
                var ram = 150 + 300 * share;
                BendStretch[] ahead =
                [
                    new(0, 300, new RoundBar(left, 420)),
                    new(300, 600, new RoundBar(right, 520)),
                ];
                BendStretch[] turned =
                [
                    new(0, 300, new RoundBar(right, 520)),
                    new(300, 600, new RoundBar(left, 420)),
                ];
                var a = new PressBeam(ahead, 150, 450, ram, new DialPlace(250, 20, 580));
                var b = new PressBeam(turned, 150, 450, 600 - ram, new DialPlace(350, 20, 580));
                var (x, y) = (a.At(a.YieldLoad * m), b.At(a.YieldLoad * m));
                return Near(x.Depth, y.Depth) && Near(x.Set, y.Set) && Near(x.Seen, y.Seen);
            },
            iter: 300
        );

    [Fact]
    public void At_AllYieldsAndTheLoadTwiceAsLarge_IsTwiceAsMuchOfEverything() =>
        Check.Sample(
            Gen.Select(Gen.Double[0.6, 1.6], Gen.Double[0.5, 2]),
            t =>
            {
                var (m, s) = t;
                PressBeam Of(double scale) =>
                    new(
                        [
                            new(0, 280, new RoundBar(28, 600 * scale)),
                            new(280, 320, new RoundBar(26, 400 * scale)),
                            new(320, 600, new CasedBar(26, 1400 * scale, 500 * scale, 2.5)),
                        ],
                        180,
                        420,
                        300
                    );
                var one = Of(1);
                var load = m * one.YieldLoad;
                var (a, b) = (one.At(load), Of(s).At(s * load));
                return Near(s * a.Depth, b.Depth)
                    && Near(s * a.Set, b.Set)
                    && Near(s * a.Strain, b.Strain);
            },
            iter: 200
        );

    [Fact]
    public void At_ElasticSteppedBar_GivesTheTextbookDepth()
    {
        // Two halves of different stiffness, load in the middle: each half is half the work of its own whole bar.
        var (thin, thick) = (new RoundBar(20, 900), new RoundBar(30, 900));
        var beam = new PressBeam([new(0, 200, thin), new(200, 400, thick)], 0, 400, 200);
        const double load = 1000;
        double Whole(BendSection s) => load * 400.0 * 400 * 400 / (48 * s.Stiffness);
        Assert.Equal((Whole(thin) + Whole(thick)) / 2, beam.At(load).Depth, 1e-10);
        Assert.Equal(0, beam.At(load).Set);
    }

    [Fact]
    public void PressBeam_RamOutsideTheBlocksOrMetalMissing_IsRefused()
    {
        BendStretch[] bar = [new(0, 300, new RoundBar(25, 500))];
        Assert.Throws<ArgumentException>(() => new PressBeam(bar, 100, 200, 220));
        Assert.Throws<ArgumentException>(() => new PressBeam(bar, 100, 400, 220));
    }

    private static bool Near(double a, double b) =>
        Math.Abs(a - b) <= 1e-9 * (1e-6 + Math.Abs(a) + Math.Abs(b));

    private static (PressBeam Beam, double Load, double Depth) Plain(BendSection bar, double span)
    {
        var beam = new PressBeam([new(0, span, bar)], 0, span, span / 2);
        var load = 4 * bar.YieldMoment / span;
        return (beam, load, load * span * span * span / (48 * bar.Stiffness));
    }

    /// <summary>A rectangular bar: M/My = (3 − (κy/κ)²)/2.</summary>
    private sealed class Rectangle(double width, double height, double yield) : BendSection
    {
        public override double Stiffness => Steel * width * height * height * height / 12;
        public override double YieldMoment => yield * width * height * height / 6;
        public override double FullMoment => 1.5 * YieldMoment;
        public override double Radius => height / 2;

        public override double Curvature(double moment)
        {
            var m = moment / YieldMoment;
            var y = 2 * yield / (Steel * height);
            return m <= 1 ? m * y : y / Math.Sqrt(3 - 2 * m);
        }
    }
}
