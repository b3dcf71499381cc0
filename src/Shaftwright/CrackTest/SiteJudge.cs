using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>How a mark stands after what was done about it.</summary>
internal enum MarkStanding
{
    Open,
    ToRetest,
    DealtWith,
    Scrapped,
}

/// <summary>How each place stands, from the tests that count, the marks and the decisions.</summary>
internal sealed class SiteJudge
{
    private readonly IReadOnlyList<CountingTest> _runs;
    private readonly IReadOnlyList<CountingTest> _unshown;
    private readonly IReadOnlyList<MarkResult> _marks;
    private readonly IReadOnlyList<LostMark> _lost;
    private readonly IReadOnlyList<TestDemand> _demands;
    private readonly IReadOnlyList<Decision> _decisions;
    private readonly DateTimeOffset? _sleeved;

    public SiteJudge(
        CrackTestInput input,
        IReadOnlyList<WorkDone> work,
        IReadOnlyList<CountingTest> runs,
        IReadOnlyList<CountingTest> unshown,
        IReadOnlyList<MarkResult> marks,
        IReadOnlyList<LostMark> lost,
        IReadOnlyList<TestDemand> demands
    )
    {
        (_runs, _unshown, _marks, _lost, _demands) = (runs, unshown, marks, lost, demands);
        _decisions = Entries.Standing(input.Decisions);
        _sleeved = WorkLog.SleevedAt(work);
    }

    public IReadOnlyList<SiteResult> Judge() =>
        [
            .. Enum.GetValues<Place>()
                .Where(p =>
                    _runs.Any(r => r.Saw(p))
                    || _unshown.Any(r => r.Saw(p))
                    || _marks.Any(m => m.Place == p)
                    || _lost.Any(m => m.Place == p)
                    || _demands.Any(d => d.Places.Contains(p))
                )
                .Select(One),
        ];

    /// <summary>How a mark stands.</summary>
    public MarkStanding Of(MarkResult mark)
    {
        var latest = mark
            .IndicationIds.Select(id =>
                _decisions.LastOrDefault(d =>
                    string.Equals(d.Indication, id, StringComparison.Ordinal)
                )
            )
            .ToList();
        if (latest.Any(d => d?.What == MarkDecision.Scrapped))
            return MarkStanding.Scrapped;
        // Every one of the marks that count as one must have been seen to.
        if (mark.Crack || latest.Any(d => d is null))
            return MarkStanding.Open;
        var worked = latest.Max(d => d!.At);
        // Another test, begun after the mark was found and worked on: the one that found it cannot clear it.
        var found = _runs.FirstOrDefault(r =>
            string.Equals(r.Id, mark.RunId, StringComparison.Ordinal)
        );
        if (found is not null && found.LookedAt > worked)
            worked = found.LookedAt;
        return _runs.Any(r => r != found && r.BeganAt >= worked && r.Saw(mark.Place))
            ? MarkStanding.DealtWith
            : MarkStanding.ToRetest;
    }

    private SiteResult One(Place place)
    {
        var last = _runs
            .Where(r => r.Saw(place) && !(place == Place.ButtWeld && r.LookedAt > _sleeved))
            .MaxBy(r => r.LookedAt);
        var open = _marks
            .Where(m => m.Place == place)
            .Select(m => (Mark: m, Standing: Of(m)))
            .Where(m => m.Standing != MarkStanding.DealtWith)
            .ToList();
        var at = PlaceWords.At(place);
        SiteResult Stand(SiteState state, Sentence words, string? run = null) =>
            new(place, state, run ?? last?.Id ?? "", last?.LookedAt, words);

        if (open.Find(m => m.Standing == MarkStanding.Scrapped) is { Mark: { } scrapped })
            return Stand(SiteState.Stopped, $"Scrapped for a mark at {at}.", scrapped.RunId);
        if (open.Find(m => m.Standing == MarkStanding.Open && m.Mark.Stops) is { Mark: { } stop })
            return Stand(
                SiteState.Stopped,
                stop.Crack
                    ? $"A crack at {at}. Scrap the shaft."
                    : (Sentence)
                        $"A mark at {at} stops the job. Find out what it is; dress it out or scrap the shaft.",
                stop.RunId
            );
        if (open.Find(m => m.Standing == MarkStanding.ToRetest) is { Mark: { } worked })
            return Stand(
                SiteState.ToRetest,
                $"The mark at {at} was worked on. Test it again.",
                worked.RunId
            );
        if (_lost.FirstOrDefault(m => m.Place == place) is { } lost)
            return Stand(
                SiteState.ToRetest,
                $"A test that was taken back had found {(lost.Crack ? "a crack" : "a mark")} at {at}. Test it again.",
                lost.RunId
            );
        if (open.Count > 0)
            return Stand(
                SiteState.Indication,
                open[0].Mark.Length is null
                    ? $"A mark at {at} is not measured. Measure it."
                    : (Sentence)
                        $"A mark at {at} that the level accepts. Note it, and look there first the next time.",
                open[0].Mark.RunId
            );
        if (place == Place.ButtWeld && _sleeved is not null)
            return Stand(
                SiteState.Hidden,
                last is null
                    ? $"The butt is under the sleeve, untested."
                    : (Sentence)
                        $"The butt was clean when the sleeve went on. It can never be seen again: give the shaft a number of events after which it is scrapped."
            );
        if (last is null && _unshown.LastOrDefault(r => r.Saw(place)) is { } unshown)
            return Stand(SiteState.NotTested, $"Looked at {at}. {unshown.Words}");
        return last is null
            ? Stand(SiteState.NotTested, $"No test that counts has looked at {at}.")
            : Stand(SiteState.Clean, $"Clean at {at}.");
    }
}
