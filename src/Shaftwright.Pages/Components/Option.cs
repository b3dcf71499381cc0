namespace Shaftwright.Pages.Components;

/// <summary>One of the words of a <see cref="Choice"/>.</summary>
/// <param name="Value">As kept.</param>
/// <param name="Words">As shown.</param>
/// <param name="Note">A few words more.</param>
public sealed record Option(string Value, string Words, string Note = "")
{
    /// <summary>The words of a value; the value itself where there are none.</summary>
    public static string Worded(IEnumerable<Option> options, string value) =>
        options.FirstOrDefault(o => o.Value == value)?.Words ?? value;
}
