using System.Globalization;
using System.Text.Json.Nodes;

namespace Shaftwright.JobFile;

/// <summary>What an entry of a list said, and what stood before and behind it, in a line of text: by that it is found again where
/// another device has moved, changed or taken out entries, and never taken for its neighbour.</summary>
/// <remarks>Written as <c>place among those alike/how many alike|before|behind|member=sum,…</c>; what was said is kept as short sums
/// (FNV-1a, 32 bits), which two different texts share once in four thousand million.</remarks>
internal sealed class EntryMark
{
    private const string Start = "^";
    private const string End = "$";

    private readonly int _alike;
    private readonly int _of;
    private readonly string _before;
    private readonly string _behind;
    private readonly HashSet<string> _members;

    private EntryMark(int alike, int of, string before, string behind, IEnumerable<string> members)
    {
        (_alike, _of, _before, _behind) = (alike, of, before, behind);
        _members = [.. members];
    }

    /// <summary>The mark of an entry.</summary>
    public static string Of(JsonArray list, int index)
    {
        var sums = list.Select(Sum).ToList();
        var alike = sums.Take(index).Count(s => s == sums[index]);
        var of = sums.Count(s => s == sums[index]);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{alike}/{of}|{Neighbour(sums, index - 1)}|{Neighbour(sums, index + 1)}|{string.Join(',', Members(list[index]))}"
        );
    }

    /// <summary>Reads a mark; null if it is none.</summary>
    public static EntryMark? Read(string text) =>
        text.Split('|') is [var place, var before, var behind, var members]
        && place.Split('/') is [var alike, var of]
        && int.TryParse(alike, NumberStyles.None, CultureInfo.InvariantCulture, out var k)
        && int.TryParse(of, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? new(k, n, before, behind, members.Split(','))
            : null;

    /// <summary>Where the entry is now: the one that says the same; or, where that was changed, the one between the same
    /// neighbours that still says half of it or more. −1 if there is none, or no telling which.</summary>
    public int In(JsonArray list)
    {
        var sums = list.Select(Sum).ToList();
        bool Between(int i) =>
            Neighbour(sums, i - 1) == _before && Neighbour(sums, i + 1) == _behind;
        var same = Enumerable
            .Range(0, list.Count)
            .Where(i => _members.SetEquals(Members(list[i])))
            .ToList();
        if (same.Count > 0 && same.Count == _of)
            return same[_alike];
        if (same.Count == 0)
            same =
            [
                .. Enumerable
                    .Range(0, list.Count)
                    .Where(i => 2 * Members(list[i]).Count(_members.Contains) >= _members.Count),
            ];
        var there = same.Where(Between).ToList();
        return there is [var only] ? only : -1;
    }

    private static string Neighbour(List<string> sums, int index) =>
        index < 0 ? Start
        : index >= sums.Count ? End
        : sums[index];

    private static string Sum(JsonNode? entry) => Sum(string.Join(',', Members(entry)));

    private static List<string> Members(JsonNode? entry) =>
        entry is JsonObject o
            ?
            [
                .. o.Select(m => $"{m.Key}={Sum(m.Value?.ToJsonString() ?? "")}")
                    .Order(StringComparer.Ordinal),
            ]
            : [Sum(entry?.ToJsonString() ?? "")];

    private static string Sum(string text)
    {
        var sum = 2166136261u;
        foreach (var c in text)
            sum = (sum ^ c) * 16777619u;
        return sum.ToString("x8", CultureInfo.InvariantCulture);
    }
}
