using System.Text.Json.Nodes;

namespace Shaftwright.JobFile.Exchange;

/// <summary>Asks the laptop to judge a slice of the cars of a run.</summary>
/// <param name="Job">The job's file.</param>
/// <param name="Seed">Seed of the run.</param>
/// <param name="From">First car.</param>
/// <param name="To">One past the last.</param>
public sealed record CarsRequest(JsonObject Job, ulong Seed, long From, long To)
{
    /// <summary>Most cars in one request: a slice is short, so that progress shows and a cancel is heard.</summary>
    public const long Most = 20_000;
}

/// <summary>What a slice came to.</summary>
/// <param name="Tally">As <see cref="Length.CarsTally.ToText"/> writes it.</param>
public sealed record CarsReply(string Tally);
