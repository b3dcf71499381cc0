using Microsoft.AspNetCore.Components;

namespace Shaftwright.Pages.Doors;

/// <summary>One page of a job's weld. Opened from the route card only; which page is in the address.</summary>
public sealed partial class JobWeld
{
    /// <summary>Its place in the address, after the job's.</summary>
    public const string Place = "weld";

    /// <summary>Which page of the weld.</summary>
    [Parameter]
    public string? Subject { get; set; }

    private WeldTopic Topic => WeldTopics.Of(Subject);

    /// <inheritdoc/>
    public override string Slug => $"{Place}/{Topic.Slug}";

    /// <inheritdoc/>
    public override string Title => Topic.Title;

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps => [.. Topic.Screens.Select(s => s.Step)];

    /// <inheritdoc/>
    public override Answer? Answer => Topic.Answer(Result);

    /// <inheritdoc/>
    public override Job Lay(Job basis) =>
        Topic.Asks(basis, Draft).Aggregate(basis, (job, asked) => asked.Lay(job, Draft));

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        foreach (var asked in Topic.Asks(job, Draft))
            asked.Unlay(job, answers);
    }

    /// <inheritdoc/>
    public override string Called(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Find(key)?.Called ?? base.Called(key);
    }

    /// <inheritdoc/>
    public override string Worded(string key, string text) => Find(key)?.Worded(text) ?? text;

    /// <inheritdoc/>
    protected override string? SayMoved(double change) => null;

    private Asked? Find(string key) =>
        Topic
            .Asks(Basis, Draft)
            .FirstOrDefault(a => key == a.Key || key == a.Key + Draft.PlusMinus);
}
