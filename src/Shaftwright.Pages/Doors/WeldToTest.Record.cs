using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.JobFile;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

// What stands in the draft, and the record that it becomes: there it only grows. What was changed here is a correction there,
// what was taken back is withdrawn there, and a test begun again leaves the first attempt where it was.
public sealed partial class WeldToTest
{
    private const string Begun = "begun";
    private const char Bar = '|';

    private static TestStep[] AllSteps { get; } = Enum.GetValues<TestStep>();

    /// <summary>An instant as the draft keeps it, to the second, with its offset.</summary>
    internal static string Write(DateTimeOffset at) =>
        at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);

    private static DateTimeOffset? Instant(string text) =>
        DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out var at)
            ? at
            : null;

    private static string NewId() => Guid.NewGuid().ToString("N");

    private TestRun LayRun(TestRun? old)
    {
        var run = old ?? new TestRun { Id = TestId, Method = Method };
        return run with
        {
            Notes = [.. run.Notes, .. NewNotes(run)],
            Steps = [.. run.Steps, .. NewSteps(run)],
            Indications = [.. run.Indications, .. NewMarks(run)],
            Photos = [.. run.Photos, .. NewPhotos(run)],
        };
    }

    private IEnumerable<TestNote> NewNotes(TestRun run)
    {
        var known = TestConditions.Of(run);
        var dwell = Draft.Take("dwell", CrackTestFields.MakersDwell);
        var development = Draft.Take("development", CrackTestFields.MakersDevelopment);
        var warm = Draft.Take("warm", CrackTestFields.PartTemperature);
        var light = Draft.Take("light", CrackTestFields.Light);
        var violet = Draft.Take("violet", CrackTestFields.UltraViolet);
        var between = Draft.Take("between", CrackTestFields.BetweenDirections);
        var places = PlacesIn(Draft["places"]);
        var emptied = new TestNote
        {
            MakersDwell = Emptied(known.MakersDwell, dwell),
            MakersDevelopment = Emptied(known.MakersDevelopment, development),
            PartTemperature = Emptied(known.PartTemperature, warm),
            Light = Emptied(known.Light, light),
            UltraViolet = Emptied(known.UltraViolet, violet),
            BetweenDirections = Emptied(known.BetweenDirections, between),
            Places = places.Count == 0 ? known.Places : [],
        };
        // Notes add to each other, so that a thing is unsaid only by putting right every note that says it.
        foreach (var note in Entries.Standing(run.Notes))
        {
            var left = note with
            {
                MakersDwell = emptied.MakersDwell is null ? note.MakersDwell : null,
                MakersDevelopment = emptied.MakersDevelopment is null
                    ? note.MakersDevelopment
                    : null,
                PartTemperature = emptied.PartTemperature is null ? note.PartTemperature : null,
                Light = emptied.Light is null ? note.Light : null,
                UltraViolet = emptied.UltraViolet is null ? note.UltraViolet : null,
                BetweenDirections = emptied.BetweenDirections is null
                    ? note.BetweenDirections
                    : null,
                Places = emptied.Places.Count == 0 || note.Places.Count == 0 ? note.Places : [],
            };
            if (left != note)
                yield return left with
                {
                    Id = NewId(),
                    Corrects = note.Id,
                };
        }
        var added = new TestNote
        {
            MakersDwell = Added(known.MakersDwell, dwell),
            MakersDevelopment = Added(known.MakersDevelopment, development),
            PartTemperature = Added(known.PartTemperature, warm),
            Light = Added(known.Light, light),
            UltraViolet = Added(known.UltraViolet, violet),
            BetweenDirections = Added(known.BetweenDirections, between),
            Places = places.SequenceEqual(known.Places) ? [] : places,
        };
        if (added != new TestNote() with { Places = added.Places } || added.Places.Count > 0)
            yield return added with
            {
                Id = NewId(),
            };
    }

    private static Measured<T>? Emptied<T>(Measured<T>? known, Measured<T>? now)
        where T : IDimension<T> => now is null ? known : null;

    private static Measured<T>? Added<T>(Measured<T>? known, Measured<T>? now)
        where T : IDimension<T> =>
        now is not null && (known is null || !Units.Same(known.Typed, now.Typed)) ? now : null;

    private IEnumerable<StepDone> NewSteps(TestRun run)
    {
        var attempts = Attempts(run);
        _ = int.TryParse(Draft[Begun], CultureInfo.InvariantCulture, out var attempt);
        var current = attempt < attempts.Count ? attempts[attempt] : [];
        // Begun again, and that taken back: what was noted of the later attempt did not happen.
        foreach (var later in attempts.Skip(attempt + 1).SelectMany(a => a.Values))
            yield return TakenBack(later);
        foreach (var step in AllSteps)
        {
            var at = Instant(Draft[TimeKey(step)]);
            var old = current.GetValueOrDefault(step);
            if (at is { } now && old is null)
                yield return new()
                {
                    Id = NewId(),
                    Step = step,
                    At = now,
                };
            else if (at is { } other && old is not null && Write(old.At) != Write(other))
                yield return new()
                {
                    Id = NewId(),
                    Step = step,
                    At = other,
                    Corrects = old.Id,
                };
            else if (at is null && old is not null)
                yield return TakenBack(old);
        }
    }

    private static StepDone TakenBack(StepDone step) =>
        step with
        {
            Id = NewId(),
            Corrects = step.Id,
            Withdrawn = true,
        };

    /// <summary>The steps that stand, attempt by attempt: cleaning again begins one.</summary>
    private static List<Dictionary<TestStep, StepDone>> Attempts(TestRun? run)
    {
        var attempts = new List<Dictionary<TestStep, StepDone>>();
        foreach (var step in run is null ? [] : Entries.Standing(run.Steps))
        {
            if (attempts.Count == 0 || (step.Step == TestStep.Cleaned && attempts[^1].Count > 0))
                attempts.Add([]);
            attempts[^1][step.Step] = step;
        }
        return attempts;
    }

    private IEnumerable<Indication> NewMarks(TestRun run)
    {
        var known = run.Indications.Select(m => m.Id).ToHashSet(StringComparer.Ordinal);
        List<Indication> added =
        [
            .. Draft
                .Keys(MarkKey(""))
                .Where(k => !known.Contains(k[MarkKey("").Length..]))
                .Order(StringComparer.Ordinal)
                .Select(k => Mark(k[MarkKey("").Length..], Draft[k])),
        ];
        foreach (var gone in Entries.Standing(run.Indications))
        {
            if (!Draft.Has(MarkKey(gone.Id)) && !added.Exists(a => a.Corrects == gone.Id))
                yield return gone with
                {
                    Id = NewId(),
                    Corrects = gone.Id,
                    Withdrawn = true,
                };
        }
        foreach (var mark in added)
            yield return mark;
    }

    private IEnumerable<PhotoTaken> NewPhotos(TestRun run)
    {
        var known = run.Photos.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var key in Draft.Keys(PhotoKey("")).Order(StringComparer.Ordinal))
        {
            var id = key[PhotoKey("").Length..];
            if (!known.Contains(id) && Draft[key].Split(Bar) is [var name, var at, ..])
                yield return new()
                {
                    Id = id,
                    Sha256 = name,
                    At = Instant(at) ?? default,
                };
        }
        foreach (var gone in Entries.Standing(run.Photos))
        {
            if (!Draft.Has(PhotoKey(gone.Id)))
                yield return gone with
                {
                    Id = NewId(),
                    Corrects = gone.Id,
                    Withdrawn = true,
                };
        }
    }

    private IEnumerable<Decision> NewDecisions(CrackTestInput input, TestRun run)
    {
        var known = input.Decisions.Select(d => d.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var key in Draft.Keys(DecisionKey("")).Order(StringComparer.Ordinal))
        {
            var id = key[DecisionKey("").Length..];
            if (
                !known.Contains(id)
                && Draft[key].Split(Bar, 4) is [var mark, var what, var at, var note]
                && Enum.TryParse<MarkDecision>(what, out var done)
            )
                yield return new()
                {
                    Id = id,
                    Indication = mark,
                    What = done,
                    At = Instant(at) ?? default,
                    Note = note,
                };
        }
        foreach (var gone in OfRun(input, run))
        {
            if (!Draft.Has(DecisionKey(gone.Id)))
                yield return gone with
                {
                    Id = NewId(),
                    Corrects = gone.Id,
                    Withdrawn = true,
                };
        }
    }

    /// <summary>The decisions that stand about a test's marks.</summary>
    private static IEnumerable<Decision> OfRun(CrackTestInput input, TestRun run) =>
        Entries
            .Standing(input.Decisions)
            .Where(d => run.Indications.Any(m => m.Id == d.Indication));

    private static string Text(Indication mark) =>
        string.Join(
            Bar,
            mark.Place,
            mark.Position?.Typed,
            mark.Angle?.Typed,
            mark.Length?.Typed,
            mark.Width?.Typed,
            mark.Direction?.Typed,
            mark.Crack switch
            {
                true => "yes",
                false => "no",
                _ => "",
            },
            mark.Corrects
        );

    private static Indication Mark(string id, string text)
    {
        var parts = text.Split(Bar);
        string Part(int i) => i < parts.Length ? parts[i] : "";
        return new()
        {
            Id = id,
            Place = Enum.TryParse<Place>(Part(0), out var place) ? place : Place.ButtWeld,
            Position = Read(Part(1), CrackTestFields.Position),
            Angle = Read(Part(2), CrackTestFields.MarkAngle),
            Length = Read(Part(3), CrackTestFields.Length),
            Width = Read(Part(4), CrackTestFields.Width),
            Direction = Read(Part(5), CrackTestFields.Direction),
            Crack = Part(6) switch
            {
                "yes" => true,
                "no" => false,
                _ => null,
            },
            Corrects = Part(7),
        };
    }

    private static Measured<T>? Read<T>(string text, Field<T> field)
        where T : IDimension<T> => text.Length == 0 ? null : field.Read(text).Measure;

    private static List<Place> PlacesIn(string text) =>
        [
            .. text.Split(',', StringSplitOptions.RemoveEmptyEntries)
                .Select(p => Enum.TryParse<Place>(p, out var place) ? place : (Place?)null)
                .OfType<Place>()
                .Distinct()
                .Order(),
        ];

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (
            job.CrackTest is not { } input
            || input.Tests.FirstOrDefault(t => t.Id == TestId) is not { } run
        )
            return;
        answers["method"] = run.Method.ToString();
        var known = TestConditions.Of(run);
        Draft.Lay(answers, "dwell", known.MakersDwell);
        Draft.Lay(answers, "development", known.MakersDevelopment);
        Draft.Lay(answers, "warm", known.PartTemperature);
        Draft.Lay(answers, "light", known.Light);
        Draft.Lay(answers, "violet", known.UltraViolet);
        Draft.Lay(answers, "between", known.BetweenDirections);
        if (known.Places.Count > 0)
            answers["places"] = string.Join(',', known.Places.Order());
        var attempts = Attempts(run);
        if (attempts.Count > 1)
            answers[Begun] = (attempts.Count - 1).ToString(CultureInfo.InvariantCulture);
        foreach (var (step, done) in attempts.LastOrDefault() ?? [])
            answers[TimeKey(step)] = Write(done.At);
        foreach (var mark in Entries.Standing(run.Indications))
            answers[MarkKey(mark.Id)] = Text(mark);
        foreach (var photo in Entries.Standing(run.Photos))
            answers[PhotoKey(photo.Id)] = $"{photo.Sha256}{Bar}{Write(photo.At)}";
        foreach (var done in OfRun(input, run))
            answers[DecisionKey(done.Id)] =
                $"{done.Indication}{Bar}{done.What}{Bar}{Write(done.At)}{Bar}{done.Note}";
    }

    private static string TimeKey(TestStep step) => "t/" + step;

    private static string MarkKey(string id) => "m/" + id;

    private static string PhotoKey(string id) => "p/" + id;

    private static string DecisionKey(string id) => "d/" + id;
}
