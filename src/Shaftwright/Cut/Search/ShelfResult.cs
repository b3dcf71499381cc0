using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>A shaft on the shelf and one of its ends.</summary>
/// <param name="Id">The shaft's id.</param>
/// <param name="Called">What one calls it.</param>
/// <param name="Far">True for the end it was not walked from.</param>
/// <param name="Place">Where it lies.</param>
public sealed record DonorPick(string Id, string Called, bool Far, string Place);

/// <summary>What a choice comes to in one goal.</summary>
/// <param name="Goal">The goal.</param>
/// <param name="Value">In the unit of the goal.</param>
/// <param name="Best">The best that any pair on the shelf comes to, in the same unit.</param>
/// <param name="Leads">True when nothing on the shelf does better by more than can be told apart.</param>
public sealed record GoalValue(SearchGoal Goal, double Value, double Best, bool Leads);

/// <summary>Two donors and where to cut them.</summary>
public sealed record ShelfChoice
{
    /// <summary>Gives the inner end.</summary>
    public required DonorPick Inner { get; init; }

    /// <summary>Gives the outer end.</summary>
    public required DonorPick Outer { get; init; }

    /// <summary>Where to cut the inner one, from that end, mm.</summary>
    public required double InnerAt { get; init; }

    /// <summary>Where to cut the outer one, from that end, mm.</summary>
    public required double OuterAt { get; init; }

    /// <summary>Diameter of the inner one there, mm.</summary>
    public required double InnerDiameter { get; init; }

    /// <summary>Diameter of the outer one there, mm.</summary>
    public required double OuterDiameter { get; init; }

    /// <summary>Overall length after welding, mm: it differs from pair to pair with what stands beyond the joints' seats.</summary>
    public required double Overall { get; init; }

    /// <summary>What it comes to in each goal that can be judged.</summary>
    public required IReadOnlyList<GoalValue> Goals { get; init; }

    /// <summary>Why one would take it.</summary>
    public required Sentence Why { get; init; }

    /// <summary>What it gives up against the best of the shelf; null when nothing.</summary>
    public Sentence? GivesUp { get; init; }

    /// <summary>What must be known of it beside the numbers, each a sentence.</summary>
    public IReadOnlyList<Sentence> Mind { get; init; } = [];

    /// <summary>Its value in a goal; null when that was not judged.</summary>
    public double? In(SearchGoal goal) => Goals.FirstOrDefault(g => g.Goal == goal)?.Value;
}

/// <summary>A shaft that is in no choice, and why.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Called">What one calls it.</param>
/// <param name="Why">The reason, with place and number.</param>
/// <param name="Fits">True when it could be used, and only others do better.</param>
public sealed record ShelfRejection(string Id, string Called, Sentence Why, bool Fits);

/// <summary>The answer of the search.</summary>
public sealed record ShelfResult
{
    /// <summary>The short list, one for each goal that another pair leads in. None beats another in everything.</summary>
    public IReadOnlyList<ShelfChoice> Choices { get; init; } = [];

    /// <summary>Every shaft that is in no choice, in the order of the shelf.</summary>
    public IReadOnlyList<ShelfRejection> Rejected { get; init; } = [];

    /// <summary>Pairs of an end that fits the inner joint and one that fits the outer.</summary>
    public long Pairs { get; init; }

    /// <summary>How many times a pair had to be worked through; the others could not lead.</summary>
    public long Worked { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
