using CsCheck;
using Shaftwright.CrackTest;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Tests.CrackTest;

namespace Shaftwright.Tests.Kept;

/// <summary>A record is put right by a later entry, and nothing in it is lost.</summary>
public sealed class EntriesTests
{
    private static readonly Gen<WorkDone[]> s_record = Gen.Select(
            Gen.Int[0, 12],
            Gen.Bool,
            Gen.Int[0, 3],
            (names, withdrawn, corrects) => (names, withdrawn, corrects)
        )
        .Array[0, 12]
        .Select(drawn =>
            drawn
                .Select(
                    (d, i) =>
                        new WorkDone
                        {
                            Id = $"e{i}",
                            Kind = WorkKind.Pressed,
                            At = Tested.After(i),
                            // Of what was written before, of what comes later, of itself, of nothing.
                            Corrects = d.corrects == 0 ? "" : $"e{d.names}",
                            Withdrawn = d.withdrawn && d.corrects > 1,
                        }
                )
                .ToArray()
        );

    [Fact]
    public void Standing_OfAnyRecord_IsPartOfItAndEachLineHasItsLastWord() =>
        s_record.Sample(record =>
        {
            var standing = Entries.Standing(record);
            Assert.All(standing, s => Assert.Contains(s, record));
            Assert.Equal(standing.Count, standing.Distinct().Count());
            for (var i = 0; i < record.Length; i++)
            {
                var last =
                    Enumerable
                        .Range(0, record.Length)
                        .Last(k => First(record, k) == First(record, i)) == i;
                Assert.Equal(last && !record[i].Withdrawn, standing.Contains(record[i]));
            }
        });

    /// <summary>The first entry of a line: what an entry corrects, and what that corrects, as far as it goes back.</summary>
    private static int First(WorkDone[] record, int i)
    {
        var named = Array.FindIndex(record, 0, i, e => e.Id == record[i].Corrects);
        return named < 0 ? i : First(record, named);
    }

    [Fact]
    public void Standing_OneMoreCorrection_ChangesOnlyWhatItNames() =>
        Gen.Select(s_record.Where(r => r.Length > 0), Gen.Int[0, 11])
            .Sample(
                (record, which) =>
                {
                    var target = record[which % record.Length];
                    var before = Entries.Standing(record);
                    WorkDone more = new()
                    {
                        Id = "more",
                        Corrects = target.Id,
                        At = Tested.Start,
                    };
                    var after = Entries.Standing<WorkDone>([.. record, more]);
                    Assert.Contains(more, after);
                    var line = First(record, Array.IndexOf(record, target));
                    Assert.Equal(
                        before.Where(b => First(record, Array.IndexOf(record, b)) != line),
                        after.Where(a => a != more)
                    );
                }
            );

    [Fact]
    public void Standing_ACorrection_StandsWhereTheFirstStood()
    {
        WorkDone[] record =
        [
            new() { Id = "a" },
            new() { Id = "b" },
            new() { Id = "a2", Corrects = "a" },
            new() { Id = "a3", Corrects = "a2" },
        ];
        Assert.Equal(["a3", "b"], Entries.Standing(record).Select(e => e.Id));
    }

    [Fact]
    public void Standing_TwoCorrectionsOfOneEntry_TheLaterCounts()
    {
        WorkDone[] record =
        [
            new() { Id = "a" },
            new() { Id = "phone", Corrects = "a" },
            new() { Id = "laptop", Corrects = "a" },
        ];
        Assert.Equal(["laptop"], Entries.Standing(record).Select(e => e.Id));
        WorkDone[] back =
        [
            .. record,
            new()
            {
                Id = "none",
                Corrects = "a",
                Withdrawn = true,
            },
        ];
        Assert.Empty(Entries.Standing(back));
    }

    [Fact]
    public void Check_IdsMissingOrTwice_AreRefusedByPath()
    {
        var check = new InputCheck();
        var run = Tested.Penetrant("t", Tested.Start, [Place.ButtWeld]);
        new CrackTestInput
        {
            Work = [new() { Id = "" }, new() { Id = "t" }],
            Tests = [run, run],
        }.Check(check, "crackTest");
        Assert.Equal("crackTest.work[0].id", check.Refusals[0].Field);
        Assert.Contains(check.Refusals, r => r.Field == "crackTest.tests[0].id");
        Assert.Contains(check.Refusals, r => r.Field == "crackTest.tests[1].steps[3].id");
    }
}
