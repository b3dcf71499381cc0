using Shaftwright.Cut.Search;

namespace Shaftwright;

/// <summary>The one way from a job to its answers. Every face of the program calls it; none computes.</summary>
public static class Workflow
{
    /// <summary>Evaluates a job, each stage when it is first read.</summary>
    /// <param name="job">What was measured and decided. Ranges are checked by <see cref="Job.Check"/>, at the edge.</param>
    /// <param name="now">What time it is where it is asked: a test, a sample or a stroke dated later proves nothing. Null takes every
    /// date as it stands; every face of the program gives it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    public static JobResult Evaluate(Job job, DateTimeOffset? now = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new JobResult(job, now);
    }

    /// <summary>Makes several shafts from the shelf of the first job: both sides of a car, and spares.</summary>
    /// <param name="jobs">The jobs.</param>
    /// <param name="spares">How many spares of each.</param>
    /// <returns>The plan; null when the first job holds no shelf.</returns>
    public static ShareResult? Share(IReadOnlyList<Job> jobs, int spares)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        if (jobs.Count == 0 || jobs[0].Shelf is not { } shelf)
            return null;
        return ShelfShare.Solve([.. jobs.Select(j => Evaluate(j).Request(shelf))], spares);
    }
}
