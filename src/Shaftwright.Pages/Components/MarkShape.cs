namespace Shaftwright.Pages.Components;

/// <summary>The shapes that stand beside a word of state.</summary>
public enum MarkShape
{
    /// <summary>A dash: worth knowing.</summary>
    Dash,

    /// <summary>A broken ring: nothing yet.</summary>
    Open,

    /// <summary>A half-filled ring: begun.</summary>
    Half,

    /// <summary>A filled disc: answered.</summary>
    Full,

    /// <summary>A signature on its line: signed off.</summary>
    Signature,

    /// <summary>A triangle: your judgement is needed.</summary>
    Corner,

    /// <summary>A barred block: do not go on.</summary>
    Barred,
}
