using Dapper;
using Microsoft.Data.Sqlite;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Records;

/// <summary>The job book: every job, and every edit that made it, in one SQLite file.</summary>
/// <remarks><para>An edit that was answered as accepted is on disk: the book runs in WAL mode with <c>synchronous=FULL</c>, which
/// syncs the log at every commit. NORMAL would survive a killed program, but may lose the last commits when the power
/// goes (sqlite.org/pragma.html#pragma_synchronous), and a workshop's socket does go.</para>
/// <para>Safe for several threads and several programs: each call opens its own connection, each write takes the write
/// lock before it reads.</para></remarks>
public sealed partial class JobBook : IDisposable
{
    /// <summary>The file's name in its folder.</summary>
    public const string FileName = "jobbook.db";

    /// <summary>Most edits answered by one <see cref="Since"/>.</summary>
    public const int MostHistory = 1000;

    private readonly string _connection;
    private readonly Action<SqliteConnection>? _opened;

    private JobBook(
        string file,
        string connection,
        TimeProvider clock,
        Action<SqliteConnection>? opened
    )
    {
        _opened = opened;
        File = file;
        _connection = connection;
        Clock = clock;
    }

    /// <summary>Full path of the file.</summary>
    public string File { get; }

    /// <summary>The clock that stamps arrivals.</summary>
    internal TimeProvider Clock { get; }

    /// <summary>Which book it is: 32 hexadecimal digits, made once and kept in the file; a copy of the file is the same book.</summary>
    public string Id { get; private set; } = "";

    /// <summary>Opens the book in a folder, making both when they are not there, and brings its layout up to date.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="clock">The clock that stamps arrivals; null for the system's.</param>
    /// <exception cref="JobBookException">It cannot be opened, is not a job book, or a newer program wrote it.</exception>
    public static JobBook Open(string folder, TimeProvider? clock = null) =>
        Open(folder, clock, BookMigrations.Shipped);

    internal static JobBook Open(
        string folder,
        TimeProvider? clock,
        IReadOnlyList<BookMigration> steps,
        SqliteOpenMode mode = SqliteOpenMode.ReadWriteCreate,
        Action<SqliteConnection>? opened = null
    )
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var file = Path.Combine(Path.GetFullPath(folder), FileName);
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new JobBookException(
                BookTrouble.CannotOpen,
                $"The folder for the job book cannot be made: {e.Message} Choose another with --data.",
                e
            );
        }
        var connection = new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Mode = mode,
            ForeignKeys = true,
            DefaultTimeout = 10, // Seconds that a writer waits for another one.
        };
        var book = new JobBook(
            file,
            connection.ConnectionString,
            clock ?? TimeProvider.System,
            opened
        );
        return book.Try(db =>
        {
            BookMigrations.Apply(db, file, steps, book.Clock);
            book.Id = db.QuerySingle<string>("SELECT id FROM book");
            return book;
        });
    }

    /// <summary>Applies edits in the order given, in one transaction: when this returns, what it answers is on disk.</summary>
    /// <param name="edits">Edits as they were read, good and bad.</param>
    /// <returns>One reply an edit, in the same order. A repeated id is accepted again without effect. A refused edit is kept in
    /// the table <c>refused</c> with its reasons.</returns>
    /// <exception cref="JobBookException">Nothing of it was kept.</exception>
    public IReadOnlyList<EditReply> Apply(IReadOnlyList<EditReading> edits)
    {
        ArgumentNullException.ThrowIfNull(edits);
        return Try<IReadOnlyList<EditReply>>(db =>
        {
            using var transaction = db.BeginTransaction(deferred: false);
            var page = new OpenPage(db, transaction, Clock.GetUtcNow());
            var replies = new List<EditReply>(edits.Count);
            foreach (var edit in edits)
                replies.Add(page.Apply(edit));
            page.Save();
            transaction.Commit();
            return replies;
        });
    }

    /// <summary>Applies edits made in this program.</summary>
    /// <param name="edits">The edits.</param>
    /// <exception cref="JobBookException">Nothing of it was kept.</exception>
    public IReadOnlyList<EditReply> Apply(params Edit[] edits) =>
        Apply([.. edits.Select(e => new EditReading(e, e.Id, EditJson.Write(e), []))]);

    /// <summary>The jobs, last touched first.</summary>
    /// <param name="putAwayToo">Also those put away.</param>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public IReadOnlyList<JobListing> Jobs(bool putAwayToo = false) =>
        Try(db =>
            db.Query<JobLine>(
                    """
                    SELECT id, coalesce(document ->> '$.name', '') AS name, coalesce(document ->> '$.about', '') AS about,
                           revision, updated, document ->> '$.records.putAway' AS putAway
                    FROM jobs WHERE @putAwayToo OR document ->> '$.records.putAway' IS NULL
                    ORDER BY updated DESC, id
                    """,
                    new { putAwayToo }
                )
                .Select(line => line.ToListing())
                .ToList()
        );

    /// <summary>One job, or null when there is none of that id.</summary>
    /// <param name="id">Its id.</param>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public JobReply? Find(string id) =>
        Try(db =>
            db.QuerySingleOrDefault<JobRow>(
                """
                SELECT id, revision, (SELECT max(seq) FROM edits WHERE job = jobs.id) AS seq, updated, document
                FROM jobs WHERE id = @id
                """,
                new { id }
            )
        )
            ?.ToReply();

    /// <summary>The history after a place in it, oldest first, at most <see cref="MostHistory"/>.</summary>
    /// <param name="seq">The place; 0 for all.</param>
    /// <param name="job">Only this job's; null for every job's.</param>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public HistoryReply Since(long seq, string? job = null) =>
        Try(db =>
        {
            var rows = db.Query<EditRow>(
                    """
                    SELECT seq, id, job, at, device, path, value, was, was_empty AS wasEmpty, entries, settles, applied_at AS appliedAt
                    FROM edits WHERE seq > @seq AND (@job IS NULL OR job = @job)
                    ORDER BY seq LIMIT @most
                    """,
                    new
                    {
                        seq,
                        job,
                        most = MostHistory + 1,
                    }
                )
                .ToList();
            var shown = rows.Take(MostHistory).Select(r => r.ToApplied()).ToList();
            return new HistoryReply(
                shown,
                shown.Count > 0 ? shown[^1].Seq : seq,
                rows.Count > MostHistory
            );
        });

    /// <summary>What was sent and could not be taken, oldest first, at most <see cref="MostHistory"/>.</summary>
    /// <param name="job">Only this job's; null for all.</param>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public IReadOnlyList<RefusedEntry> Refused(string? job = null) =>
        Try(db =>
            db.Query<RefusedRow>(
                    """
                    SELECT refused_at AS refusedAt, raw, refusals FROM refused
                    WHERE @job IS NULL OR job = @job ORDER BY seq LIMIT @most
                    """,
                    new { job, most = MostHistory }
                )
                .Select(r => r.ToEntry())
                .ToList()
        );

    /// <summary>Writes a whole, consistent copy of the book, also while it is in use.</summary>
    /// <param name="copy">The file to make; it must not be there yet.</param>
    /// <exception cref="JobBookException">It cannot be written.</exception>
    public void BackUp(string copy) =>
        Try(db =>
        {
            BookMigrations.BackUp(db, copy);
            return true;
        });

    /// <summary>What SQLite's own check finds wrong with the file; empty when it is sound.</summary>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public IReadOnlyList<string> Faults() =>
        Try(db =>
            db.Query<string>("PRAGMA integrity_check")
                .Where(line => line != "ok")
                .Concat(db.Query("PRAGMA foreign_key_check").Select(_ => "a row without its job"))
                .ToList()
        );

    /// <summary>Closes its connections. The last one to close folds the log into the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    /// <summary>Works on a connection of its own; what SQLite reports comes out in words.</summary>
    internal T Try<T>(Func<SqliteConnection, T> work)
    {
        try
        {
            using var db = new SqliteConnection(_connection);
            db.Open();
            db.Execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL");
            _opened?.Invoke(db);
            return work(db);
        }
        catch (SqliteException e)
        {
            throw JobBookException.From(e, File);
        }
    }
}
