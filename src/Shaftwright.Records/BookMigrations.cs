using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Shaftwright.Records;

/// <summary>One numbered step of the database's layout.</summary>
/// <param name="Number">Its number; steps count from 1.</param>
/// <param name="Sql">What it does.</param>
internal sealed record BookMigration(int Number, string Sql);

/// <summary>Brings a book's layout forward, never back. The number reached stands in SQLite's <c>user_version</c>.</summary>
internal static class BookMigrations
{
    /// <summary>"SWJB": marks the file as a job book (sqlite.org/pragma.html#pragma_application_id).</summary>
    public const int ApplicationId = 0x53574A42;

    /// <summary>The shipped steps: the .sql files beside this one.</summary>
    public static IReadOnlyList<BookMigration> Shipped { get; } = Load();

    /// <summary>Brings the book up, after a copy of it was put beside it.</summary>
    /// <exception cref="JobBookException">It is newer than the steps, or not a job book.</exception>
    public static void Apply(
        SqliteConnection db,
        string file,
        IReadOnlyList<BookMigration> steps,
        TimeProvider clock
    )
    {
        var latest = steps[^1].Number;
        var reached = Reached(db, file, latest);
        if (reached == latest)
            return;
        if (reached > 0)
            BackUp(db, $"{file}.before-{latest}-{clock.GetUtcNow():yyyyMMdd'T'HHmmss'Z'}");

        using var transaction = db.BeginTransaction(deferred: false);
        // Another program may have done it while this one waited.
        foreach (var step in steps.Skip(Reached(db, file, latest)))
        {
            Run(db, step.Sql);
            Run(
                db,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"PRAGMA user_version = {step.Number}; PRAGMA application_id = {ApplicationId}"
                )
            );
        }
        transaction.Commit();
    }

    /// <summary>A whole, consistent copy, what still stands in the log included.</summary>
    public static void BackUp(SqliteConnection db, string copy) =>
        db.Execute("VACUUM INTO @copy", new { copy });

    /// <summary>Runs several statements by SQLite's own hand: the reader behind <c>ExecuteNonQuery</c> swallows an error of a later one.</summary>
    private static void Run(SqliteConnection db, string sql) =>
        SqliteException.ThrowExceptionForRC(raw.sqlite3_exec(db.Handle!, sql), db.Handle!);

    private static int Reached(SqliteConnection db, string file, int latest)
    {
        var reached = db.ExecuteScalar<int>("PRAGMA user_version");
        var mark = db.ExecuteScalar<int>("PRAGMA application_id");
        var empty = db.ExecuteScalar<int>("SELECT count(*) FROM sqlite_schema") == 0;
        if (mark != ApplicationId && !(empty && mark == 0 && reached == 0))
            throw new JobBookException(
                BookTrouble.NotAJobBook,
                $"The file is a database of something else. It was not changed; move it away or choose another folder. File: {file}"
            );
        if (reached > latest)
            throw new JobBookException(
                BookTrouble.Newer,
                $"A newer Shaftwright wrote this job book (layout {reached}; this one knows up to {latest}). It was not changed; use the newer program. File: {file}"
            );
        return reached;
    }

    private static List<BookMigration> Load()
    {
        var assembly = typeof(BookMigrations).Assembly;
        var steps = new List<BookMigration>();
        foreach (var name in assembly.GetManifestResourceNames().Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            steps.Add(
                new(int.Parse(name.AsSpan(0, 4), CultureInfo.InvariantCulture), reader.ReadToEnd())
            );
        }
        return steps;
    }
}
