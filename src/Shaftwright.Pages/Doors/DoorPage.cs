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
public abstract partial class DoorPage : ComponentBase, IDisposable
{
    /// <summary>The slug of the last screen of every door.</summary>
    public const string AnswerSlug = "answer";

    private JobResult? _result;
    private double? _before;
    private bool _lead = true;

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

    /// <summary>The clock of this device: what is dated later than it says proves nothing.</summary>
    [Inject]
    public required TimeProvider Wall { get; set; }

    /// <summary>What was typed.</summary>
    public Draft Draft { get; } = new();

    /// <summary>The door's place in the address.</summary>
    public abstract string Slug { get; }

    /// <summary>What the door is called.</summary>
    public abstract string Title { get; }

    /// <summary>What one of its screens is called.</summary>
    public virtual string Screen => "question";

    /// <summary>True where what was noted is a record that only grows: then nothing begins all over at one press.</summary>
    public virtual bool IsRecord => false;

    /// <summary>True where the thing to do stands in the page itself, and going on is only going on.</summary>
    public virtual bool ActsItself => false;

    /// <summary>Its questions, at most six; of work that is noted step by step, its steps.</summary>
    public abstract IReadOnlyList<Step> Steps { get; }

    /// <summary>True once the first thing of <see cref="LoadAsync"/> is there.</summary>
    public bool Ready { get; private set; }

    /// <summary>The job under the draft; an empty one without a job.</summary>
    public Job Basis { get; private set; } = new();

    /// <summary>The job with what was typed.</summary>
    public Job Job => Lay(Basis);

    /// <summary>Its answers, evaluated when first read after a change.</summary>
    public JobResult Result => _result ??= Workflow.Evaluate(Job, Wall.GetLocalNow());

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

    /// <summary>The job under the draft is another now: which of its records each question belongs to is settled here, once,
    /// and not looked for again whenever something is typed. Meanwhile <see cref="Draft"/> holds the answers as last settled.</summary>
    /// <param name="basis">The job.</param>
    /// <param name="opens">True when the door opens on it; false when it was changed meanwhile.</param>
    protected virtual void Moves(Job basis, bool opens) { }

    /// <summary>What a key is called in a sentence: "the inner diameter".</summary>
    public virtual string Called(string key) => "something";

    /// <summary>The words of an answer that is picked and not typed; the text itself otherwise.</summary>
    public virtual string Worded(string key, string text) => text;

    /// <summary>True when the page has used "next" itself, within one question.</summary>
    public virtual bool Handles() => false;

    /// <summary>Takes a job's measures out as text. Meanwhile <see cref="Draft"/> holds the answers as last settled, where one
    /// must know how something was asked.</summary>
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

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!Ready || !_lead)
            return;
        _lead = false;
        if (Wanted is { } key)
        {
            Wanted = null;
            await Device.FocusOn(BoxOf(key));
        }
        else
            await Device.Lead();
    }
}
