using Shaftwright.Corner;

namespace Shaftwright.Pages.Doors;

/// <summary>Which reading of a corner each of the three questions about the wheel's height belongs to: droop, ride height, bump.
/// Looked for once, when the door opens on a job; from then on a question keeps its reading, whatever is typed there. Looked
/// for again at each key, a slip of the pen would hand the question on to another reading and write over that.</summary>
public sealed class ReadingPins
{
    private static readonly string[] s_questions = ["droop", "ride", "bump"];

    private readonly Pins<TrialReading> _pins = new();
    private IReadOnlyList<TrialReading>? _known;
    private int[] _places = [];

    /// <summary>Lets go: the next corner is looked through anew.</summary>
    public void Free()
    {
        _pins.Free();
        _known = null;
    }

    /// <summary>Holds on to readings.</summary>
    /// <param name="readings">The corner's readings.</param>
    /// <param name="places">Which of them belong to droop, ride height and bump; −1 for none.</param>
    public void Hold(IReadOnlyList<TrialReading> readings, int[] places)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(places);
        _known = readings;
        _places = [.. places];
        var keys = new string?[readings.Count];
        for (var q = 0; q < places.Length; q++)
        {
            if (places[q] >= 0)
                keys[places[q]] = s_questions[q];
        }
        _pins.Hold(readings, keys);
    }

    /// <summary>Where the held readings are in a corner, which may have been changed elsewhere since.</summary>
    /// <returns>Places for droop, ride height and bump; −1 for none.</returns>
    public int[] In(IReadOnlyList<TrialReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var fresh = Fresh(readings);
        if (_known is null)
            return fresh;
        var keys = _pins.In(readings);
        var found = new int[s_questions.Length];
        for (var q = 0; q < found.Length; q++)
        {
            found[q] = Array.IndexOf(keys, s_questions[q]);
            // A question that had no reading takes one that came from elsewhere, but none that was there when it had none.
            if (
                _places[q] < 0
                && fresh[q] >= 0
                && keys[fresh[q]] is null
                && !_known.Contains(readings[fresh[q]])
            )
                found[q] = fresh[q];
        }
        return found;
    }

    /// <summary>Which readings are the lowest, the one at ride height and the highest.</summary>
    private static int[] Fresh(IReadOnlyList<TrialReading> readings)
    {
        int droop = -1,
            ride = -1,
            bump = -1;
        for (var i = 0; i < readings.Count; i++)
        {
            var r = readings[i];
            // Readings of another form, or steered, are no business of these questions. Without its travel nobody knows where
            // the wheel was; it is not taken to be at ride height.
            if (
                r.Steering != Steering.Straight
                || (r.In is null && r.Out is null)
                || r.Travel is null
            )
                continue;
            var at = r.Travel.Value;
            if (at == 0)
                ride = ride < 0 ? i : ride;
            else if (at < 0 && (droop < 0 || at < readings[droop].Travel!.Value))
                droop = i;
            else if (at > 0 && (bump < 0 || at > readings[bump].Travel!.Value))
                bump = i;
        }
        return [droop, ride, bump];
    }
}
