using Dapper;

namespace Shaftwright.Records.Devices;

/// <summary>The phones that may reach a job book over the network, kept in the book itself.</summary>
/// <param name="book">The book.</param>
public sealed class PairedDevices(JobBook book)
{
    /// <summary>Longest name of a device, characters.</summary>
    public const int LongestName = 40;

    /// <summary>How long a token lives that went through the air unencrypted: a working day. Whoever overheard it has no longer.</summary>
    public static readonly TimeSpan PlainLife = TimeSpan.FromHours(12);

    /// <summary>How long a phone may stay away before it has to be paired again.</summary>
    public static readonly TimeSpan UnusedLife = TimeSpan.FromDays(180);

    /// <summary>How finely <see cref="PairedDevice.LastSeen"/> is kept: each writing waits for the disk.</summary>
    public static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    private const int TokenBytes = 32;

    private const string Columns = """
        id, name, plain, paired_at AS pairedAt, last_seen AS lastSeen, revoked_at AS revokedAt
        """;

    /// <summary>A name as it is kept, or null when it is none: empty, or nothing but blanks and control characters.</summary>
    public static string? NameFrom(string? typed)
    {
        var name = string.Concat((typed ?? "").Where(c => !char.IsControl(c))).Trim();
        return name.Length == 0 ? null : name[..Math.Min(name.Length, LongestName)].TrimEnd();
    }

    /// <summary>Gives a device a token of its own.</summary>
    /// <param name="name">From <see cref="NameFrom"/>.</param>
    /// <param name="plain">True when the token goes to it unencrypted.</param>
    /// <param name="replaces">A token that it shows meanwhile; the line of that one goes. Null when it shows none.</param>
    /// <returns>The token, which is kept nowhere here, and the line in the list.</returns>
    /// <exception cref="JobBookException">Nothing was kept.</exception>
    public (string Token, PairedDevice Device) Pair(
        string name,
        bool plain,
        string? replaces = null
    )
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        var now = book.Clock.GetUtcNow();
        var token = Secret.Make(TokenBytes);
        var device = new PairedDevice(Guid.NewGuid().ToString("N"), name, plain, now, now, null);
        book.Try(db =>
        {
            using var transaction = db.BeginTransaction(deferred: false);
            if (replaces is not null)
                db.Execute(
                    "DELETE FROM devices WHERE token_hash = @hash",
                    new { hash = Secret.Hash(replaces) },
                    transaction
                );
            // Lines that can never come in again would pile up: with plain connections there is one a day.
            db.Execute(
                "DELETE FROM devices WHERE last_seen < @unused OR (plain = 1 AND paired_at < @plain)",
                new
                {
                    unused = BookTime.Write(now - UnusedLife),
                    plain = BookTime.Write(now - PlainLife),
                },
                transaction
            );
            db.Execute(
                """
                INSERT INTO devices (id, token_hash, name, plain, paired_at, last_seen)
                VALUES (@Id, @hash, @Name, @Plain, @at, @at)
                """,
                new
                {
                    device.Id,
                    hash = Secret.Hash(token),
                    device.Name,
                    device.Plain,
                    at = BookTime.Write(now),
                },
                transaction
            );
            transaction.Commit();
            return true;
        });
        return (token, device);
    }

    /// <summary>Whether whoever shows a token may come in, and notes that it was seen.</summary>
    /// <param name="token">What it shows; null for nothing.</param>
    /// <param name="plain">True when it came over an unencrypted connection. A token made on the other kind is unknown there: one that was
    /// overheard opens no encrypted door, and one that was not is not to be shown in the clear.</param>
    /// <returns>The answer, and which device it is, if any.</returns>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public (Admission Answer, PairedDevice? Device) Admit(string? token, bool plain)
    {
        if (string.IsNullOrEmpty(token) || token.Length > 100)
            return (Admission.Unknown, null);
        var now = book.Clock.GetUtcNow();
        return book.Try(db =>
        {
            var device = db.QuerySingleOrDefault<DeviceRow>(
                    $"SELECT {Columns} FROM devices WHERE token_hash = @hash AND plain = @plain",
                    new { hash = Secret.Hash(token), plain }
                )
                ?.ToDevice();
            var answer = device switch
            {
                null => Admission.Unknown,
                { RevokedAt: not null } => Admission.Revoked,
                { Plain: true } when now - device.PairedAt > PlainLife => Admission.Expired,
                _ when now - device.LastSeen > UnusedLife => Admission.Expired,
                _ => Admission.Known,
            };
            if (answer == Admission.Known && now - device!.LastSeen >= SeenStep)
                db.Execute(
                    "UPDATE devices SET last_seen = @at WHERE id = @Id",
                    new { at = BookTime.Write(now), device.Id }
                );
            return (answer, device);
        });
    }

    /// <summary>Every device, last seen first, those taken off included.</summary>
    /// <exception cref="JobBookException">The book cannot be read.</exception>
    public IReadOnlyList<PairedDevice> All() =>
        book.Try(db =>
            db.Query<DeviceRow>($"SELECT {Columns} FROM devices ORDER BY last_seen DESC, id")
                .Select(row => row.ToDevice())
                .ToList()
        );

    /// <summary>Takes a device off the list, or lets it in again: its token is kept, so that a wrong tap can be undone.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="off">True to take it off.</param>
    /// <returns>False when there is none of that id.</returns>
    /// <exception cref="JobBookException">Nothing was changed.</exception>
    public bool Revoke(string id, bool off = true)
    {
        var now = BookTime.Write(book.Clock.GetUtcNow());
        return book.Try(db =>
                db.Execute(
                    "UPDATE devices SET revoked_at = @at WHERE id = @id",
                    new { at = off ? now : null, id }
                )
            ) > 0;
    }

    // Dapper fills it by name.
    private sealed record DeviceRow
    {
        public required string Id { get; init; }
        public required string Name { get; init; }
        public long Plain { get; init; }
        public required string PairedAt { get; init; }
        public required string LastSeen { get; init; }
        public string? RevokedAt { get; init; }

        public PairedDevice ToDevice() =>
            new(
                Id,
                Name,
                Plain != 0,
                BookTime.Read(PairedAt),
                BookTime.Read(LastSeen),
                RevokedAt is null ? null : BookTime.Read(RevokedAt)
            );
    }
}
