using Microsoft.Data.Sqlite;

namespace Shaftwright.Records;

/// <summary>What kept the job book from being read or written.</summary>
public enum BookTrouble
{
    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>The file or its folder cannot be written.</summary>
    ReadOnly,

    /// <summary>The file or its folder cannot be opened.</summary>
    CannotOpen,

    /// <summary>Another program held the book for too long.</summary>
    Busy,

    /// <summary>The file is not a job book.</summary>
    NotAJobBook,

    /// <summary>The file is damaged.</summary>
    Damaged,

    /// <summary>A newer Shaftwright wrote it.</summary>
    Newer,

    /// <summary>The disk answered with an error.</summary>
    DiskError,
}

/// <summary>The job book could not be read or written. Nothing of the call that threw was kept; the message is for a person.</summary>
public sealed class JobBookException : Exception
{
    /// <summary>A trouble, in words.</summary>
    public JobBookException(BookTrouble trouble, string message, Exception? inner = null)
        : base(message, inner) => Trouble = trouble;

    /// <summary>What kind of trouble.</summary>
    public BookTrouble Trouble { get; }

    /// <summary>Words for what SQLite reports. Result codes: sqlite.org/rescode.html.</summary>
    internal static JobBookException From(SqliteException e, string file)
    {
        var (trouble, words) = e.SqliteErrorCode switch
        {
            13 => (
                BookTrouble.DiskFull,
                "The disk is full. Nothing was saved; make room and send it again."
            ),
            8 => (
                BookTrouble.ReadOnly,
                "The job book cannot be written. Nothing was saved; allow writing to its folder and send it again."
            ),
            14 or 3 or 23 => (
                BookTrouble.CannotOpen,
                "The job book cannot be opened. Check that its folder is there and may be written."
            ),
            5 or 6 => (
                BookTrouble.Busy,
                "Another program holds the job book. Nothing was saved; close it and send it again."
            ),
            26 => (
                BookTrouble.NotAJobBook,
                "The file is not a job book. It was not changed; move it away or choose another folder."
            ),
            11 => (
                BookTrouble.Damaged,
                "The job book is damaged. It was not changed; restore a backup beside it and keep the damaged file."
            ),
            _ => (
                BookTrouble.DiskError,
                $"The job book could not be read or written ({e.SqliteErrorCode}/{e.SqliteExtendedErrorCode}). Nothing was saved."
            ),
        };
        return new(trouble, $"{words} File: {file}", e);
    }
}
