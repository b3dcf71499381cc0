using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>One screen of a door.</summary>
/// <param name="Slug">Its place in the address.</param>
/// <param name="Asks">The question, as one would say it.</param>
/// <param name="WithoutIt">What it costs not to know; null when it has to be known.</param>
public sealed record Step(string Slug, string Asks, string? WithoutIt = null);

/// <summary>What every door does alike: the draft and the job under it, the way through its questions, and one evaluation a
/// change. A door holds no formula; it lays what was typed into a <see cref="Job"/> and says what came back.</summary>
public abstract class DoorPage : ComponentBase, IDisposable
{
    /// <summary>The slug of the last screen of every door.</summary>
    public const string AnswerSlug = "answer";

    private JobResult? _result;
    private double? _before;
    private string? _loaded;
    private Dictionary<string, string> _taken = [];
    private bool _lead = true;
    private Task _keeping = Task.CompletedTask;

    /// <summary>The job it is opened on; null without one.</summary>
    [Parameter]
    public string? JobId { get; set; }

    /// <summary>The question shown; null for the first.</summary>
    [Parameter]
    public string? At { get; set; }

    /// <summary>The device's memory.</summary>
    [Inject]
    public required DeviceStore Device { get; set; }

    /// <summary>The reader's units.</summary>
    [Inject]
    public required Preferences Preferences { get; set; }

    /// <summary>The jobs on this device.</summary>
    [Inject]
    public required JobShelf Shelf { get; set; }

    /// <summary>The way to other pages.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <summary>What was typed.</summary>
    public Draft Draft { get; } = new();

    /// <summary>The door's place in the address.</summary>
    public abstract string Slug { get; }

    /// <summary>What the door is called.</summary>
    public abstract string Title { get; }

    /// <summary>Its questions, at most six.</summary>
    public abstract IReadOnlyList<Step> Steps { get; }

    /// <summary>True once the first thing of <see cref="LoadAsync"/> is there.</summary>
    public bool Ready { get; private set; }

    /// <summary>The job under the draft; an empty one without a job.</summary>
    public Job Basis { get; private set; } = new();

    /// <summary>The job with what was typed.</summary>
    public Job Job => Lay(Basis);

    /// <summary>Its answers, evaluated when first read after a change.</summary>
    public JobResult Result => _result ??= Workflow.Evaluate(Job);

    /// <summary>Number of the question shown, from 0; the count of questions on the answer screen.</summary>
    public int Index
    {
        get
        {
            if (At == AnswerSlug)
                return Steps.Count;
            for (var i = 0; i < Steps.Count; i++)
            {
                if (Steps[i].Slug == At)
                    return i;
            }
            return 0;
        }
    }

    /// <summary>True on the answer screen.</summary>
    public bool Answering => Index == Steps.Count;

    /// <summary>Key of the draft on the device.</summary>
    public virtual string DraftKey => JobId is null ? Slug : $"{Slug} {JobId}";

    /// <summary>Puts what was typed into a job.</summary>
    public abstract Job Lay(Job basis);

    /// <summary>The same, on its way into a job for good.</summary>
    /// <param name="basis">The job.</param>
    /// <param name="id">An id for what the job may hold many of.</param>
    public virtual Job Handed(Job basis, string id) => Lay(basis);

    /// <summary>True when the page has used "next" itself, within one question.</summary>
    public virtual bool Handles() => false;

    /// <summary>Takes a job's measures out as text.</summary>
    protected abstract void Unlay(Job job, IDictionary<string, string> answers);

    /// <summary>The answer; null while too little is known.</summary>
    public abstract Answer? Answer { get; }

    /// <summary>How much the answer moved with the running change, in words; null when it did not.</summary>
    public string? Moved =>
        Answer?.Number is { } now && _before is { } before ? SayMoved(now - before) : null;

    /// <summary>What moved, in words; null when it is too little to say.</summary>
    protected abstract string? SayMoved(double change);

    /// <summary>The address of a question.</summary>
    public virtual string Address(int index)
    {
        var at = index >= Steps.Count ? AnswerSlug : Steps[index].Slug;
        return JobId is null ? $"{Slug}/{at}" : $"job/{JobId}/{Slug}/{at}";
    }

    /// <summary>Goes to a question.</summary>
    public void Go(int index)
    {
        Draft.Settle();
        Navigation.NavigateTo(Address(Math.Clamp(index, 0, Steps.Count)));
    }

    /// <summary>Forgets everything typed behind this door and begins again; undo brings it back.</summary>
    public void StartAgain()
    {
        Draft.SetAll("start", Draft.Copy().Keys.Select(k => KeyValuePair.Create(k, "")));
        Go(0);
    }

    /// <summary>Waits until what was typed is on the device.</summary>
    public Task Kept => _keeping;

    /// <summary>True when everything typed so far is on the device's disk.</summary>
    public bool IsKept => _keeping.IsCompletedSuccessfully;

    /// <summary>Why what was typed could not be kept; null when it was.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The draft has become part of a job: nothing more is written to it.</summary>
    public void Close()
    {
        Draft.Changed -= Change;
        Draft.Settled -= Commit;
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (_loaded == DraftKey)
        {
            _lead = true;
            return;
        }
        _loaded = DraftKey;
        var answers = new Dictionary<string, string>();
        if (JobId is { } id)
        {
            Basis = Shelf.Find(id)?.Job ?? new Job();
            Unlay(Basis, answers);
        }
        _taken = new(answers);
        foreach (var (key, text) in Draft.Parse(await Device.Draft(DraftKey)))
            answers[key] = text;
        Let();
        Draft.Load(answers);
        _result = null;
        Draft.Changed += Change;
        Draft.Begins += Begin;
        Draft.Settled += Commit;
        Preferences.Changed += Show;
        Shelf.Changed += Follow;
        Ready = true;
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!Ready || !_lead)
            return;
        _lead = false;
        await Device.Lead();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Let();
        GC.SuppressFinalize(this);
    }

    private void Let()
    {
        Close();
        Draft.Begins -= Begin;
        Preferences.Changed -= Show;
        Shelf.Changed -= Follow;
    }

    /// <summary>The job was changed, here or on another device: what was not typed here follows it, what was typed stays.</summary>
    private void Follow()
    {
        if (
            JobId is not { } id
            || Shelf.Find(id)?.Job is not { } job
            || ReferenceEquals(job, Basis)
        )
            return;
        var taken = new Dictionary<string, string>();
        Unlay(job, taken);
        foreach (var key in _taken.Keys.Union(taken.Keys).ToList())
        {
            var before = _taken.GetValueOrDefault(key, "");
            var now = taken.GetValueOrDefault(key, "");
            if (before != now && Draft[key] == before)
                Draft.Follow(key, now);
        }
        Basis = job;
        _taken = taken;
        _result = null;
        Show();
    }

    private void Begin() => _before = Answer?.Number;

    private void Change()
    {
        _result = null;
        var text = Draft.IsEmpty ? null : Draft.Text();
        Queue(() => Device.KeepDraft(DraftKey, text).AsTask());
    }

    /// <summary>On a job, what the hand has left becomes part of it; what a field refused stays behind in the draft.</summary>
    private void Commit()
    {
        if (JobId is not { } id)
            return;
        Queue(async () =>
        {
            Trouble = await Shelf.Keep(id, Lay);
            if (Trouble is not null)
                return;
            var left = Draft
                .Copy()
                .Where(a => _taken.GetValueOrDefault(a.Key) != a.Value)
                .ToDictionary(a => a.Key, a => a.Value);
            await Device.KeepDraft(DraftKey, left.Count == 0 ? null : Draft.TextOf(left));
        });
    }

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
            Show();
            await keeping;
            Show();
        }
    }

    private void Show() => InvokeAsync(StateHasChanged);
}
