namespace Shaftwright.App.Verbs;

/// <summary>Where a verb reads and writes.</summary>
/// <param name="In">Standard input.</param>
/// <param name="Out">Standard output: the answer, nothing else.</param>
/// <param name="Error">Standard error: why there is none.</param>
internal sealed record Streams(TextReader In, TextWriter Out, TextWriter Error);

/// <summary>The exit codes.</summary>
internal static class Exit
{
    /// <summary>Evaluated, no Stop.</summary>
    public const int Fine = 0;

    /// <summary>Evaluated, at least one Stop.</summary>
    public const int Stop = 1;

    /// <summary>Bad usage or input; the reason is on standard error and nothing on standard output.</summary>
    public const int BadInput = 2;
}

/// <summary>Usage or input that cannot be taken. Its message is for the person who typed it.</summary>
internal sealed class BadInputException(string message) : Exception(message);
