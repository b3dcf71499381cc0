using Dapper;
using Microsoft.Data.Sqlite;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Records.Tests;

/// <summary>Full disks, read-only folders, files that are not job books, layouts from the past and the future.</summary>
public sealed class JobBookFaultTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static JobBookException Trouble(Action act, BookTrouble trouble)
    {
        var e = Assert.Throws<JobBookException>(act);
        Assert.Equal(trouble, e.Trouble);
        Assert.Contains(JobBook.FileName, e.Message, StringComparison.Ordinal);
        return e;
    }

    [Fact]
    public void Apply_DiskFull_KeepsNothingOfTheBatchAndGoesOnAfterwards()
    {
        long? pages = null;
        using var book = JobBook.Open(
            _folder.Path,
            null,
            BookMigrations.Shipped,
            opened: db =>
            {
                // What a full disk does to SQLite, without filling one: the file may not grow.
                db.Execute($"PRAGMA max_page_count = {pages ?? 1_000_000}");
            }
        );
        book.Apply(Make.Job("a", "before"));
        var before = book.Find("a")!;
        using (var db = new SqliteConnection($"Data Source={_folder.Book}"))
            pages = db.ExecuteScalar<long>("PRAGMA page_count");

        var large = $"\"{new string('x', 400)}\"";
        var batch = Enumerable.Range(0, 200).Select(_ => Make.Set("a", "/about", large)).ToArray();
        var e = Trouble(() => book.Apply(batch), BookTrouble.DiskFull);
        Assert.Contains("Nothing was saved", e.Message, StringComparison.Ordinal);

        Assert.Equal(before.Revision, book.Find("a")!.Revision);
        Assert.Single(book.Since(0).Edits);
        Assert.Empty(book.Faults());
        pages = null;
        Assert.All(book.Apply(batch), r => Assert.True(r.Outcome == Taken.Applied));
    }

    [Fact]
    public void Apply_AReadOnlyBook_IsReadableAndRefusesInWords()
    {
        using (var book = JobBook.Open(_folder.Path))
            book.Apply(Make.Job("a", "before"));
        using var readOnly = JobBook.Open(
            _folder.Path,
            null,
            BookMigrations.Shipped,
            SqliteOpenMode.ReadOnly
        );
        Trouble(() => readOnly.Apply(Make.Job("b")), BookTrouble.ReadOnly);
        Assert.Equal("before", Assert.Single(readOnly.Jobs()).Name);
    }

    [Fact]
    public void Open_AFolderThatCannotBeMade_IsSaidInWords()
    {
        var file = Path.Combine(_folder.Path, "a-file");
        File.WriteAllText(file, "in the way");
        var e = Assert.Throws<JobBookException>(() => JobBook.Open(Path.Combine(file, "data")));
        Assert.Equal(BookTrouble.CannotOpen, e.Trouble);
        Assert.Contains("--data", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_AFolderInThePlaceOfTheFile_IsSaidInWords()
    {
        Directory.CreateDirectory(_folder.Book);
        Trouble(() => JobBook.Open(_folder.Path), BookTrouble.CannotOpen);
    }

    [Fact]
    public void Open_AFileThatIsNoDatabase_IsRefusedAndLeftAlone()
    {
        var text = new string('s', 4096);
        File.WriteAllText(_folder.Book, text);
        Trouble(() => JobBook.Open(_folder.Path), BookTrouble.NotAJobBook);
        Assert.Equal(text, File.ReadAllText(_folder.Book));
    }

    [Fact]
    public void Open_ADatabaseOfSomethingElse_IsRefusedAndLeftAlone()
    {
        using (var db = new SqliteConnection($"Data Source={_folder.Book};Pooling=False"))
            db.Execute("CREATE TABLE recipes (name TEXT)");
        Trouble(() => JobBook.Open(_folder.Path), BookTrouble.NotAJobBook);
        using var again = new SqliteConnection($"Data Source={_folder.Book};Pooling=False");
        Assert.Equal(1, again.ExecuteScalar<int>("SELECT count(*) FROM sqlite_schema"));
    }

    [Fact]
    public void Apply_ADamagedFile_IsSaidInWordsNotThrownBare()
    {
        using (var book = JobBook.Open(_folder.Path))
        {
            book.Apply([
                Make.Job("a"),
                .. Enumerable
                    .Range(0, 300)
                    .Select(i => Make.Set("a", "/about", $"\"{new string('x', 400)}\"")),
            ]);
        }
        using (var file = File.OpenWrite(_folder.Book))
        {
            file.Position = 4096;
            file.Write(new byte[file.Length - 4096]);
        }
        Trouble(
            () =>
            {
                using var book = JobBook.Open(_folder.Path);
                book.Apply(Make.Set("a", "/name", "\"x\""));
            },
            BookTrouble.Damaged
        );
    }

    private static readonly BookMigration s_next = new(
        BookMigrations.Shipped.Count + 1,
        "ALTER TABLE jobs ADD COLUMN shelf TEXT"
    );

    [Fact]
    public void Open_AnOlderLayout_IsCopiedAsideThenBroughtForward()
    {
        using (var book = JobBook.Open(_folder.Path))
            book.Apply(Make.Job("a", "kept"));
        using (var newer = JobBook.Open(_folder.Path, null, [.. BookMigrations.Shipped, s_next]))
        {
            Assert.Equal("kept", Assert.Single(newer.Jobs()).Name);
            Assert.Empty(newer.Faults());
        }
        var copy = Assert.Single(Directory.GetFiles(_folder.Path, $"{JobBook.FileName}.before-*"));
        using var old = new SqliteConnection($"Data Source={copy};Pooling=False");
        Assert.Equal(BookMigrations.Shipped.Count, old.ExecuteScalar<int>("PRAGMA user_version"));
        Assert.Equal("kept", old.ExecuteScalar<string>("SELECT document ->> '$.name' FROM jobs"));

        // Opened again, there is nothing to do and no second copy.
        JobBook.Open(_folder.Path, null, [.. BookMigrations.Shipped, s_next]).Dispose();
        Assert.Single(Directory.GetFiles(_folder.Path, $"{JobBook.FileName}.before-*"));
    }

    [Fact]
    public void Open_ABookFromBeforeIds_GetsOneAndKeepsItsJobs()
    {
        // As a program of that time left it.
        using (
            var old = new SqliteConnection(
                $"Data Source={Path.Combine(_folder.Path, JobBook.FileName)};Pooling=False"
            )
        )
        {
            old.Open();
            old.Execute(BookMigrations.Shipped[0].Sql);
            old.Execute(
                $"PRAGMA user_version = 1; PRAGMA application_id = {BookMigrations.ApplicationId}"
            );
            old.Execute(
                """
                INSERT INTO jobs VALUES ('a', '{"format":1,"name":"kept"}', 1, '2026-11-25T09:30:00.0000000Z')
                """
            );
        }
        string id;
        using (var book = JobBook.Open(_folder.Path))
        {
            id = book.Id;
            Assert.Equal(32, id.Length);
            Assert.Equal("kept", Assert.Single(book.Jobs()).Name);
            Assert.Empty(book.Faults());
        }
        using (var again = JobBook.Open(_folder.Path))
            Assert.Equal(id, again.Id);
        using var other = JobBook.Open(Path.Combine(_folder.Path, "other"));
        Assert.NotEqual(id, other.Id);
    }

    [Fact]
    public void Open_ANewerLayout_IsRefusedAndLeftAlone()
    {
        JobBook.Open(_folder.Path, null, [.. BookMigrations.Shipped, s_next]).Dispose();
        var e = Trouble(() => JobBook.Open(_folder.Path), BookTrouble.Newer);
        Assert.Contains("newer Shaftwright", e.Message, StringComparison.Ordinal);
        JobBook.Open(_folder.Path, null, [.. BookMigrations.Shipped, s_next]).Dispose();
    }

    [Fact]
    public void Open_AMigrationThatFails_LeavesTheBookAsItWas()
    {
        using (var book = JobBook.Open(_folder.Path))
            book.Apply(Make.Job("a", "kept"));
        var broken = s_next with
        {
            Sql = "ALTER TABLE jobs ADD COLUMN shelf TEXT; SELECT nonsense",
        };
        Assert.Throws<JobBookException>(() =>
            JobBook.Open(_folder.Path, null, [.. BookMigrations.Shipped, broken])
        );
        using var again = JobBook.Open(_folder.Path);
        Assert.Equal("kept", Assert.Single(again.Jobs()).Name);
        Assert.True(again.Apply(Make.Job("b"))[0].Accepted);
    }

    [Fact]
    public void Migrations_Shipped_AreNumberedFrom1WithoutAGap() =>
        Assert.Equal(
            Enumerable.Range(1, BookMigrations.Shipped.Count),
            BookMigrations.Shipped.Select(m => m.Number)
        );

    [Fact]
    public void BackUp_WhileInUse_IsAWholeBookOfItsOwn()
    {
        using var book = JobBook.Open(_folder.Path);
        book.Apply(Make.Job("a", "kept"));
        using var elsewhere = new TempFolder();
        book.BackUp(elsewhere.Book);
        book.Apply(Make.Job("b"));
        using var copy = JobBook.Open(elsewhere.Path);
        Assert.Equal("kept", Assert.Single(copy.Jobs()).Name);
        Assert.Empty(copy.Faults());
        Assert.Throws<JobBookException>(() => book.BackUp(elsewhere.Book));
    }

    /// <summary>Whether a commit waits for the disk cannot be seen from inside a running machine; that it is asked to, can.</summary>
    [Fact]
    public void Open_EveryConnection_SyncsAtCommitKeepsALogAndMindsItsKeys()
    {
        var seen = "";
        using var book = JobBook.Open(
            _folder.Path,
            null,
            BookMigrations.Shipped,
            opened: db =>
                seen =
                    $"{db.ExecuteScalar<string>("PRAGMA journal_mode")} {db.ExecuteScalar<int>("PRAGMA synchronous")} {db.ExecuteScalar<int>("PRAGMA foreign_keys")}"
        );
        book.Jobs();
        Assert.Equal("wal 2 1", seen);
    }
}
