using CsCheck;
using Shaftwright.Donors;
using Shaftwright.JobFile;
using Shaftwright.JobFile.ShelfTable;

namespace Shaftwright.Records.Tests.JobFile.ShelfTable;

public sealed class ShelfCsvTests
{
    private const string Good = """
        shaft;name;what;from;until;diameter;end diameter;root;teeth;walked end;condition
        B4;the van's left;spline;0;40;26,9;;25,0;27;tripod 27 / tripod 27 long;sound
        ;;plain;;300;25,4;;;;;
        ;;taper;300;340;25,4;28;;;;
        ;;hardened;0;120;;;;;;
        B5;"a ""short"" one";plain;;0.5 in;1 in;;;;?;bent
        """;

    private static string Refused(string text) =>
        string.Join('\n', ShelfCsv.Read(text).Refusals.Select(r => r.ToString()));

    [Fact]
    public void Read_ATableWithDecimalCommas_GivesTheShaftsAsTyped()
    {
        var reading = ShelfCsv.Read(Good);
        Assert.Empty(reading.Refusals);
        var (a, b) = (reading.Shelf.Donors[0], reading.Shelf.Donors[1]);
        Assert.Equal(("B4", "the van's left"), (a.Id, a.Called));
        Assert.Equal(["tripod 27", "tripod 27 long"], a.WalkedEnd!.Fits);
        Assert.Equal(DonorCondition.Sound, a.Condition);
        Assert.Null(a.FarEnd);
        Assert.Equal(3, a.Shaft!.Zones.Count);
        Assert.Equal("26,9", a.Shaft.Zones[0].Diameter!.Typed);
        Assert.Equal(26.9, a.Shaft.Zones[0].Diameter!.Value);
        Assert.Equal(27, a.Shaft.Zones[0].Teeth);
        Assert.Equal(28, a.Shaft.Zones[2].EndDiameter!.Value);
        Assert.Equal(120, a.Shaft.Hardened[0].To!.Value);
        Assert.Equal("a \"short\" one", b.Called);
        Assert.Equal(12.7, b.Shaft!.Zones[0].Until!.Value);
        Assert.Equal(25.4, b.Shaft.Zones[0].Diameter!.Value);
        Assert.Empty(b.WalkedEnd!.Fits);
    }

    [Theory]
    [InlineData(',')]
    [InlineData('\t')]
    public void Read_AnotherSeparator_ReadsTheSame(char separator)
    {
        var text = string.Join(
            '\n',
            "shaft;what;until;diameter".Replace(';', separator),
            "a;plain;300;\"25,4\"".Replace(';', separator)
        );
        var donor = Assert.Single(ShelfCsv.Read(text).Shelf.Donors);
        Assert.Equal(25.4, donor.Shaft!.Zones[0].Diameter!.Value);
    }

    [Fact]
    public void Read_AUnitInTheColumnsName_CountsForItsBareNumbersAndIsKept()
    {
        var donor = Assert.Single(
            ShelfCsv
                .Read("shaft,what,until (in),diameter [in]\na,plain,10,1\na,plain,300 mm,24 mm")
                .Shelf.Donors
        );
        Assert.Equal(254, donor.Shaft!.Zones[0].Until!.Value);
        Assert.Equal(25.4, donor.Shaft.Zones[0].Diameter!.Value);
        Assert.Equal(24, donor.Shaft.Zones[1].Diameter!.Value);
        // What the job file keeps means the same without the column.
        var doc = new JobDocument(new Job { Shelf = new() { Donors = [donor] } }, new());
        var back = JobJson.Read(JobJson.Write(doc)).Document!;
        Assert.Equal(254, back.Job.Shelf!.Donors[0].Shaft!.Zones[0].Until!.Value);
    }

    [Theory]
    [InlineData("a;plain;;300;quarter", "line 2, diameter", "quarter")]
    [InlineData("a;plain;;300;2540", "line 2, diameter", "from 8 to 120 mm")]
    [InlineData("a;slope;;300;25", "line 2, what", "boot seat")]
    [InlineData("a;plain;;;25", "line 2, until", "is empty")]
    [InlineData("a;plain;5;300;25", "line 2, from", "leaves a gap")]
    [InlineData("a;plain;;300;25\na;plain;290;400;25", "line 3, from", "overlaps")]
    [InlineData("a;plain;;300;25\na;plain;;200;25", "line 3, until", "more than 300.0")]
    [InlineData("a;plain;;300;25;7", "line 2", "6 cells")]
    [InlineData("a;plain;;300;25\nb;plain;;300;25\na;plain;;400;25", "line 4, shaft", "further up")]
    [InlineData(";plain;;300;25", "line 2, shaft", "B4")]
    public void Read_ABadCell_IsRefusedWithLineColumnAndWhatIsAccepted(
        string rows,
        string at,
        string says
    )
    {
        var text = Refused("shaft;what;from;until;diameter\n" + rows);
        Assert.StartsWith(at + ":", text, StringComparison.Ordinal);
        Assert.Contains(says, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "is not a column here")]
    [InlineData("shaft;what", "no column \"until\"")]
    [InlineData("shaft;what;until;colour", "colour")]
    [InlineData("shaft;what;until;until", "twice")]
    public void Read_ABadFirstRow_IsRefusedBeforeAnythingElse(string heads, string says) =>
        Assert.Contains(says, Refused(heads + "\na;plain;300;25"), StringComparison.Ordinal);

    [Fact]
    public void Read_OneBadShaft_LeavesTheOthersWhole()
    {
        var reading = ShelfCsv.Read(
            "shaft;what;until;diameter;root\na;plain;300;25;\nb;spline;40;25;26\nc;plain;200;24;"
        );
        Assert.Equal(["a", "c"], reading.Shelf.Donors.Select(d => d.Id));
        Assert.Contains(
            "at its root",
            Assert.Single(reading.Refusals).ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Read_AnyTextAtAll_DoesNotThrow() =>
        Check.Sample(
            Gen.Select(Gen.String, Gen.Int[0, 200]),
            trial =>
            {
                var (text, at) = trial;
                ShelfCsv.Read(text);
                ShelfCsv.Read(Good.Insert(Math.Min(at, Good.Length), text));
            },
            iter: 2000
        );

    [Fact]
    public void Read_TheExample_IsTakenWhole()
    {
        var reading = ShelfCsv.Read(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "examples", "shelf.csv"))
        );
        Assert.Empty(reading.Refusals);
        Assert.Equal(6, reading.Shelf.Donors.Count);
    }
}
