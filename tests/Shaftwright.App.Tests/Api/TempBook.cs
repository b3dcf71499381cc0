using Microsoft.Data.Sqlite;

namespace Shaftwright.App.Tests.Api;

/// <summary>A folder for one job book, gone afterwards.</summary>
internal sealed class TempBook : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("shaftwright-api-").FullName;

    public string File => Path.Combine(Folder, "jobbook.db");

    /// <summary>What SQLite finds wrong with the file, by its own hand; empty when it is sound.</summary>
    public IReadOnlyList<string> Faults() =>
        [
            .. Column("PRAGMA integrity_check").Where(line => line != "ok"),
            .. Column("PRAGMA foreign_key_check"),
        ];

    /// <summary>The first column of an answer.</summary>
    public IReadOnlyList<string> Column(string sql)
    {
        using var db = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = File,
                Pooling = false,
            }.ConnectionString
        );
        db.Open();
        using var command = db.CreateCommand();
#pragma warning disable CA2100 // Written in the tests.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var lines = new List<string>();
        while (reader.Read())
            lines.Add(reader.GetString(0));
        return lines;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
