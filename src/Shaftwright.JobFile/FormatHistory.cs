using System.Globalization;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>One step from a format to the next.</summary>
/// <param name="From">The format it takes; it returns <paramref name="From"/> + 1.</param>
/// <param name="Lift">A pure function of its own copy of the document. It need not set "format".</param>
public sealed record FormatStep(int From, Func<JsonObject, JsonObject> Lift);

/// <summary>How older files come up to the current format: numbered pure steps, applied in order.</summary>
public sealed class FormatHistory
{
    private readonly IReadOnlyList<FormatStep> _steps;

    /// <summary>A history.</summary>
    /// <param name="current">The current format.</param>
    /// <param name="steps">One step for each older format that is still read, without a gap below <paramref name="current"/>.</param>
    /// <exception cref="ArgumentException">The steps do not lead, one by one, to <paramref name="current"/>.</exception>
    public FormatHistory(int current, IReadOnlyList<FormatStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        for (var i = 0; i < steps.Count; i++)
        {
            if (steps[i].From != current - steps.Count + i)
                throw new ArgumentException(
                    $"Step {i} starts at format {steps[i].From}, not {current - steps.Count + i}.",
                    nameof(steps)
                );
        }
        Current = current;
        _steps = steps;
    }

    /// <summary>The shipped history. Format 1 is the first, so there is nothing to lift yet.</summary>
    public static FormatHistory Shipped { get; } = new(JobJson.Format, []);

    /// <summary>The format that documents are brought to.</summary>
    public int Current { get; }

    /// <summary>The oldest format still read.</summary>
    public int Oldest => Current - _steps.Count;

    /// <summary>Brings a document to the current format.</summary>
    /// <param name="document">The document; it is not changed.</param>
    /// <param name="refusal">Why it cannot be read, or null.</param>
    /// <returns>The document in the current format (the same object when it was already), or null.</returns>
    public JsonObject? Bring(JsonObject document, out Refusal? refusal)
    {
        ArgumentNullException.ThrowIfNull(document);
        refusal = null;
        document.TryGetPropertyValue("format", out var stated);
        var accepted =
            Oldest == Current ? Number(Current) : $"{Number(Oldest)} to {Number(Current)}";
        if (stated is not JsonValue value || !value.TryGetValue<int>(out var format))
        {
            refusal = stated is null
                ? new("format", "", "is missing, so what the file means is unknown", accepted)
                : new("format", stated.ToJsonString(), "is not a format number", accepted);
            return null;
        }
        if (format > Current || format < Oldest)
        {
            refusal = new(
                "format",
                Number(format),
                format > Current
                    ? "is newer than this program; nothing was changed, use a newer Shaftwright"
                    : "is older than this program still reads",
                accepted
            );
            return null;
        }
        foreach (var step in _steps.Skip(format - Oldest))
        {
            document = step.Lift((JsonObject)document.DeepClone());
            document["format"] = step.From + 1;
        }
        return document;
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
