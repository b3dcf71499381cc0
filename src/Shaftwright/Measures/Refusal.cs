namespace Shaftwright.Measures;

/// <summary>Why an input was not taken: which field, what was typed, and what would be accepted.</summary>
/// <param name="Field">The field's path in the job file, or its words on a page.</param>
/// <param name="Value">What was typed.</param>
/// <param name="Problem">What is wrong with it, in plain words.</param>
/// <param name="Accepted">What would be accepted.</param>
public sealed record Refusal(string Field, string Value, string Problem, string Accepted)
{
    /// <summary>One sentence for a person.</summary>
    public override string ToString() => $"{Field}: \"{Value}\" {Problem}. Accepted: {Accepted}.";
}

/// <summary>The outcome of reading a measure: the measure, or the refusal. Failure here is ordinary, so it is a value.</summary>
/// <typeparam name="T">The dimension.</typeparam>
public readonly struct Reading<T>
    where T : IDimension<T>
{
    internal Reading(Measured<T>? value, Refusal? refusal)
    {
        Measure = value;
        Refusal = refusal;
    }

    /// <summary>The measure, or null when refused.</summary>
    public Measured<T>? Measure { get; }

    /// <summary>The refusal, or null when read.</summary>
    public Refusal? Refusal { get; }

    /// <summary>The measure.</summary>
    /// <exception cref="FormatException">It was refused; the message is the refusal.</exception>
    public Measured<T> Required => Measure ?? throw new FormatException(Refusal!.ToString());
}
