using System.Globalization;
using Shaftwright.Donors;

namespace Shaftwright.Pages.Doors;

// The places along each shaft, and the numbers they go by in the keys of the draft.
public sealed partial class TwoShafts
{
    private static readonly string[] s_pieces = ["inner", "outer"];

    // On a job a place keeps its number while others come and go. Without one its number is where it stands.
    private readonly Dictionary<string, ZonePins> _pins = s_pieces.ToDictionary(
        p => p,
        _ => new ZonePins()
    );

    /// <summary>The numbers that the places along a shaft go by, in its order.</summary>
    /// <param name="piece"><c>inner</c> or <c>outer</c>.</param>
    public List<int> PlacesOf(string piece) =>
        PlacesOf(piece, NumbersOf(piece, ZonesOf(Basis, piece)));

    /// <summary>Numbers of places at which something was typed, though they are no longer in the job.</summary>
    public IEnumerable<int> LostOf(string piece) =>
        JobId is null ? [] : Typed(piece).Where(n => !IsPlace(piece, n));

    /// <summary>The place that something was typed at, as the job said it then; empty for one it did not have.</summary>
    public string TypedAt(string piece, int number) =>
        Draft.Keys($"{piece}/{number}/").Select(TypedOf).FirstOrDefault(w => w.Length > 0, "");

    /// <summary>A number for a place that is opened.</summary>
    public int NewPlace(string piece) =>
        JobId is null ? PlacesOf(piece).Count : _pins[piece].Next();

    private List<int> PlacesOf(string piece, List<int> held)
    {
        var places = held.FindAll(n => IsPlace(piece, n));
        foreach (var n in Typed(piece).Except(held).Where(n => IsPlace(piece, n)))
        {
            // One that was taken out and is back by undo stands where it ends. A new one is the next along, wherever it is said to
            // end: said to end before the others, it is asked about.
            var beyond =
                JobId is not null && _pins[piece].Had(n) && EndOf(n) is { } end
                    ? places.FindIndex(p => EndOf(p) > end)
                    : -1;
            places.Insert(beyond < 0 ? places.Count : beyond, n);
        }
        return places;

        double? EndOf(int n) => Draft.Take($"{piece}/{n}/until", DonorFields.Until)?.Value;
    }

    private bool IsPlace(string piece, int number) => Draft.Has($"{piece}/{number}/kind");

    private List<int> NumbersOf(string piece, IReadOnlyList<ShaftZone> zones) =>
        JobId is null ? [.. Enumerable.Range(0, zones.Count)] : _pins[piece].In(zones);

    private SortedSet<int> Typed(string piece) =>
        [.. Draft.Keys(piece + "/").Select(k => NumberIn(k, piece)).OfType<int>()];

    private static int? NumberIn(string key, string piece) =>
        key.Split('/') is [var p, var n, ..]
        && p == piece
        && int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;

    private static IReadOnlyList<ShaftZone> ZonesOf(Job job, string piece) =>
        (piece == "inner" ? job.Donors?.InnerEnd : job.Donors?.OuterEnd)?.Zones ?? [];

    /// <inheritdoc/>
    protected override string Of(string key, IReadOnlyDictionary<string, string> taken)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(taken);
        foreach (var piece in s_pieces)
        {
            if (NumberIn(key, piece) is { } n && taken.ContainsKey($"{piece}/{n}/kind"))
                return Walk.Words($"{piece}/{n}/", taken);
        }
        return "";
    }

    /// <inheritdoc/>
    protected override string WhyNot(string key, IReadOnlyDictionary<string, string> taken)
    {
        foreach (var piece in s_pieces)
        {
            if (JobId is not null && NumberIn(key, piece) is { } n && !IsPlace(piece, n))
                return TypedAt(piece, n) is { Length: > 0 } words
                    ? $"The place it was typed at ({words}) was taken out elsewhere."
                    : "The place it was typed at was taken out elsewhere.";
        }
        return base.WhyNot(key, taken);
    }

    private Dictionary<int, string> FoundOf(string piece)
    {
        var kept = new Dictionary<int, string>();
        foreach (var (key, typed) in AtOpening)
        {
            if (NumberIn(key, piece) is { } n && kept.GetValueOrDefault(n, "").Length == 0)
                kept[n] = typed.Of;
        }
        return kept;
    }

    private static string Words(ShaftZone zone)
    {
        var said = new Dictionary<string, string>();
        UnlayZone("", zone, said);
        return Walk.Words("", said);
    }

    private static void UnlayZone(string at, ShaftZone zone, IDictionary<string, string> answers)
    {
        answers[at + "kind"] = zone.Kind.ToString();
        Draft.Lay(answers, at + "until", zone.Until);
        Draft.Lay(answers, at + "diameter", zone.Diameter);
        Draft.Lay(answers, at + "end", zone.EndDiameter);
        Draft.Lay(answers, at + "root", zone.RootDiameter);
    }
}
