namespace Shaftwright.Measures;

/// <summary>Collects what is wrong with an input, each with its path in the job file.</summary>
public sealed class InputCheck
{
    private readonly List<Refusal> _refusals = [];

    /// <summary>What was refused, in reading order.</summary>
    public IReadOnlyList<Refusal> Refusals => _refusals;

    /// <summary>Checks a value against its field's range; a missing value is legal ("don't know yet").</summary>
    public void Range<T>(string path, Field<T> field, Measured<T>? measure)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(field);
        if (
            measure is not null
            && field.OutOfRange(measure, path.Length == 0 ? field.Name : path + "." + field.Name)
                is { } refusal
        )
            _refusals.Add(refusal);
    }

    /// <summary>Refuses with the given words unless <paramref name="holds"/>.</summary>
    public void That(bool holds, string path, string value, string problem, string accepted)
    {
        if (!holds)
            _refusals.Add(new Refusal(path, value, problem, accepted));
    }
}
