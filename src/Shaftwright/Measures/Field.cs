using System.Globalization;

namespace Shaftwright.Measures;

/// <summary>One thing a person is asked for: its name in the job file, its words, what is accepted, and how far off a reading
/// of it is when nobody said. Pages, files and solvers take all of it from here.</summary>
/// <typeparam name="T">The dimension.</typeparam>
/// <param name="Name">The name in the job file.</param>
/// <param name="Words">What is measured, as one would say it.</param>
/// <param name="Least">Smallest accepted value, internal unit.</param>
/// <param name="Most">Largest accepted value, internal unit.</param>
/// <param name="UsualPlusMinus">Half-width taken when none was typed, internal unit.</param>
/// <param name="How">The tool that the usual ± stands for.</param>
public sealed record Field<T>(
    string Name,
    string Words,
    double Least,
    double Most,
    double UsualPlusMinus = 0,
    string How = ""
)
    where T : IDimension<T>
{
    /// <summary>Standard uncertainty of a reading of this field, internal unit.</summary>
    public double StandardUncertainty(Measured<T> measure)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return measure.StandardUncertainty(UsualPlusMinus);
    }

    /// <summary>Reads and range-checks a typed value. A bare number is in <paramref name="bare"/>.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="bare">Unit of a bare number; null for the dimension's default.</param>
    public Reading<T> Read(string text, Unit? bare = null)
    {
        var reading = MeasureText.Read<T>(text, bare ?? T.Units[0], Words);
        return reading.Measure is { } m && OutOfRange(m, Words) is { } refusal
            ? new(null, refusal)
            : reading;
    }

    /// <summary>The refusal of a value outside the accepted range, or null.</summary>
    /// <param name="measure">The value.</param>
    /// <param name="path">Its path for the refusal.</param>
    public Refusal? OutOfRange(Measured<T> measure, string path)
    {
        ArgumentNullException.ThrowIfNull(measure);
        // The ends themselves are accepted: 30° typed and 30° converted may differ in the last bit.
        var slack = 1e-12 * Math.Max(Math.Abs(Least), Math.Abs(Most));
        if (measure.Value >= Least - slack && measure.Value <= Most + slack)
            return null;
        return new(
            path,
            measure.Typed,
            measure.Value < Least ? "is too small" : "is too large",
            Range(measure.Unit)
        );
    }

    /// <summary>The accepted range in words.</summary>
    /// <param name="unit">The unit to say it in; null for the dimension's default.</param>
    public string Range(Unit? unit = null)
    {
        var u = unit ?? T.Units[0];
        return string.Create(
                CultureInfo.InvariantCulture,
                $"{Words}, from {u.FromInternal(Least):0.######} to {u.FromInternal(Most):0.######} {u.Symbol}"
            )
            .TrimEnd();
    }
}
