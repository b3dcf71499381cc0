namespace Shaftwright;

/// <summary>The one way from a job to its answers. Every face of the program calls it; none computes.</summary>
public static class Workflow
{
    /// <summary>Evaluates a job, each stage when it is first read.</summary>
    /// <param name="job">What was measured and decided. Ranges are checked by <see cref="Job.Check"/>, at the edge.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    public static JobResult Evaluate(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new JobResult(job);
    }
}
