using Microsoft.AspNetCore.Components;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>One thing that is asked: where its text is kept, what it is called, and how it goes into a job and out again.</summary>
/// <param name="key">Its key in the draft.</param>
/// <param name="called">What it is called in a sentence: "the bevel".</param>
public abstract class Asked(string key, string called)
{
    /// <summary>Its key in the draft.</summary>
    public string Key => key;

    /// <summary>What it is called in a sentence.</summary>
    public string Called => called;

    /// <summary>Puts what was typed into a job.</summary>
    public abstract Job Lay(Job job, Draft draft);

    /// <summary>Takes it out of a job as text.</summary>
    public abstract void Unlay(Job job, IDictionary<string, string> answers);

    /// <summary>Its box on the page.</summary>
    public abstract RenderFragment Box { get; }

    /// <summary>A picked answer in words.</summary>
    public virtual string Worded(string text) => text;
}

/// <summary>A measure that is asked.</summary>
/// <param name="key">Its key in the draft.</param>
/// <param name="called">What it is called in a sentence.</param>
/// <param name="label">What stands above the box.</param>
/// <param name="asks">The field.</param>
/// <param name="get">Out of a job.</param>
/// <param name="set">Into a job.</param>
public sealed class AskedMeasure<T>(
    string key,
    string called,
    string label,
    Field<T> asks,
    Func<Job, Measured<T>?> get,
    Func<Job, Measured<T>?, Job> set
) : Asked(key, called)
    where T : IDimension<T>
{
    /// <inheritdoc/>
    public override Job Lay(Job job, Draft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var typed = draft.Take(Key, asks);
        // An empty box makes no empty part of a job.
        return typed is null && get(job) is null ? job : set(job, typed);
    }

    /// <inheritdoc/>
    public override void Unlay(Job job, IDictionary<string, string> answers) =>
        Draft.Lay(answers, Key, get(job));

    /// <inheritdoc/>
    public override RenderFragment Box =>
        builder =>
        {
            builder.OpenComponent<Components.Measure<T>>(0);
            builder.SetKey(Key);
            builder.AddComponentParameter(1, "Key", Key);
            builder.AddComponentParameter(2, "Field", asks);
            builder.AddComponentParameter(3, "Label", label);
            builder.CloseComponent();
        };
}

/// <summary>One of a few words that is asked.</summary>
/// <param name="key">Its key in the draft.</param>
/// <param name="called">What it is called in a sentence.</param>
/// <param name="legend">What is asked.</param>
/// <param name="options">What can be picked; an empty value is "don't know".</param>
/// <param name="get">Out of a job; empty for "don't know".</param>
/// <param name="set">Into a job.</param>
public sealed class AskedChoice(
    string key,
    string called,
    string legend,
    IReadOnlyList<Option> options,
    Func<Job, string> get,
    Func<Job, string, Job> set
) : Asked(key, called)
{
    private static readonly Option[] s_yesNo =
    [
        new("yes", "Yes"),
        new("no", "No"),
        new("", "Don't know"),
    ];

    /// <summary>A question answered yes, no or not known.</summary>
    public static AskedChoice YesNo(
        string key,
        string called,
        string legend,
        Func<Job, bool?> get,
        Func<Job, bool?, Job> set
    ) =>
        new(
            key,
            called,
            legend,
            s_yesNo,
            job =>
                get(job) is { } b
                    ? b
                        ? "yes"
                        : "no"
                    : "",
            (job, text) => set(job, text.Length == 0 ? null : text == "yes")
        );

    /// <inheritdoc/>
    public override Job Lay(Job job, Draft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return draft[Key] == get(job) ? job : set(job, draft[Key]);
    }

    /// <inheritdoc/>
    public override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        if (get(job) is { Length: > 0 } text)
            answers[Key] = text;
    }

    /// <inheritdoc/>
    public override string Worded(string text) => Option.Worded(options, text);

    /// <inheritdoc/>
    public override RenderFragment Box =>
        builder =>
        {
            builder.OpenComponent<Components.Choice>(0);
            builder.SetKey(Key);
            builder.AddComponentParameter(1, "Key", Key);
            builder.AddComponentParameter(2, "Legend", legend);
            builder.AddComponentParameter(3, "Options", options);
            builder.CloseComponent();
        };
}

/// <summary>A photo that is asked for.</summary>
/// <param name="key">Its key in the draft.</param>
/// <param name="called">What it is called in a sentence.</param>
/// <param name="label">What is asked.</param>
/// <param name="get">Its name out of a job; empty for none.</param>
/// <param name="set">Into a job.</param>
public sealed class AskedPhoto(
    string key,
    string called,
    string label,
    Func<Job, string> get,
    Func<Job, string, Job> set
) : Asked(key, called)
{
    /// <inheritdoc/>
    public override Job Lay(Job job, Draft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return draft[Key] == get(job) ? job : set(job, draft[Key]);
    }

    /// <inheritdoc/>
    public override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        if (get(job) is { Length: > 0 } name)
            answers[Key] = name;
    }

    /// <inheritdoc/>
    public override string Worded(string text) => text.Length == 0 ? "none" : "another one";

    /// <inheritdoc/>
    public override RenderFragment Box =>
        builder =>
        {
            builder.OpenComponent<Bench.PhotoBox>(0);
            builder.SetKey(Key);
            builder.AddComponentParameter(1, "Key", Key);
            builder.AddComponentParameter(2, "Label", label);
            builder.AddComponentParameter(3, "Alt", "Photo of " + Called);
            builder.CloseComponent();
        };
}
