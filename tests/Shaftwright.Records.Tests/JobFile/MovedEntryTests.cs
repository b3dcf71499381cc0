using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>An edit of one entry of a list in which another device has put in, taken out or changed entries meanwhile.</summary>
public sealed class MovedEntryTests
{
    private static readonly DateTimeOffset s_at = new(2026, 5, 3, 14, 20, 0, TimeSpan.Zero);

    private const string Donor = """
        {"format":1,"name":"Heron","donors":{"innerEnd":{"name":"a","zones":[
          {"kind":"plain","until":"60 mm","diameter":"26 mm"},
          {"kind":"plain","until":"100 mm","diameter":"25 mm"},
          {"kind":"bootSeat","until":"130 mm","diameter":"25 mm"},
          {"kind":"plain","until":"320 mm","diameter":"28 mm"}]}},
         "corner":{"readings":[
          {"travel":"-90 mm","steering":"straight","in":"14 mm","out":"10 mm"},
          {"travel":"0 mm","steering":"straight","in":"10 mm","out":"16 mm"},
          {"travel":"70 mm","steering":"straight","in":"12 mm","out":"10 mm"}]}}
        """;

    private const string Groove = """{"kind":"groove","until":"33 mm","diameter":"24 mm"}""";

    private static JsonObject Job() => JsonNode.Parse(Donor)!.AsObject();

    private static JsonArray Zones(JsonObject job) =>
        job["donors"]!["innerEnd"]!["zones"]!.AsArray();

    private static JsonArray Readings(JsonObject job) => job["corner"]!["readings"]!.AsArray();

    private static string Said(JsonArray list) =>
        string.Join("; ", list.Select(e => string.Join(' ', e!.AsObject().Select(m => m.Value))));

    /// <summary>As a page makes it: with what was seen, where, and among what.</summary>
    private static Edit By(JsonObject seen, string path, string value)
    {
        var tokens = FieldPath.Tokens(path, 16)!;
        JsonNode? at = seen;
        foreach (var token in tokens)
            at = at is JsonArray list ? list[int.Parse(token)] : at![token];
        return new(Guid.NewGuid(), "job-1", s_at, "phone-1a2b3c4d", path, value, at?.DeepClone())
        {
            WasEmpty = at is null,
            Entries = ListEntry.Of(seen, tokens),
        };
    }

    private static JsonObject Changed(Action<JsonObject> elsewhere)
    {
        var job = Job();
        elsewhere(job);
        return job;
    }

    [Fact]
    public void ADiameterTyped_ThePlaceBeforeIsTakenOut_StaysWithItsPlace()
    {
        var edit = By(Job(), "/donors/innerEnd/zones/1/diameter", "24.5 mm");
        var job = Edits.Apply(Changed(j => Zones(j).RemoveAt(0)), edit);
        Assert.Equal(
            "plain 100 mm 24.5 mm; bootSeat 130 mm 25 mm; plain 320 mm 28 mm",
            Said(Zones(job))
        );
        Assert.Empty(JobJson.Read(job).Document!.Records.Conflicts);
    }

    [Fact]
    public void ADiameterTyped_AGrooveIsPutInBefore_StaysWithItsPlace()
    {
        var edit = By(Job(), "/donors/innerEnd/zones/2/diameter", "24.5 mm");
        var job = Edits.Apply(Changed(j => Zones(j).Insert(0, JsonNode.Parse(Groove))), edit);
        Assert.Equal("bootSeat 130 mm 24.5 mm", Said(Zones(job)).Split("; ")[3]);
    }

    [Fact]
    public void ADiameterTyped_ItsPlaceIsTakenOut_IsRefusedInWords()
    {
        var edit = By(Job(), "/donors/innerEnd/zones/1/diameter", "24.5 mm");
        var refusal = Assert.Single(
            Edits.TryApply(Changed(j => Zones(j).RemoveAt(1)), edit).Refusals
        );
        Assert.Contains("taken out elsewhere", refusal.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void ADiameterTyped_TheEndOfThatPlaceIsPutRightElsewhere_BothCount()
    {
        var edit = By(Job(), "/donors/innerEnd/zones/1/diameter", "24.5 mm");
        var job = Edits.Apply(Changed(j => Zones(j)[1]!["until"] = "104 mm"), edit);
        Assert.Equal("plain 104 mm 24.5 mm", Said(Zones(job)).Split("; ")[1]);
    }

    [Fact]
    public void OneOfTwoAlike_TheOtherIsTakenOut_IsToldByItsNeighboursOrRefused()
    {
        var seen = Job();
        Zones(seen)[2] = JsonNode.Parse("""{"kind":"plain","until":"100 mm","diameter":"25 mm"}""");
        var edit = By(seen, "/donors/innerEnd/zones/1/diameter", "24.5 mm");
        var other = (JsonObject)seen.DeepClone();
        Zones(other).RemoveAt(1);
        Assert.NotEmpty(Edits.TryApply(other, edit).Refusals);
    }

    [Fact]
    public void AReadingTyped_ItsTravelIsPutRightAndTwoComeInBefore_StaysWithIt()
    {
        var edit = By(Job(), "/corner/readings/2/out", "4 mm");
        var job = Edits.Apply(
            Changed(j =>
            {
                Readings(j)[2]!["travel"] = "72 mm";
                foreach (var travel in (string[])["-60 mm", "-120 mm"])
                    Readings(j)
                        .Insert(
                            0,
                            JsonNode.Parse(
                                $$"""{"travel":"{{travel}}","steering":"straight","in":"13 mm","out":"11 mm"}"""
                            )
                        );
            }),
            edit
        );
        Assert.Equal("72 mm straight 12 mm 4 mm", Said(Readings(job)).Split("; ")[4]);
    }

    [Fact]
    public void AReadingTyped_ItWasTakenOut_IsRefusedAndLandsNowhere()
    {
        var edit = By(Job(), "/corner/readings/2/out", "4 mm");
        Assert.NotEmpty(Edits.TryApply(Changed(j => Readings(j).RemoveAt(2)), edit).Refusals);
    }

    /// <summary>Whatever another device does to the list, what was typed is at the place it was typed at, or is refused.</summary>
    [Fact]
    public void AnyChangeElsewhere_NeverPutsItAtAnotherPlace() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 4], Gen.Int[0, 3], Gen.Int[0, 2])
            .Sample(
                (mine, what, at, alike, twice) =>
                {
                    var seen = Job();
                    // Some places may say the same.
                    if (alike != mine)
                        Zones(seen)[alike]!["diameter"] = "25 mm";
                    Zones(seen)[mine]!["note"] = null;
                    Zones(seen)[mine]!.AsObject().Remove("note");
                    var edit = By(seen, $"/donors/innerEnd/zones/{mine}/diameter", "24.5 mm");
                    var job = (JsonObject)seen.DeepClone();
                    var target = Zones(job)[mine];
                    for (var i = 0; i <= twice; i++)
                    {
                        var zones = Zones(job);
                        var place = Math.Min(at + i, zones.Count - 1);
                        if (what == 0)
                            zones.Insert(place, JsonNode.Parse(Groove));
                        else if (what == 1)
                            zones.RemoveAt(place);
                        else if (what == 2)
                            zones[place]!["until"] = $"{zones[place]!["until"]}".Replace(
                                "0 mm",
                                "1 mm",
                                StringComparison.Ordinal
                            );
                        else
                            zones.Insert(place, zones[place]!.DeepClone());
                    }
                    var index = target is null ? -1 : Zones(job).IndexOf(target);
                    var before = Zones(job).Select(z => z!.ToJsonString()).ToList();
                    if (Edits.TryApply(job, edit) is not { Document: { } after })
                        return true;
                    for (var i = 0; i < before.Count; i++)
                    {
                        if (i != index && Zones(after)[i]!.ToJsonString() != before[i])
                            return before[i] == (index < 0 ? "" : before[index]);
                    }
                    return Zones(after).Count == before.Count;
                },
                iter: 3000
            );
}
