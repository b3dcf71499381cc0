using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

/// <summary>Ends in a vee: which shims bring them in line?</summary>
public sealed partial class EndsInAVee
{
    /// <summary>Its place in the address.</summary>
    public const string Place = "ends-in-a-vee";

    private static readonly Option[] Sets =
    [
        new(nameof(BladeSet.Metric20), "20 blades", "0.05 to 1.00 mm by 0.05"),
        new(nameof(BladeSet.Metric13), "13 blades", "0.05 to 1.00 mm, by 0.10 from 0.30"),
        new(nameof(BladeSet.Listed), "My own", "you type them"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "Ends in a vee";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new("diameters", "How thick is each end, where it lies in the vee?"),
        new("blades", "Which feeler blades are on hand?", "Then the set of 20 is taken."),
        new(
            "angle",
            "What is the angle of the vee?",
            "The shims do not need it. Without it the other ways of packing are not shown."
        ),
    ];

    /// <inheritdoc/>
    public override Answer? Answer
    {
        get
        {
            if (Result.Weld is not { Shim: { } shim } weld)
                return null;
            if (weld.ShimUnder is not { } end)
                return new(
                    $"No shims: the ends are alike to within",
                    $"{Say.Fine(weld.ShimUncertainty)}",
                    $".",
                    0
                )
                {
                    Unsettled = $"the ends would be alike to within",
                };
            return new(
                $"Under the {(end == ShaftEnd.Inner ? "inner" : "outer")} piece, on each face of the vee, put",
                $"{Say.Fine(shim)}",
                $", give or take {Say.Fine(weld.ShimUncertainty)}.",
                shim
            )
            {
                Unsettled =
                    $"each face of the vee under the {(end == ShaftEnd.Inner ? "inner" : "outer")} piece would need",
            };
        }
    }

    private string? FromCut =>
        JobId is not null && Result.Cut is { InnerDiameter: { } a, OuterDiameter: { } b }
            ? $"Left empty, the cut's own diameters count: {Say.Fine(a).In(Preferences.Display)} and {Say.Fine(b).In(Preferences.Display)}."
            : null;

    private string? BladeTrouble
    {
        get
        {
            foreach (var word in Words())
            {
                if (Blade(word).Refusal is { } no)
                    return $"“{no.Value}” {no.Problem}. Wanted: {no.Accepted}.";
            }
            return null;
        }
    }

    /// <inheritdoc/>
    protected override string WhyNot(string key, IReadOnlyDictionary<string, string> taken) =>
        key == "blades" ? BladeTrouble ?? "" : base.WhyNot(key, taken);

    /// <summary>A list counts while it is picked.</summary>
    protected override bool Bears(string key) =>
        key != "blades" || Draft["set"] == nameof(BladeSet.Listed);

    private IReadOnlyList<string> Taken
    {
        get
        {
            var lines = new List<string>
            {
                "Both ends round where they lie, and the same caliper used for both.",
                "Both vees cut alike, or one vee long enough for both.",
            };
            if (!Draft.Has("set"))
                lines.Add("The set of 20 blades, 0.05 to 1.00 mm.");
            return lines;
        }
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var set = Enum.TryParse<BladeSet>(Draft["set"], out var named) ? named : BladeSet.Unsaid;
        if (Draft.IsEmpty && basis.Weld is null)
            return basis;
        var old = basis.Weld ?? new();
        var blades = Blades(old.Blades);
        // What a job does not say is taken from its list; it need not begin to say it.
        if (
            set == BladeSet.Listed
            && old is { BladeSet: BladeSet.Unsaid, Blades.Count: > 0 }
            && blades.Count > 0
        )
            set = BladeSet.Unsaid;
        return basis with
        {
            Weld = old with
            {
                InnerDiameter = Draft.Take("inner", WeldFields.InnerDiameter, old.InnerDiameter),
                OuterDiameter = Draft.Take("outer", WeldFields.OuterDiameter, old.OuterDiameter),
                VeeAngle = Draft.Take("angle", WeldFields.VeeAngle, old.VeeAngle),
                BladeSet = set,
                Blades = blades,
            },
        };
    }

    /// <summary>The listed blades over those of the job. Picking a set does not take the list out, nor does one that is
    /// refused.</summary>
    private IReadOnlyList<Measured<Distance>> Blades(IReadOnlyList<Measured<Distance>> old)
    {
        if (Draft["blades"] == Listed(old) || (Keeping && BladeTrouble is not null))
            return old;
        return
        [
            .. Words()
                .Select(w => Blade(w).Measure)
                .OfType<Measured<Distance>>()
                .Take(WeldFields.MostBlades),
        ];
    }

    private static string Listed(IReadOnlyList<Measured<Distance>> blades) =>
        string.Join("; ", blades.Select(b => Units.WithUnit(b.Typed, b.Unit)));

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        if (job.Weld is not { } weld)
            return;
        Draft.Lay(answers, "inner", weld.InnerDiameter);
        Draft.Lay(answers, "outer", weld.OuterDiameter);
        Draft.Lay(answers, "angle", weld.VeeAngle);
        if (weld.BladeSet != BladeSet.Unsaid)
            answers["set"] = weld.BladeSet.ToString();
        else if (weld.Blades.Count > 0)
            answers["set"] = nameof(BladeSet.Listed);
        if (weld.Blades.Count > 0)
            answers["blades"] = Listed(weld.Blades);
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.004
            ? null
            : Say.Fine(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " thicker than before" : " thinner than before");

    /// <summary>The typed list, a blade each. A comma between digits may be a decimal comma, so only blanks, semicolons and
    /// line ends part them; a unit belongs to the number before it.</summary>
    private List<string> Words() => Words(Draft["blades"]);

    private static List<string> Words(string typed)
    {
        var words = new List<string>();
        foreach (
            var word in typed.Split(
                [' ', ';', '\n', '\r', '\t'],
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
            )
        )
        {
            if (words.Count > 0 && !word.Any(char.IsAsciiDigit))
                words[^1] += " " + word;
            else
                words.Add(word.TrimEnd(','));
        }
        return words;
    }

    /// <inheritdoc/>
    public override string Called(string key) =>
        key switch
        {
            "inner" => "the inner piece",
            "outer" => "the outer piece",
            "set" => "which blades are on hand",
            "blades" => "the list of blades",
            "angle" => "the angle of the vee",
            _ => base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        key == "set" ? Option.Worded(Sets, text) : text;

    /// <inheritdoc/>
    protected override bool Same(string key, string typed, string taken)
    {
        return base.Same(key, typed, taken)
            || (key == "blades" && Each(typed).SequenceEqual(Each(taken)));

        IEnumerable<string> Each(string list) =>
            Words(list).Select(w => Units.WithUnit(w, Preferences.Bare<Distance>(fine: true)));
    }

    private Reading<Distance> Blade(string word) =>
        WeldFields.Blade.Read(Units.WithUnit(word, Preferences.Bare<Distance>(fine: true)));
}
