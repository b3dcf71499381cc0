namespace Shaftwright.Kept;

/// <summary>An entry of a record that is corrected by a later entry and never erased.</summary>
public interface IEntry
{
    /// <summary>A stable id, unique within the stage.</summary>
    string Id { get; }

    /// <summary>Id of the earlier entry that this one puts right; empty when it is new.</summary>
    string Corrects { get; }

    /// <summary>True when what it corrects did not happen at all: both then stand in the record and count for nothing.</summary>
    bool Withdrawn { get; }
}
