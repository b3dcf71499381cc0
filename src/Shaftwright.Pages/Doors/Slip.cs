namespace Shaftwright.Pages.Doors;

/// <summary>Something typed behind a door that counts in no answer, because it was refused.</summary>
/// <param name="Key">Its key in the draft.</param>
/// <param name="What">What it is, in a sentence: "the outer diameter".</param>
/// <param name="Text">What was typed, with its ±.</param>
/// <param name="Why">Why it was refused, in a sentence.</param>
/// <param name="Where">Address of the screen it was typed on.</param>
/// <param name="Held">What the job says there meanwhile; empty where it says nothing.</param>
public sealed record Slip(
    string Key,
    string What,
    string Text,
    string Why,
    string Where,
    string Held
);
