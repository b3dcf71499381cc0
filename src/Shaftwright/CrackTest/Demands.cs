namespace Shaftwright.CrackTest;

/// <summary>Strokes of the press that nobody noted the time of, by the id of the last of them.</summary>
/// <param name="BeforeSleeve">Before the sleeve went on; null for none.</param>
/// <param name="AfterSleeve">After it; null for none.</param>
internal sealed record UntimedStrokes(string? BeforeSleeve, string? AfterSleeve);

/// <summary>Which tests the work done asks for.</summary>
internal static class Demands
{
    private static readonly Place[] s_butt = [Place.ButtWeld];
    private static readonly Place[] s_seams = [Place.SleeveInnerEnd, Place.SleeveOuterEnd];

    /// <summary>The demands, in order of time.</summary>
    /// <param name="work">The work, in order of time.</param>
    /// <param name="tests">The tests that count.</param>
    /// <param name="temperAsked">Whether the butt must be tempered: then its test comes after that.</param>
    /// <param name="strokesUntimed">Whether strokes of the press are on record of which nobody knows when they were.</param>
    public static List<TestDemand> Of(
        IReadOnlyList<WorkDone> work,
        IReadOnlyList<CountingTest> tests,
        bool temperAsked = false,
        UntimedStrokes? strokesUntimed = null
    )
    {
        var sleeved = WorkLog.SleevedAt(work);
        var demands = new List<TestDemand>();
        for (var i = 0; i < work.Count; i++)
        {
            var w = work[i];
            var open = sleeved is null || w.At < sleeved;
            switch (w.Kind)
            {
                case WorkKind.ButtWelded or WorkKind.WeldRepaired when open:
                    var tempered = TemperedAfter(w.At);
                    var butt = Answer(
                        DemandKind.ButtBeforeSleeve,
                        w,
                        tempered ?? w.At,
                        s_butt,
                        sleeved ?? FirstRunAfter(w.At),
                        sleeved is not null
                    );
                    demands.Add(
                        temperAsked && tempered is null && butt.AnsweredBy is not null
                            ? butt with
                            {
                                AnsweredBy = null,
                                Late = false,
                                Lack = DemandLack.Tempering,
                            }
                            : butt
                    );
                    break;
                // A sleeve is welded over a butt, whether or not anybody wrote the butt down.
                case WorkKind.SleeveWelded
                    when w.At == sleeved && !work.Any(b => IsButt(b.Kind) && b.At < sleeved):
                    demands.Add(
                        Answer(
                            DemandKind.ButtBeforeSleeve,
                            w,
                            DateTimeOffset.MinValue,
                            s_butt,
                            sleeved,
                            true
                        )
                    );
                    break;
                // Of strokes with nothing between them the last asks: a test after it answers for all.
                case WorkKind.Pressed when i + 1 < work.Count && work[i + 1].Kind == w.Kind:
                    break;
                case WorkKind.Pressed:
                    demands.Add(
                        Answer(
                            DemandKind.AfterPressing,
                            w,
                            w.At,
                            open ? s_butt : s_seams,
                            open && sleeved is not null ? sleeved : FirstRunAfter(w.At),
                            open && sleeved is not null
                        )
                    );
                    break;
                case WorkKind.ProofTwisted or WorkKind.FirstEvent:
                    demands.Add(
                        Answer(
                            w.Kind == WorkKind.FirstEvent
                                ? DemandKind.AfterFirstEvent
                                : DemandKind.AfterProofTwist,
                            w,
                            w.At,
                            sleeved is null ? s_butt : s_seams,
                            FirstRunAfter(w.At),
                            false
                        )
                    );
                    break;
                default:
                    break;
            }
        }
        // Each heat starts the two days again, so only the last one asks.
        if (work.LastOrDefault(w => WorkLog.IsHeat(w.Kind)) is { } heat)
        {
            var due = heat.At.AddSeconds(TestLimits.HydrogenDelay);
            demands.Add(
                Answer(
                    DemandKind.AfterTwoDays,
                    heat,
                    due,
                    sleeved is null ? s_butt : s_seams,
                    FirstRunAfter(heat.At),
                    false
                )
            );
        }
        if (strokesUntimed?.BeforeSleeve is { } earlier && !IsPressed(late: false))
            demands.Add(Untimed(earlier, s_butt));
        if (strokesUntimed?.AfterSleeve is { } later && !IsPressed(late: true))
            demands.Add(Untimed(later, s_seams));
        return [.. demands.OrderBy(d => d.DueFrom)];

        TestDemand Untimed(string id, Place[] places) =>
            new(
                DemandKind.AfterPressing,
                id,
                work.Count > 0 ? work[^1].At : DateTimeOffset.MinValue,
                null,
                false,
                places,
                null,
                false,
                DemandLack.TimeOfStrokes
            );

        bool IsPressed(bool late) =>
            work.Any(w =>
                w.Kind == WorkKind.Pressed && (late ? w.At > sleeved : !(w.At > sleeved))
            );

        DateTimeOffset? TemperedAfter(DateTimeOffset at) =>
            work.Where(w => w.Kind == WorkKind.Tempered && w.At >= at && !(w.At > sleeved))
                .Select(w => (DateTimeOffset?)w.At)
                .LastOrDefault();

        DateTimeOffset? FirstRunAfter(DateTimeOffset at) =>
            work.Where(w =>
                    w.At > at
                    && w.Kind is WorkKind.FirstRun or WorkKind.FirstEvent or WorkKind.LaterRun
                )
                .Select(w => (DateTimeOffset?)w.At)
                .FirstOrDefault();

        static bool IsButt(WorkKind kind) => kind is WorkKind.ButtWelded or WorkKind.WeldRepaired;

        TestDemand Answer(
            DemandKind kind,
            WorkDone after,
            DateTimeOffset due,
            Place[] places,
            DateTimeOffset? before,
            bool hidden
        )
        {
            // Two tests, one at each end of the sleeve, answer as one does: the last of them is when it is answered.
            CountingTest? last = null;
            foreach (var place in places)
            {
                var first = tests
                    .Where(t =>
                        // Begun after it too: what was on the part before the work says nothing of it.
                        t.BeganAt >= due
                        && !(hidden && t.LookedAt > before)
                        && t.Saw(place)
                    )
                    .MinBy(t => t.LookedAt);
                if (first is null)
                    return new(kind, after.Id, due, before, hidden, places, null, false);
                if (last is null || first.LookedAt > last.LookedAt)
                    last = first;
            }
            return new(
                kind,
                after.Id,
                due,
                before,
                hidden,
                places,
                last?.Id,
                last?.LookedAt > before
            );
        }
    }
}
