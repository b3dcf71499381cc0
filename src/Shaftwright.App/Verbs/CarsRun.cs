using Shaftwright.Length;

namespace Shaftwright.App.Verbs;

/// <summary>Runs a slice of cars on every core. The bits are those of one core.</summary>
internal static class CarsRun
{
    private const long Piece = 250;

    /// <summary>Judges cars from one number to before another.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static CarsTally Run(LengthCars cars, long from, long to, CancellationToken cancel)
    {
        var all = cars.Blank();
        var pieces = (to - from + Piece - 1) / Piece;
        Parallel.For(
            0,
            pieces,
            new ParallelOptions { CancellationToken = cancel },
            i =>
            {
                var begin = from + i * Piece;
                var piece = cars.Run(begin, Math.Min(to, begin + Piece));
                lock (all)
                    all.Add(piece);
            }
        );
        return all;
    }
}
