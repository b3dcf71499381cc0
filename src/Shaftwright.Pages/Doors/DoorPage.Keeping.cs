using Microsoft.JSInterop;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

// The draft, the job under it, and whoever else changes that job.
public abstract partial class DoorPage
{
    private string? _loading;
    private string? _loaded;
    private string? _job;
    private bool _here = true;
    private Task _keeping = Task.CompletedTask;

    // What the job says, what of it the hand has changed (and over what), and what it had changed where the job moved meanwhile.
    private Dictionary<string, string> _taken = [];
    private Dictionary<string, Typed> _typed = [];
    private readonly Dictionary<string, Typed> _clashes = [];

    // The answers as last looked at, to see what the hand changed; and as last settled, to read the job by.
    private Dictionary<string, string> _seen = [];
    private Dictionary<string, string> _settled = [];

    private const string Elsewhere = "It was changed elsewhere meanwhile.";

    // What the job will say by an own write that is on its way.
    private Dictionary<string, string>? _coming;

    /// <summary>True while what was typed is put into a job for good, and not only to see what comes of it.</summary>
    protected bool Keeping { get; private set; }

    /// <summary>The same, from a door without a job into a job for good.</summary>
    /// <param name="basis">The job.</param>
    /// <param name="part">An id for what the job may hold many of.</param>
    public Job Hand(Job basis, string part)
    {
        Keeping = true;
        try
        {
            return Handed(basis, part);
        }
        finally
        {
            Keeping = false;
        }
    }

    /// <summary>What is left in drafts when a door without a job was kept in one: what the job could not take waits behind the
    /// same door of that job.</summary>
    /// <param name="job">The job as it then is.</param>
    /// <param name="id">Its id.</param>
    /// <param name="part">The id of what it may hold many of.</param>
    public IReadOnlyList<DraftRow> LeftOf(Job job, string id, string part) =>
        [new(DraftKey, null), new(KeyOn(id, part), DraftText.Write(Left(TakenHanded(job, part))))];

    /// <inheritdoc cref="Hand"/>
    /// <remarks>Over what the job says already: a box left empty here says nothing, and takes nothing out of the job.</remarks>
    protected virtual Job Handed(Job basis, string part)
    {
        var typed = Draft.Copy();
        var taken = Taking(basis, typed);
        var answers = new Dictionary<string, string>(taken);
        foreach (var (key, text) in typed)
            answers[key] = text;
        return Draft.With(answers, () => Lay(basis), taken);
    }

    /// <summary>Key of the draft of this door on a job.</summary>
    protected virtual string KeyOn(string id, string part) => $"{Slug} {id}";

    /// <summary>What a job says of what was handed to it.</summary>
    protected virtual Dictionary<string, string> TakenHanded(Job job, string part) =>
        Taking(job, Draft.Copy());

    /// <summary>Called before what the hand has left is kept, for what it took as given.</summary>
    protected virtual void Settling() { }

    /// <summary>Called when the page is left, for what it listened to.</summary>
    protected virtual void Leaving() { }

    /// <summary>Takes an answer as if the hand had given it.</summary>
    protected void Give(string key, string text)
    {
        Draft.Follow(key, text);
        Mark(key);
        _seen[key] = text;
    }

    /// <summary>True once the draft is the one of this address, and not of the page shown before.</summary>
    protected bool Loaded => _loaded == DraftKey;

    /// <summary>What lay on the device when the door was opened.</summary>
    protected IReadOnlyDictionary<string, Typed> AtOpening { get; private set; } =
        new Dictionary<string, Typed>();

    /// <summary>Which of several things that are asked alike a key belongs to, in the words of a job; empty where there is but
    /// one, and for one that the job does not have.</summary>
    /// <param name="key">The key.</param>
    /// <param name="taken">What the job says.</param>
    protected virtual string Of(string key, IReadOnlyDictionary<string, string> taken) => "";

    /// <summary>Which of several things something waits to be part of, as the job said it last; empty otherwise.</summary>
    protected string TypedOf(string key) =>
        (_typed.GetValueOrDefault(key) ?? _clashes.GetValueOrDefault(key))?.Of ?? "";

    /// <summary>Waits until what was typed is on the device.</summary>
    public Task Kept => _keeping;

    /// <summary>True when everything typed so far is on the device's disk.</summary>
    public bool IsKept => _keeping.IsCompletedSuccessfully;

    /// <summary>Why what was typed could not be kept; null when it was.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Where the job was changed elsewhere under something typed here: the key, what was typed, and over what.</summary>
    public IEnumerable<(string Key, Typed Typed)> Clashes => _clashes.Select(c => (c.Key, c.Value));

    /// <summary>What of this door two devices set differently in the job: the answer's key and the field.</summary>
    public IReadOnlyList<(string Key, Disagreement Field)> Disputed { get; private set; } = [];

    /// <summary>True when something of this door is on the device.</summary>
    public bool Holds => !Draft.IsEmpty || _typed.Count > 0;

    /// <summary>Decides a clash.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="mine">True for what was typed here; false for what the job says now.</param>
    public void Decide(string key, bool mine)
    {
        if (!_clashes.Remove(key, out var typed))
            return;
        if (mine)
            Draft.SetAll("clash", [KeyValuePair.Create(key, typed.Text)]);
        else
            Save();
    }

    /// <summary>The draft has become part of a job: nothing more is written to it.</summary>
    public void Close()
    {
        Draft.Changed -= Change;
        Draft.Settled -= Commit;
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (_loading == DraftKey)
        {
            _lead = true;
            return;
        }
        var key = _loading = DraftKey;
        // What was typed behind the door before this one is on its way to the device yet, under that door's key.
        await _keeping;
        var kept = DraftText.Read(await Device.Draft(key));
        if (!_here || _loading != key)
            return;
        AtOpening = kept;
        Let();
        Shelf.Changed -= Follow;
        _loaded = key;
        _job = JobId;
        Basis = (_job is null ? null : Shelf.Find(_job)?.Job) ?? new Job();
        _settled = kept.ToDictionary(k => k.Key, k => k.Value.Text);
        Move(Basis, opens: true);
        _taken = _job is null ? [] : Taking(Basis, _settled);
        Disputed = Disputes();
        _typed = [];
        _clashes.Clear();
        var answers = new Dictionary<string, string>(_taken);
        foreach (var (at, typed) in kept)
        {
            var now = _taken.GetValueOrDefault(at, "");
            if (typed.Text == now || Units.Same(typed.Text, Whole(_taken, at)))
                continue;
            if (typed.Over != now)
            {
                _clashes[at] = typed;
                continue;
            }
            _typed[at] = typed;
            answers[at] = typed.Text;
        }
        Draft.Load(answers, _taken);
        _seen = Draft.Copy();
        _settled = Draft.Copy();
        _result = null;
        Draft.Changed += Change;
        Draft.Begins += Begin;
        Draft.Settled += Commit;
        Preferences.Changed += Draw;
        Shelf.Changed += Follow;
        Ready = true;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _here = false;
        // Gone by the way back of the phone, the hand has left its box without a word.
        Draft.Settle();
        Let();
        Leaving();
        _ = Leave();
        GC.SuppressFinalize(this);

        // What is still on its way to the device is reckoned against the job as it is, also after the page has gone.
        async Task Leave()
        {
            await _keeping;
            Shelf.Changed -= Follow;
        }
    }

    private void Let()
    {
        Close();
        Draft.Begins -= Begin;
        Preferences.Changed -= Draw;
    }

    /// <summary>The job was changed. By this page's own write: then what is shown is what was typed, and stays. Elsewhere: then
    /// what was not typed here follows it; what was typed and left waits for a decision.</summary>
    private void Follow()
    {
        if (_job is not { } id || Shelf.Find(id)?.Job is not { } job || ReferenceEquals(job, Basis))
            return;
        Move(job, opens: false);
        var taken = Taking(job, _settled);
        foreach (var key in _taken.Keys.Union(taken.Keys).ToList())
        {
            var now = taken.GetValueOrDefault(key, "");
            if (_taken.GetValueOrDefault(key, "") == now)
                continue;
            if (_coming is not null && _coming.GetValueOrDefault(key, "") == now)
                continue;
            if (!_typed.TryGetValue(key, out var typed))
                Take(key, now);
            else if (_coming is null && IsKept && !Draft.IsOpen && Draft[key] != now)
            {
                _clashes[key] = typed with { Text = Draft[key] };
                _typed.Remove(key);
                Take(key, now);
            }
        }
        Basis = job;
        _taken = taken;
        Disputed = Disputes();
        if (_coming is not null)
            _typed = Left(taken, clashes: false);
        foreach (var key in _typed.Keys.Where(k => IsTaken(k, taken)).ToList())
            _typed.Remove(key);
        Rename();
        _result = null;
        Draw();

        void Take(string key, string now)
        {
            Show(key, now);
            // A ± typed into the box of its value is shown there, until one of the two is changed elsewhere.
            var value = ValueOf(key);
            if (!_typed.ContainsKey(value) && Units.HasGive(Draft[value]))
            {
                Show(value, taken.GetValueOrDefault(value, ""));
                Show(GiveOf(key), taken.GetValueOrDefault(GiveOf(key), ""));
            }
        }

        void Show(string key, string now)
        {
            Draft.Follow(key, now);
            _seen[key] = now;
            _settled[key] = now;
        }
    }

    // What was typed at a thing that says something else by now is found at it again when the door is opened anew.
    private void Rename()
    {
        var renamed = false;
        foreach (var (key, typed) in _typed.ToList())
        {
            var now = OfBy(key, _taken);
            renamed |= now != typed.Of;
            _typed[key] = typed with { Of = now };
        }
        if (renamed)
            Save();
    }

    /// <summary>A field belongs to the answer that would be another one with the other value in it.</summary>
    private List<(string Key, Disagreement Field)> Disputes()
    {
        var found = new List<(string, Disagreement)>();
        if (_job is null || Shelf.Find(_job)?.Document is not { } document)
            return found;
        foreach (var field in Disagreements.Of(document))
        {
            foreach (var other in field.Others)
            {
                if (Disagreements.With(document, field, other.Value) is not { } with)
                    continue;
                var theirs = Taking(with.Job, _settled);
                var key = theirs
                    .Keys.Union(_taken.Keys)
                    .FirstOrDefault(k =>
                        theirs.GetValueOrDefault(k, "") != _taken.GetValueOrDefault(k, "")
                    );
                if (key is null)
                    continue;
                found.Add((key, field));
                break;
            }
        }
        return found;
    }

    private void Begin() => _before = Answer?.Number;

    private void Change()
    {
        _result = null;
        var answers = Draft.Copy();
        foreach (var key in _seen.Keys.Union(answers.Keys).ToList())
        {
            if (_seen.GetValueOrDefault(key, "") == Draft[key])
                continue;
            _clashes.Remove(key);
            // A value and its ± are one measure: where one is changed, the job gets both as they stand on the screen.
            Mark(ValueOf(key));
            Mark(GiveOf(key));
        }
        _seen = answers;
        Save();
    }

    /// <summary>Notes that the hand has changed an answer, or has put it back to what the job says.</summary>
    private void Mark(string key)
    {
        var stands = _taken.GetValueOrDefault(key, "");
        if (Draft[key] == stands)
            _typed.Remove(key);
        else
            _typed[key] = new(Draft[key], _typed.GetValueOrDefault(key)?.Over ?? stands)
            {
                Of = OfBy(key, _taken),
                What = Called(ValueOf(key)),
                Where = Address(Index),
            };
    }

    /// <summary>Why a job did not take what stands under a key, in a sentence; empty when nothing is against it.</summary>
    /// <param name="key">The key.</param>
    /// <param name="taken">What the job says.</param>
    protected virtual string WhyNot(string key, IReadOnlyDictionary<string, string> taken) =>
        Draft.WhyNot(ValueOf(key)) is { } no ? $"It {no.Problem}. Wanted: {no.Accepted}." : "";

    // What is gone from the job goes by the words it had.
    private string OfBy(string key, Dictionary<string, string> taken) =>
        Of(key, taken) is { Length: > 0 } now ? now : TypedOf(key);

    private void Save()
    {
        var key = _loaded!;
        // Written as it stands when its turn comes: a write before it may have made part of it the job's.
        Queue(() => Device.KeepDraft(key, DraftText.Write(With(_typed))).AsTask());
    }

    /// <summary>On a job, what the hand has left becomes part of it; what a field refused stays behind in the draft.</summary>
    private void Commit()
    {
        if (_job is not { } id)
            return;
        Settling();
        var key = _loaded!;
        var asked = _settled;
        var typed = _typed.ToDictionary(t => t.Key, t => t.Value.Text);
        _settled = Draft.Copy();
        Queue(async () =>
        {
            try
            {
                Trouble = await Shelf.Keep(
                    id,
                    job => Laid(job, asked, typed),
                    job =>
                    {
                        _coming = Taking(job, _settled);
                        return [new(key, DraftText.Write(Left(_coming)))];
                    }
                );
                if (Trouble is { } trouble)
                    await Shelf.KeepDraft(key, DraftText.Write(Refused(trouble)));
            }
            finally
            {
                _coming = null;
            }
        });
    }

    private void Move(Job job, bool opens) =>
        Draft.With(
            _settled,
            () =>
            {
                Moves(job, opens);
                return opens;
            }
        );

    /// <summary>What a job says, read as the answers were asked.</summary>
    private Dictionary<string, string> Taking(Job job, IReadOnlyDictionary<string, string> asked) =>
        Draft.With(
            asked,
            () =>
            {
                var taken = new Dictionary<string, string>();
                Unlay(job, taken);
                return taken;
            }
        );

    /// <summary>A job with what was typed, and nothing else, laid over what it says by now.</summary>
    private Job Laid(
        Job job,
        IReadOnlyDictionary<string, string> asked,
        Dictionary<string, string> typed
    )
    {
        var taken = Taking(job, asked);
        var answers = new Dictionary<string, string>(taken);
        foreach (var (key, text) in typed)
            answers[key] = text;
        Keeping = true;
        try
        {
            return Draft.With(answers, () => Lay(job), taken);
        }
        finally
        {
            Keeping = false;
        }
    }

    /// <summary>What was typed and is not what a job says. What a job adds of itself where nothing was typed is not of it.</summary>
    private Dictionary<string, Typed> Left(Dictionary<string, string> taken, bool clashes = true)
    {
        var left = new Dictionary<string, Typed>();
        foreach (var key in Draft.Copy().Keys.Union(_typed.Keys))
        {
            if (!IsTaken(key, taken))
                left[key] = new(Draft[key], taken.GetValueOrDefault(key, ""))
                {
                    Of = OfBy(key, taken),
                    What = Called(ValueOf(key)),
                    Where = _typed.GetValueOrDefault(key)?.Where ?? "",
                    Why = WhyNot(key, taken),
                };
        }
        return clashes ? With(left) : left;
    }

    private Dictionary<string, Typed> With(Dictionary<string, Typed> typed)
    {
        var all = _clashes.ToDictionary(c => c.Key, c => c.Value with { Why = Elsewhere });
        foreach (var (key, one) in typed)
            all[key] = one;
        return all;
    }

    // The job took none of it: each thing typed waits for the one that is in the way.
    private Dictionary<string, Typed> Refused(string trouble) =>
        With(
            _typed.ToDictionary(
                t => t.Key,
                t =>
                    t.Value with
                    {
                        Why = WhyNot(t.Key, _taken) is { Length: > 0 } why ? why : trouble,
                    }
            )
        );

    /// <summary>Whether two texts say the same, one typed and one taken out of a job.</summary>
    protected virtual bool Same(string key, string typed, string taken) => typed == taken;

    /// <summary>"404 ± 0.5 mm" in one box is the same as 404 mm and its ± in two.</summary>
    private bool IsTaken(string key, Dictionary<string, string> taken)
    {
        if (Same(key, Draft[key], taken.GetValueOrDefault(key, "")))
            return true;
        var value = ValueOf(key);
        var (here, there) = (Whole(Draft.Copy(), value), Whole(taken, value));
        return Units.HasGive(here) && (Same(value, here, there) || Units.Same(here, there));
    }

    private static string ValueOf(string key) =>
        key.EndsWith(Draft.PlusMinus, StringComparison.Ordinal)
            ? key[..^Draft.PlusMinus.Length]
            : key;

    private static string GiveOf(string key) => ValueOf(key) + Draft.PlusMinus;

    private static string Whole(Dictionary<string, string> answers, string key) =>
        Units.Together(
            answers.GetValueOrDefault(ValueOf(key), ""),
            answers.GetValueOrDefault(GiveOf(key), "")
        );

    /// <summary>One write after the other, so that the last key typed is the last one kept.</summary>
    private void Queue(Func<Task> write)
    {
        _keeping = After(_keeping, write);
        _ = Say(_keeping);

        async Task After(Task before, Func<Task> next)
        {
            await before;
            try
            {
                await next();
            }
            catch (JSException e)
            {
                Trouble = $"This {Device.Word} would not keep it: {e.Message}";
            }
        }

        // Only after the write has ended is it kept; a screen drawn from within it would say "keeping" for good.
        async Task Say(Task keeping)
        {
            Draw();
            await keeping;
            Draw();
        }
    }

    private void Draw()
    {
        if (_here)
            InvokeAsync(StateHasChanged);
    }
}
