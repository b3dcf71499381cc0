using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.ShelfTable;

/// <summary>The outcome of reading a table of shafts.</summary>
/// <param name="Shelf">The shafts of which every row was taken.</param>
/// <param name="Refusals">What was not taken: the line and column, what stands there, and what would be accepted. A shaft with a
/// refused row is left out whole, since half a profile is worse than none.</param>
public sealed record ShelfReading(ShelfInput Shelf, IReadOnlyList<Refusal> Refusals);
