using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Pages.Doors;

/// <summary>A place around the shaft where the dial is read.</summary>
/// <param name="Key">Its key in the draft.</param>
/// <param name="Degrees">Its angle from the mark; null while nobody has said it.</param>
/// <param name="Typed">True where the angle is typed; false where the page says which it is.</param>
public sealed record DialPlace(string Key, double? Degrees, bool Typed)
{
    /// <summary>Key of what the dial showed there.</summary>
    public string Dial => Key + TurnReadings.DialPart;

    /// <summary>Key of the angle, where it is typed.</summary>
    public string Angle => Key + TurnReadings.AnglePart;
}

/// <summary>The readings of one turn between a job and a draft. A reading belongs to the angle it was read at: how many are asked
/// for says only which places stand open, and moves none, drops none and limits none that are there.</summary>
/// <param name="draft">What is typed.</param>
public sealed class TurnReadings(Draft draft)
{
    /// <summary>How many places are asked for when nobody says.</summary>
    public const int Usual = 8;

    internal const string DialPart = "/dial";
    internal const string AnglePart = "/angle";
    private const string Prefix = "r/";

    /// <summary>Most places that are opened one by one.</summary>
    private const int Most = 360;

    /// <summary>The places that may be even around the shaft, those first that a few readings are taken to belong to.</summary>
    private static readonly int[] s_grids = [8, 6, 12, 4];

    private readonly Pins<DialReading> _pins = new();

    /// <summary>Readings at even angles; 0 where the angles are typed.</summary>
    public int Count =>
        int.TryParse(draft["count"], CultureInfo.InvariantCulture, out var count) ? count : Usual;

    /// <summary>Lets go of the readings of a job: another is opened.</summary>
    public void Free() => _pins.Free();

    /// <summary>Every place to be shown: those asked for, and those where something was read.</summary>
    /// <param name="current">Key of the place in hand, which stays while its box is empty; null for none.</param>
    public IReadOnlyList<DialPlace> Places(string? current)
    {
        var even = new SortedDictionary<double, string>();
        for (var i = 0; i < Count; i++)
            even[DegreesOf(EvenKey(360.0 * i / Count))!.Value] = EvenKey(360.0 * i / Count);
        var own = new SortedSet<int>();
        foreach (var key in Keys().Append(current).OfType<string>())
        {
            if (DegreesOf(key) is { } degrees)
                even[degrees] = key;
            else if (Number(key) is { } n)
                own.Add(n);
        }
        if (Count == 0 && own.Count < Most && own.All(n => draft.Has(OwnKey(n) + DialPart)))
            own.Add(Next(own));
        return
        [
            .. even.Select(e => new DialPlace(e.Value, e.Key, false)),
            .. own.Select(n => new DialPlace(
                OwnKey(n),
                draft.Take(OwnKey(n) + AnglePart, TruingFields.ShaftAngle)?.Value * 180 / Math.PI,
                true
            )),
        ];
    }

    /// <summary>Takes a job's readings out as text. Meanwhile the draft holds the answers as last settled.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="answers">Where the text goes.</param>
    /// <param name="holds">True when these readings are the ones that the questions belong to from now on.</param>
    public void Unlay(
        IReadOnlyList<DialReading> readings,
        IDictionary<string, string> answers,
        bool holds
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(answers);
        var keys = KeysOf(readings);
        if (holds)
            _pins.Hold(readings, keys);
        if (readings.Count > 0)
            answers["count"] = Even(readings).ToString(CultureInfo.InvariantCulture);
        for (var i = 0; i < readings.Count; i++)
        {
            Draft.Lay(answers, keys[i] + DialPart, readings[i].Dial);
            if (Number(keys[i]) is not null)
                Draft.Lay(answers, keys[i] + AnglePart, readings[i].Angle);
        }
    }

    /// <summary>A turn's readings with what was typed.</summary>
    /// <param name="old">Those that the job holds.</param>
    /// <param name="keeping">True when they are put into the job for good.</param>
    /// <param name="holds">True when the questions belong to them from now on.</param>
    public IReadOnlyList<DialReading> Laid(IReadOnlyList<DialReading> old, bool keeping, bool holds)
    {
        ArgumentNullException.ThrowIfNull(old);
        var keys = KeysOf(old);
        var now = new List<(DialReading Reading, string Key)>();
        for (var i = 0; i < old.Count; i++)
        {
            if (Over(old[i], keys[i]) is { } reading)
                now.Add((reading, keys[i]));
        }
        foreach (var place in Places(null).Where(p => !keys.Contains(p.Key)))
        {
            if (New(place, keeping) is not { } reading)
                continue;
            var after = place.Typed
                ? -1
                : now.FindIndex(n => n.Reading.Angle?.Value > reading.Angle!.Value);
            now.Insert(after < 0 ? now.Count : after, (reading, place.Key));
        }
        IReadOnlyList<DialReading> readings = [.. now.Select(n => n.Reading)];
        if (holds)
            _pins.Hold(readings, [.. now.Select(n => n.Key)]);
        return readings;
    }

    /// <summary>What a key is called in a sentence; null when it is none of these.</summary>
    public static string? Called(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var angle = key.Contains(AnglePart, StringComparison.Ordinal);
        return key.Split('/') switch
        {
            ["r", var at, ..] when at.EndsWith('°') => "the reading at " + at,
            ["r", var n, ..] when int.TryParse(n, CultureInfo.InvariantCulture, out var i) => (
                angle ? "the angle of reading " : "reading "
            ) + (i + 1).ToString(CultureInfo.InvariantCulture),
            _ => null,
        };
    }

    private DialReading? Over(DialReading old, string key)
    {
        var dial = draft.Take(key + DialPart, TruingFields.Dial, old.Dial);
        if (dial is null && old.Dial is not null)
            return null;
        if (Number(key) is null)
            return old with { Dial = dial };
        var angle = draft.Take(key + AnglePart, TruingFields.ShaftAngle, old.Angle);
        // An angle that was emptied is about to be typed again; until then the reading stays where it was.
        return angle is null && old.Angle is not null ? old : new() { Angle = angle, Dial = dial };
    }

    private DialReading? New(DialPlace place, bool keeping)
    {
        if (draft.Take(place.Dial, TruingFields.Dial) is not { } dial)
            return null;
        if (!place.Typed)
            return new() { Angle = Measured<Angle>.Of(Exact(place), Angle.Degree), Dial = dial };
        var angle = draft.Take(place.Angle, TruingFields.ShaftAngle);
        // Where it was read waits in the draft until it is known: it is no reading of the job until then.
        return angle is null && keeping ? null : new() { Angle = angle, Dial = dial };
    }

    /// <summary>The angle of a place without the rounding of its key.</summary>
    private double Exact(DialPlace place)
    {
        for (var i = 0; i < Count; i++)
        {
            if (EvenKey(360.0 * i / Count) == place.Key)
                return 360.0 * i / Count;
        }
        return place.Degrees!.Value;
    }

    /// <summary>For each reading the place it belongs to: the one it has had, or the one it was typed at, or one by its
    /// angle.</summary>
    private string[] KeysOf(IReadOnlyList<DialReading> readings)
    {
        var keys = _pins.In(readings);
        var used = keys.OfType<string>().ToHashSet();
        var own = Keys().Where(k => Number(k) is not null).Distinct().Order().ToList();
        var even = (draft.Has("count") && Count > 0) || Even(readings) > 0;
        for (var i = 0; i < keys.Length; i++)
            keys[i] ??= KeyOf(readings[i]);
        return keys!;

        string KeyOf(DialReading reading)
        {
            var at = reading.Angle is { PlusMinus: null } angle
                ? EvenKey(angle.Value * 180 / Math.PI)
                : null;
            if (at is not null && draft.Has(at + DialPart) && used.Add(at))
                return at;
            var texts = new Dictionary<string, string>();
            Draft.Lay(texts, AnglePart, reading.Angle);
            var typed = own.Find(k =>
                !used.Contains(k)
                && draft.Has(k + AnglePart)
                && draft[k + AnglePart] == texts.GetValueOrDefault(AnglePart, "")
                && draft[k + AnglePart + Draft.PlusMinus]
                    == texts.GetValueOrDefault(AnglePart + Draft.PlusMinus, "")
            );
            if (typed is not null && used.Add(typed))
                return typed;
            if (even && at is not null && used.Add(at))
                return at;
            var free = OwnKey(Next([.. used.Concat(own).Select(Number).OfType<int>()]));
            used.Add(free);
            return free;
        }
    }

    private IEnumerable<string> Keys() =>
        draft
            .Keys(Prefix)
            .Select(k => k.Split('/'))
            .Where(k => k.Length > 1)
            .Select(k => Prefix + k[1]);

    private static int Next(SortedSet<int> taken) =>
        Enumerable.Range(0, taken.Count + 1).First(n => !taken.Contains(n));

    private static string OwnKey(int n) => Prefix + n.ToString(CultureInfo.InvariantCulture);

    /// <summary>Key of the place at an angle, which a whole turn more or less does not change.</summary>
    private static string EvenKey(double degrees)
    {
        var once = Math.Round(degrees - 360 * Math.Floor(degrees / 360), 6);
        return Prefix
            + (once >= 360 ? 0 : once).ToString("0.######", CultureInfo.InvariantCulture)
            + "°";
    }

    private static double? DegreesOf(string key) =>
        key.EndsWith('°')
        && double.TryParse(key[Prefix.Length..^1], CultureInfo.InvariantCulture, out var degrees)
            ? degrees
            : null;

    private static int? Number(string key) =>
        int.TryParse(
            key[Prefix.Length..],
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var n
        )
            ? n
            : null;

    /// <summary>Number of places around the shaft that the readings are at; 0 for none that is even.</summary>
    private static int Even(IReadOnlyList<DialReading> readings) =>
        // All of the places of one, or some of those of another.
        Array.Find(s_grids, g => g == readings.Count && AreAt(readings, g))
            is > 0
                and var whole
            ? whole
            : Array.Find(s_grids, g => AreAt(readings, g));

    /// <summary>Whether each reading is at one of so many even places, and no two are at one.</summary>
    private static bool AreAt(IReadOnlyList<DialReading> readings, int grid)
    {
        var places = new HashSet<int>();
        return readings.All(r =>
        {
            if (r.Angle is not { PlusMinus: null } angle)
                return false;
            var at = angle.Value * grid / (2 * Math.PI);
            var place = (int)Math.Round(at);
            return place >= 0 && place < grid && Math.Abs(at - place) <= 1e-6 && places.Add(place);
        });
    }
}
