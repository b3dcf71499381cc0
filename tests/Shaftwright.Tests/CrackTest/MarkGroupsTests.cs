using CsCheck;
using Shaftwright.CrackTest;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Which marks count as one: on a surface that closes on itself, in whatever order they are taken.</summary>
public sealed class MarkGroupsTests
{
    private static readonly Gen<FlatMark> s_mark = Gen.Select(
        Gen.Double[0, 12],
        Gen.Double[0, 80],
        Gen.Double[0.2, 4],
        Gen.Frequency((4, Gen.Double[-1.5, 1.5]), (1, Gen.Const(double.NaN))),
        (x, s, length, direction) => new FlatMark(x, s, length, direction)
    );

    private const double Around = 80;

    private static string Shown(
        IReadOnlyList<(IReadOnlyList<int> Members, double Length)> groups
    ) =>
        string.Join(
            ';',
            groups
                .Select(g => $"{string.Join(',', g.Members)}:{g.Length:F6}")
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Of_AnyOrder_IsTheSameGroups() =>
        Gen.Select(s_mark.Array[1, 9], Gen.Int)
            .Sample(
                (marks, seed) =>
                {
                    int[] order = [.. Enumerable.Range(0, marks.Length)];
                    new Random(seed).Shuffle(order);
                    var plain = MarkGroups.Of(marks, Around);
                    var mixed = MarkGroups
                        .Of([.. order.Select(i => marks[i])], Around)
                        .Select(g =>
                            (
                                (IReadOnlyList<int>)[.. g.Members.Select(m => order[m]).Order()],
                                g.Length
                            )
                        )
                        .ToList();
                    return Shown(plain) == Shown(mixed);
                },
                iter: 2000
            );

    [Fact]
    public void Of_TheShaftTurned_IsTheSameGroups() =>
        Gen.Select(s_mark.Array[1, 7], Gen.Double[-200, 200])
            .Sample(
                (marks, turn) =>
                    Shown(MarkGroups.Of(marks, Around))
                    == Shown(
                        MarkGroups.Of(
                            [.. marks.Select(m => m with { S = (m.S + turn) % Around })],
                            Around
                        )
                    ),
                iter: 2000
            );

    [Fact]
    public void Of_OneMarkMore_NeverPartsWhatWasOne() =>
        Gen.Select(s_mark.Array[1, 7], s_mark)
            .Sample(
                (marks, more) =>
                {
                    var before = MarkGroups.Of(marks, Around);
                    var after = MarkGroups.Of([.. marks, more], Around);
                    return before.All(b => after.Any(a => b.Members.All(a.Members.Contains)));
                },
                iter: 2000
            );

    // Beside a bend one mark more can stand between three others and shorten the gaps that join them, as a crossroads does.
    [Fact]
    public void Of_OneMarkMoreInLine_NeverShortensWhatWasOne() =>
        Gen.Select(s_mark.Array[1, 7], s_mark)
            .Sample(
                (drawn, one) =>
                {
                    FlatMark[] marks = [.. drawn.Select(m => m with { S = 0, Direction = 0 })];
                    var more = one with { S = 0, Direction = 0 };
                    var before = MarkGroups.Of(marks, Around);
                    var after = MarkGroups.Of([.. marks, more], Around);
                    return before.All(b =>
                        after.Any(a =>
                            b.Members.All(a.Members.Contains) && a.Length >= b.Length - 1e-9
                        )
                    );
                },
                iter: 2000
            );

    [Fact]
    public void Of_EveryMark_IsInOneGroupNoShorterThanItself() =>
        s_mark
            .Array[0, 9]
            .Sample(marks =>
            {
                var groups = MarkGroups.Of(marks, Around);
                return groups
                        .SelectMany(g => g.Members)
                        .Order()
                        .SequenceEqual(Enumerable.Range(0, marks.Length))
                    && groups.All(g => g.Members.All(m => marks[m].Length <= g.Length + 1e-9));
            });

    [Fact]
    public void Of_MarksOnEitherSideOfTheSeam_AreNeighbours()
    {
        FlatMark[] marks = [new(0, 0.4, 2, 0), new(0, Around - 0.4, 2, 0)];
        Assert.Equal([0, 1], Assert.Single(MarkGroups.Of(marks, Around)).Members);
        Assert.Equal(2, MarkGroups.Of(marks, double.PositiveInfinity).Count);
    }

    [Fact]
    public void Of_AChain_JoinsOneByOneAndItsLengthIsAllMarksAndGaps()
    {
        FlatMark[] marks = [new(0, 0, 2, 0), new(3, 0, 2, 0), new(6.5, 0, 2, 0)];
        var group = Assert.Single(MarkGroups.Of(marks, Around));
        Assert.Equal(2 + 1 + 2 + 1.5 + 2, group.Length, 1e-9);
    }

    [Fact]
    public void Of_CrossedMarks_TouchAndCountAsOne() =>
        Assert.Single(
            MarkGroups.Of([new(0, 0, 4, Math.PI / 4), new(0, 0, 4, -Math.PI / 4)], Around)
        );
}
