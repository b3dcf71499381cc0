using Dapper;

namespace Shaftwright.Records;

// Photos lie in the same file as the jobs, so that one copy of it is a copy of everything.
public sealed partial class JobBook
{
    /// <summary>Keeps a photo: when this returns, it is on disk. One that is there already is left as it is.</summary>
    /// <param name="name">Its name: the SHA-256 of its bytes.</param>
    /// <param name="jpeg">Its bytes, looked at by <see cref="PhotoFile.Look"/>.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <returns>False when it was there already.</returns>
    /// <exception cref="JobBookException">It was not kept.</exception>
    public bool Keep(string name, byte[] jpeg, int width, int height) =>
        Try(db =>
            db.Execute(
                """
                INSERT INTO photos (sha256, jpeg, width, height, arrived_at) VALUES (@name, @jpeg, @width, @height, @now)
                ON CONFLICT (sha256) DO NOTHING
                """,
                new
                {
                    name,
                    jpeg,
                    width,
                    height,
                    now = BookTime.Write(Clock.GetUtcNow()),
                }
            ) > 0
        );

    /// <summary>A photo's bytes; null when it is not here, or has not arrived yet.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public byte[]? Photo(string name) =>
        Try(db =>
            db.QuerySingleOrDefault<byte[]>(
                "SELECT jpeg FROM photos WHERE sha256 = @name",
                new { name }
            )
        );
}
