using System.Globalization;
using Shaftwright.Donors;

namespace Shaftwright.Pages.Doors;

/// <summary>Which number each place along a shaft goes by behind the door. A place is given it when the door opens on a job, or
/// when it comes in, and goes by it until the door is left, wherever it stands by then; no other is given it.</summary>
public sealed class ZonePins
{
    private readonly Pins<ShaftZone> _pins = new(EndAlike, AreAlike);
    private readonly HashSet<int> _had = [];

    // What is on its way into the job. It counts once the job says it.
    private List<(int Number, ShaftZone Zone)> _coming = [];
    private int _next;

    /// <summary>A number that no place goes by.</summary>
    public int Next() => _next++;

    /// <summary>True for a place that the job holds, or has held since the door was opened.</summary>
    public bool Had(int number) => _had.Contains(number);

    /// <summary>The door opens on a shaft.</summary>
    /// <param name="zones">The places.</param>
    /// <param name="words">A place in words.</param>
    /// <param name="kept">Numbers that something is kept under on the device, each with the words of the place it was typed at;
    /// none for a place that was not in the job yet. A place of the same words goes by such a number; else one of the same kind
    /// that ends where it did, whatever else of it was put right meanwhile.</param>
    public void Open(
        IReadOnlyList<ShaftZone> zones,
        Func<ShaftZone, string> words,
        IReadOnlyDictionary<int, string> kept
    )
    {
        ArgumentNullException.ThrowIfNull(zones);
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(kept);
        var left = kept.ToDictionary(k => k.Key, k => k.Value);
        _had.Clear();
        _coming = [];
        _next = 0;
        var numbers = new int?[zones.Count];
        Match(said => said);
        Match(KindAndEnd);
        for (var i = 0; i < zones.Count; i++)
        {
            while (kept.ContainsKey(_next))
                _next++;
            numbers[i] ??= _next++;
        }
        _next = Math.Max(_next, kept.Keys.Append(-1).Max() + 1);
        Hold(zones, [.. numbers.OfType<int>()]);

        void Match(Func<string, string> by)
        {
            for (var i = 0; i < zones.Count; i++)
            {
                if (numbers[i] is not null || by(words(zones[i])) is not { Length: > 0 } said)
                    continue;
                var same = left.Where(k => by(k.Value) == said).Select(k => k.Key);
                if (same.DefaultIfEmpty(-1).Min() is var number and >= 0)
                {
                    numbers[i] = number;
                    left.Remove(number);
                }
            }
        }
    }

    /// <summary>The job was changed.</summary>
    public void Move(IReadOnlyList<ShaftZone> zones)
    {
        var numbers = In(zones);
        _next = Math.Max(_next, numbers.Append(-1).Max() + 1);
        Hold(zones, numbers);
    }

    /// <summary>Places with their numbers are on their way into the job.</summary>
    public void Lay(IReadOnlyList<(int Number, ShaftZone Zone)> places) => _coming = [.. places];

    /// <summary>The numbers of the places of a shaft, in their order; those that came in elsewhere get the next free ones.</summary>
    public List<int> In(IReadOnlyList<ShaftZone> zones)
    {
        ArgumentNullException.ThrowIfNull(zones);
        if (_coming.Select(c => c.Zone).SequenceEqual(zones))
            return [.. _coming.Select(c => c.Number)];
        var next = _next;
        return
        [
            .. _pins
                .In(zones)
                .Select(key => key is null ? next++ : int.Parse(key, CultureInfo.InvariantCulture)),
        ];
    }

    /// <summary>What of a place's words says its kind and its end; empty where it has no end.</summary>
    private static string KindAndEnd(string words)
    {
        var at = words.IndexOf(Walk.AndDiameter, StringComparison.Ordinal);
        var said = at < 0 ? words : words[..at];
        return said.Contains(Walk.AndEnd, StringComparison.Ordinal) ? said : "";
    }

    private void Hold(IReadOnlyList<ShaftZone> zones, List<int> numbers)
    {
        _pins.Hold(zones, [.. numbers.Select(n => n.ToString(CultureInfo.InvariantCulture))]);
        _had.UnionWith(numbers);
    }

    // One that ends where it did, or is as thick and of the kind it was, is the same place with something put right. With neither
    // it is another, though it may stand where that one stood.
    private static bool EndAlike(ShaftZone known, ShaftZone now) =>
        known.Until is { } was && now.Until is { } until && was.Value == until.Value;

    private static bool AreAlike(ShaftZone known, ShaftZone now) =>
        known.Kind == now.Kind
        && known.Diameter is { } was
        && now.Diameter is { } diameter
        && was.Value == diameter.Value;
}
