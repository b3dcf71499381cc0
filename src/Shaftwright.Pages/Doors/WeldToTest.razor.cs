using System.Globalization;
using Microsoft.AspNetCore.Components;
using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>A weld to test: one step at a time with its clock, and is this mark acceptable?</summary>
public sealed partial class WeldToTest
{
    /// <summary>Its place in the address.</summary>
    public const string Slot = "weld-to-test";

    private static readonly Option[] Methods =
    [
        new(nameof(TestMethod.ColourPenetrant), "Penetrant, red on white"),
        new(
            nameof(TestMethod.FluorescentPenetrant),
            "Penetrant, glowing",
            "in the dark, UV-A lamp"
        ),
        new(nameof(TestMethod.MagneticParticle), "Magnetic particle"),
        new(
            nameof(TestMethod.FluorescentMagneticParticle),
            "Magnetic particle, glowing",
            "in the dark, UV-A lamp"
        ),
    ];

    private static readonly Option[] PlaceNames =
    [
        new(nameof(Place.ButtWeld), "Butt weld"),
        new(nameof(Place.SleeveInnerEnd), "Sleeve, inner end"),
        new(nameof(Place.SleeveOuterEnd), "Sleeve, outer end"),
        new(nameof(Place.InnerSpline), "Inner spline"),
        new(nameof(Place.OuterSpline), "Outer spline"),
        new(nameof(Place.Bar), "Plain bar"),
    ];

    private static readonly Step[] Penetrant =
    [
        new("method", "How do you look for cracks?"),
        new(
            "maker",
            "What times does the can ask for?",
            "Then 15 min of penetrant is aimed at, and the standard's own limits count."
        ),
        new(
            "conditions",
            "How warm is the part, and how light is it?",
            "Then nobody can say later whether the test counted."
        ),
        new("steps", "One step at a time."),
        new("marks", "Where did you look, and what shows?"),
    ];

    private static readonly Step[] Magnetic =
    [
        Penetrant[0],
        new(
            "maker",
            "How far do you turn the field?",
            "Then nobody can say whether a crack along the field was missed."
        ),
        .. Penetrant[2..],
    ];

    private string? _part;

    /// <summary>The device's clock.</summary>
    [Inject]
    public required BenchClock Beat { get; set; }

    /// <summary>Which test of the job it is; null for one without a job.</summary>
    [SupplyParameterFromQuery(Name = "test")]
    public string? Test { get; set; }

    /// <summary>Which operation of the route card asked for a new test; it says where to look.</summary>
    [SupplyParameterFromQuery(Name = "for")]
    public string? For { get; set; }

    /// <inheritdoc/>
    public override string Slug => Slot;

    /// <inheritdoc/>
    public override string Title => "A weld to test";

    /// <inheritdoc/>
    public override string DraftKey => Test is null ? base.DraftKey : base.DraftKey + " " + Test;

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps => IsMagnetic ? Magnetic : Penetrant;

    /// <inheritdoc/>
    public override bool IsRecord => JobId is not null;

    /// <inheritdoc/>
    public override bool ActsItself =>
        (Index == 3 && Procedure.At(Run, Beat.Now).Next is not null)
        || (Index == 4 && Draft.Has("n/place"));

    private string TestId => _part ?? Test ?? "this";

    private TestMethod Method =>
        Enum.TryParse<TestMethod>(Draft["method"], out var method)
            ? method
            : TestMethod.ColourPenetrant;

    private bool IsMagnetic =>
        Method is TestMethod.MagneticParticle or TestMethod.FluorescentMagneticParticle;

    private bool Glows =>
        Method is TestMethod.FluorescentPenetrant or TestMethod.FluorescentMagneticParticle;

    /// <summary>True once something of the test stands in its record: then how it is done cannot change any more.</summary>
    private bool HasBegun =>
        Draft.Keys("t/").Any() || Draft.Keys("m/").Any() || Draft.Keys("p/").Any();

    private TestRun Run => Job.CrackTest!.Tests.First(t => t.Id == TestId);

    private CrackTestResult Tested => Result.CrackTest!;

    private RunResult? Verdict => Tested.Runs.FirstOrDefault(r => r.RunId == TestId);

    private IEnumerable<MarkResult> Marks => Tested.Marks.Where(m => m.RunId == TestId);

    /// <inheritdoc/>
    public override Answer? Answer
    {
        get
        {
            if (!HasBegun)
                return null;
            // What stops outweighs what is only too long; both outweigh what is accepted.
            if (Marks.OrderBy(Weight).FirstOrDefault() is { } mark)
            {
                var site = Tested.Sites.FirstOrDefault(s => s.Place == mark.Place);
                return site is { State: SiteState.Stopped }
                    ? new(
                        mark.Stops ? $"Stop. {mark.Words}" : (Sentence)$"Stop. {site.Words}",
                        null,
                        null
                    )
                    : new(site?.Words ?? mark.Words, null, null);
            }
            if (Verdict is { Verdict: not RunVerdict.UnderWay } verdict)
                return new(verdict.Words, null, null);
            var state = Procedure.At(Run, Beat.Now);
            return state is { Phase: ClockPhase.TooEarly, Next: { } next, Due: { } due }
                ? new(
                    $"{StepWords.Name(next)} at {due.ToString("HH:mm", CultureInfo.InvariantCulture)}, not before.",
                    null,
                    null
                )
                : new(state.Words, null, null);
        }
    }

    private static int Weight(MarkResult mark) =>
        mark switch
        {
            { Stops: true } => 0,
            { Accepted: false } => 1,
            { Accepted: null } => 2,
            _ => 3,
        };

    private IReadOnlyList<string> Taken
    {
        get
        {
            var lines = new List<string>();
            if (!IsMagnetic && !Draft.Has("dwell"))
                lines.Add("15 min of penetrant to aim at (common practice, no source).");
            lines.Add(
                "Any line, and any mark at a weld, a sleeve's end or a spline, stops the job (common practice, no source)."
            );
            if (Job.CrackTest is { } input)
                lines.Add(
                    $"A round mark on plain bar is judged by level {LevelWords(input.Level)} (ISO 23277, ISO 23278)."
                );
            lines.Add("A mark is measured as it shows: that is larger than the flaw in the metal.");
            return lines;
        }
    }

    private static string LevelWords(AcceptanceLevel level) =>
        level switch
        {
            AcceptanceLevel.One => "1",
            AcceptanceLevel.Two => "2",
            AcceptanceLevel.TwoX => "2X",
            AcceptanceLevel.Three => "3",
            _ => "3X",
        };

    private IEnumerable<Finding> Found => Tested.Findings;

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var input = basis.CrackTest ?? new();
        var old = input.Tests.FirstOrDefault(t => t.Id == TestId);
        // How and how warm alone is no test yet, and its record could not be changed any more.
        if (old is null && Keeping && !HasBegun)
            return basis;
        var run = LayRun(old);
        return basis with
        {
            CrackTest = input with
            {
                Tests = old is null
                    ? [.. input.Tests, run]
                    : [.. input.Tests.Select(t => t.Id == TestId ? run : t)],
                Decisions = [.. input.Decisions, .. NewDecisions(input, run)],
            },
        };
    }

    /// <inheritdoc/>
    protected override string KeyOn(string id, string part) => base.KeyOn(id, part) + " " + part;

    /// <inheritdoc/>
    protected override Job Handed(Job basis, string part) => With(part, () => Lay(basis));

    /// <inheritdoc/>
    protected override Dictionary<string, string> TakenHanded(Job job, string part) =>
        With(part, () => base.TakenHanded(job, part));

    private T With<T>(string part, Func<T> work)
    {
        _part = part;
        try
        {
            return work();
        }
        finally
        {
            _part = null;
        }
    }

    /// <summary>A mark in hand is not noted yet.</summary>
    protected override bool Bears(string key) => !key.StartsWith("n/", StringComparison.Ordinal);

    /// <inheritdoc/>
    public override string Called(string key) =>
        key switch
        {
            "method" => "how it is tested",
            "dwell" => "the maker's dwell",
            "development" => "the maker's development",
            "warm" => "how warm the part is",
            "light" => "the light",
            "violet" => "the UV-A",
            "between" => "how far the field was turned",
            "places" => "where you looked",
            _ when key.StartsWith("t/", StringComparison.Ordinal)
                    && Enum.TryParse<TestStep>(key[2..], out var step) =>
                $"when “{StepWords.Name(step)}” was done",
            _ when key.StartsWith("m/", StringComparison.Ordinal) => "a mark",
            _ => base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key == "method" ? Option.Worded(Methods, text)
            : key == "places"
                ? string.Join(", ", text.Split(',').Select(p => Option.Worded(PlaceNames, p)))
            : key.StartsWith("t/", StringComparison.Ordinal) && Instant(text) is { } at ? Hour(at)
            : text.Replace(Bar, ' ');
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) => null;

    /// <inheritdoc/>
    public override string Address(int index) =>
        base.Address(index)
        + (Test is null ? "" : "?test=" + Uri.EscapeDataString(Test))
        + (Test is null || For is null ? "" : "&for=" + Uri.EscapeDataString(For));

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Beat.Beaten += Follow;
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        // A job holds many tests; a new one gets its id before its first step, so that a reload finds it again.
        if (JobId is not null && Test is null)
        {
            Test = NewId();
            Navigation.NavigateTo(Address(Index), replace: true);
        }
        await base.OnParametersSetAsync();
        // Where to look is proposed once its own draft is there, and not in that of the test shown before.
        if (
            Loaded
            && !HasBegun
            && !Draft.Has("places")
            && For is { } operation
            && PlacesOf(operation) is { Length: > 0 } places
        )
            Put("places", string.Join(',', places));
    }

    /// <inheritdoc/>
    protected override void Leaving() => Beat.Beaten -= Follow;

    private (ClockPhase, TestStep?) _stood;

    /// <summary>The page is drawn anew only when the clock asks for something else; the clock itself is drawn at each beat.</summary>
    private void Follow()
    {
        if (!Ready)
            return;
        var state = Procedure.At(Run, Beat.Now);
        var stands = (state.Phase, state.Next);
        if (stands == _stood)
            return;
        _stood = stands;
        InvokeAsync(StateHasChanged);
    }

    /// <summary>Where an operation of the route card asks to look.</summary>
    internal static Place[] PlacesOf(string operation) =>
        operation switch
        {
            "crack-test-butt" => [Place.ButtWeld],
            "crack-test-sleeved" => [Place.SleeveInnerEnd, Place.SleeveOuterEnd],
            _ => [],
        };

    /// <summary>The operation that asks to look at a place.</summary>
    private static string OperationOf(Place place) =>
        place is Place.SleeveInnerEnd or Place.SleeveOuterEnd
            ? "crack-test-sleeved"
            : "crack-test-butt";

    /// <summary>One change, done and left.</summary>
    private void Put(string key, string text) => Draft.SetAll(key, [new(key, text)]);

    /// <summary>An id that sorts by when it was made, so that entries keep their order.</summary>
    private string FreshId() =>
        Beat.Now.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff", CultureInfo.InvariantCulture)
        + "-"
        + NewId()[..8];

    private static string Hour(DateTimeOffset at) =>
        at.ToString("HH:mm:ss", CultureInfo.InvariantCulture);
}
