using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Pages.Doors;
using Shaftwright.Pages.Outbox;
using Shaftwright.Pages.Pictures;
using Shaftwright.Truing;

namespace Shaftwright.Pages.Cards;

/// <summary>Which door, picture and part of the document belong to an operation of the route card.</summary>
public static class Ways
{
    /// <summary>The door that an operation's readings are entered behind; null where nothing is entered.</summary>
    public static (string Slug, string Words)? Of(string operation) =>
        operation switch
        {
            "measure-car" or "length" => (CarOnStands.Place, "Readings at the car"),
            "check-joints" => (JobJoints.Place, "What the joints allow"),
            "strength" => (JobTorque.Place, "The torque, here and in the donors"),
            "walk-donors" => (TwoShafts.Place, "Walk the shafts"),
            "cut" => (TwoShafts.Place + "/overall", "Length, sleeve and cuts"),
            "set-up" => (EndsInAVee.Place, "Ends in the vee"),
            "prepare-ends" => (JobWeld.Place + "/groove", "The groove and the filler"),
            "weld-sample" => (JobWeld.Place + "/sample", "What the sample gave"),
            "check-tacks" => (JobWeld.Place + "/tacks", "The dial on both sides"),
            "preheat" => (JobWeld.Place + "/preheat", "Steel, arc and preheat"),
            "weld" => (JobWeld.Place + "/beads", "Bead by bead"),
            "temper" => (JobWeld.Place + "/temper", "Between runs and after"),
            "sleeve" => (JobWeld.Place + "/sleeve", "The sleeve's seams"),
            "fit" => (FitShaft.Place, "Step by step"),
            _ when IsCrackTest(operation) => (
                $"{WeldToTest.Slot}?for={operation}",
                "A new crack test"
            ),
            _ => MomentOf(operation) is { } moment
                ? (UnderTheDial.Place + "?moment=" + moment, "A new turn under the dial")
                : null,
        };

    /// <summary>The operation that a screen of a door belongs to; null where none does.</summary>
    /// <param name="screen">The screen's address within the job: "two-shafts/inner-end".</param>
    /// <param name="job">The job.</param>
    /// <param name="operations">Codes of the operations there are, in their order.</param>
    public static string? OperationAt(string screen, Job job, IReadOnlyList<string> operations)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(job);
        var (path, query) = screen.Split('?') is [var p, var q] ? (p, Asked(q)) : (screen, []);
        var door = path.Split('/')[0];
        return door switch
        {
            TwoShafts.Place => path.EndsWith("-end", StringComparison.Ordinal)
                ? "walk-donors"
                : "cut",
            UnderTheDial.Place => OfMoment(
                job.Truing?.Turns.FirstOrDefault(t =>
                    t.Id == query.GetValueOrDefault("turn")
                )?.Moment
                    ?? (
                        Enum.TryParse<Moment>(query.GetValueOrDefault("moment"), out var asked)
                            ? asked
                            : null
                    )
            ),
            WeldToTest.Slot => query.GetValueOrDefault("for")
                ?? operations.FirstOrDefault(c =>
                    TestsOf(c, job).Any(t => t.Run.Id == query.GetValueOrDefault("test"))
                ),
            _ => operations.FirstOrDefault(c => Is(Of(c), path) || Is(AlsoOf(c), path))
                ?? operations.FirstOrDefault(c => Of(c)?.Slug.Split('/')[0] == door),
        };

        static bool Is((string Slug, string Words)? way, string path) => way?.Slug == path;

        string? OfMoment(Moment? moment) =>
            moment is null ? null : operations.FirstOrDefault(c => MomentOf(c) == moment);

        static Dictionary<string, string> Asked(string query) =>
            query
                .Split('&')
                .Select(pair => pair.Split('=', 2))
                .Where(pair => pair.Length == 2)
                .ToDictionary(pair => pair[0], pair => Uri.UnescapeDataString(pair[1]));
    }

    /// <summary>A second door of an operation; null where there is none.</summary>
    public static (string Slug, string Words)? AlsoOf(string operation) =>
        operation switch
        {
            "set-up" => (JobWeld.Place + "/vees", "Packing, two vees, a taper"),
            "crack-test-butt" => (JobWeld.Place + "/seam", "Look at the seam first"),
            "crack-test-sleeved" => (JobWeld.Place + "/seam-ends", "Look at the seams first"),
            "measure-car" => (JobLinkage.Place, "The pivots, by tape"),
            "walk-donors" => ("shelf", "Choose them from the shelf"),
            _ => null,
        };

    /// <summary>True for the operations that are crack tests.</summary>
    public static bool IsCrackTest(string operation)
    {
        ArgumentNullException.ThrowIfNull(operation);
        return operation.StartsWith("crack-test-", StringComparison.Ordinal);
    }

    /// <summary>The tests of a job that looked where an operation asks to; those of which nobody said where belong to each.</summary>
    public static IEnumerable<(TestRun Run, string Words)> TestsOf(string operation, Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (!IsCrackTest(operation) || job.CrackTest is not { } input)
            yield break;
        var asked = WeldToTest.PlacesOf(operation);
        foreach (var run in Entries.Standing(input.Tests))
        {
            var places = TestConditions.Of(run).Places;
            if (asked.Length > 0 && places.Count > 0 && !places.Any(asked.Contains))
                continue;
            var steps = Entries.Standing(run.Steps);
            var last = steps.Count > 0 ? steps[^1] : null;
            yield return (
                run,
                last is null
                    ? "Test begun"
                    : $"Test of {last.At.ToString("d MMMM, HH:mm", CultureInfo.InvariantCulture)}"
            );
        }
    }

    /// <summary>The moment of the turns under the dial that belong to an operation; null where none do.</summary>
    public static Moment? MomentOf(string operation) =>
        operation switch
        {
            "tack" => Moment.Tacked,
            "true-butt" => Moment.ButtWelded,
            "true-sleeved" => Moment.Sleeved,
            "first-run" => Moment.AfterFirstRun,
            _ => null,
        };

    /// <summary>Whether a shaft is pressed at an operation.</summary>
    public static bool IsPressed(string operation) => operation is "true-butt" or "true-sleeved";

    /// <summary>The drawing to scale that shows an operation's answer.</summary>
    public static Scaled? PictureOf(string operation, JobResult result, Display display) =>
        operation switch
        {
            "length" => ToScale.Plunge(result, display),
            "walk-donors" => ToScale.Donors(result, display),
            "cut" => ToScale.Made(result, display),
            "set-up" => ToScale.Vee(result, display),
            "prepare-ends" => ToScale.Groove(result, display),
            "weld" => ToScale.Beads(result.Beads, display),
            _ => MomentOf(operation) is { } moment ? ToScale.Bow(result, moment, display) : null,
        };

    /// <summary>Whether an entry that waits touches an operation.</summary>
    public static bool Belongs(string operation, OutboxRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.Path.Length == 0)
            return true;
        if (row.Path.StartsWith("/records", StringComparison.Ordinal))
            return row.Text.Contains($"\"{operation}\"", StringComparison.Ordinal);
        string[] parts = operation switch
        {
            "measure-car" => ["/corner"],
            "check-joints" => ["/joints"],
            "length" => ["/length"],
            "walk-donors" => ["/donors", "/shelf"],
            "cut" => ["/cut"],
            "strength" => ["/car", "/donorCars", "/strength"],
            "set-up" or "prepare-ends" or "check-tacks" or "preheat" or "weld" or "temper" =>
            [
                "/weld",
            ],
            "weld-sample" or "sleeve" => ["/strength"],
            "fit" => ["/fit"],
            _ when IsCrackTest(operation) => ["/crackTest", "/weld/seams", "/weld/seamLevel"],
            _ => MomentOf(operation) is null ? [] : ["/truing", "/press"],
        };
        return Array.Exists(
            parts,
            p => row.Path == p || row.Path.StartsWith(p + "/", StringComparison.Ordinal)
        );
    }
}
