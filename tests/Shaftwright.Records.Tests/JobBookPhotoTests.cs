using Dapper;
using Microsoft.Data.Sqlite;

namespace Shaftwright.Records.Tests;

/// <summary>Photos in the book: kept once, whole or not at all, and in every copy of the book.</summary>
public sealed class JobBookPhotoTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Keep_TheSamePhotoTwice_IsOne()
    {
        using var book = JobBook.Open(_folder.Path);
        var (name, bytes) = Photo(1);
        Assert.True(book.Keep(name, bytes, 64, 48));
        Assert.False(book.Keep(name, bytes, 64, 48));
        Assert.Equal(bytes, book.Photo(name));
        Assert.Null(book.Photo(Photo(2).Name));
    }

    [Fact]
    public void Keep_DiskFull_KeepsNothingOfItSaysSoAndGoesOnAfterwards()
    {
        long? pages = null;
        using var book = JobBook.Open(
            _folder.Path,
            null,
            BookMigrations.Shipped,
            opened: db => db.Execute($"PRAGMA max_page_count = {pages ?? 1_000_000}")
        );
        var (before, kept) = Photo(1);
        book.Keep(before, kept, 64, 48);
        using (var db = new SqliteConnection($"Data Source={_folder.Book}"))
            pages = db.ExecuteScalar<long>("PRAGMA page_count");
        var (name, bytes) = Photo(2, 300_000);
        var e = Assert.Throws<JobBookException>(() => book.Keep(name, bytes, 64, 48));
        Assert.Equal(BookTrouble.DiskFull, e.Trouble);
        Assert.Null(book.Photo(name));
        Assert.Equal(kept, book.Photo(before));
        Assert.Empty(book.Faults());
        pages = null;
        Assert.True(book.Keep(name, bytes, 64, 48));
        Assert.Equal(bytes, book.Photo(name));
    }

    [Fact]
    public void BackUp_OfABookWithPhotos_HasThem()
    {
        using var book = JobBook.Open(_folder.Path);
        var (name, bytes) = Photo(1, 100_000);
        book.Keep(name, bytes, 64, 48);
        using var elsewhere = new TempFolder();
        book.BackUp(elsewhere.Book);
        using var copy = JobBook.Open(elsewhere.Path);
        Assert.Equal(bytes, copy.Photo(name));
    }

    private static (string Name, byte[] Bytes) Photo(int seed, int coded = 200)
    {
        var bytes = Jpeg.Of(64, 48, seed: seed, coded: coded);
        return (PhotoFile.NameOf(bytes), bytes);
    }
}
