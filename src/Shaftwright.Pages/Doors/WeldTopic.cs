using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>One page of the weld: what it asks, in what order, and what it answers.</summary>
/// <param name="Slug">Its place in the address, after "weld/".</param>
/// <param name="Title">What it is called.</param>
/// <param name="Waiting">What stands in the answer's place while there is none.</param>
/// <param name="Screens">Its questions.</param>
/// <param name="Answer">Its answer.</param>
/// <param name="Findings">What is said beside it.</param>
public sealed record WeldTopic(
    string Slug,
    string Title,
    string Waiting,
    IReadOnlyList<WeldScreen> Screens,
    Func<JobResult, Answer?> Answer,
    Func<JobResult, IEnumerable<Findings.Finding>> Findings
)
{
    /// <summary>Everything it asks, for a job: lists ask for one entry more than they hold.</summary>
    public IEnumerable<Asked> Asks(Job job, Draft draft) =>
        Screens.SelectMany(s => s.Asks(job, draft));
}

/// <summary>One question of a topic, with its boxes.</summary>
/// <param name="Step">The question.</param>
/// <param name="Picture">Name of its picture.</param>
/// <param name="Asks">Its boxes.</param>
public sealed record WeldScreen(
    Step Step,
    string Picture,
    Func<Job, Draft, IEnumerable<Asked>> Asks
);
