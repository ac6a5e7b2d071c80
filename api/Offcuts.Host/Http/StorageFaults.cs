using Microsoft.Data.Sqlite;

namespace Offcuts.Host.Http;

/// <summary>SQLite faults that the user can mend, told apart by code and never by message (sqlite.org/rescode.html).</summary>
internal static class StorageFaults
{
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int NotADatabase = 26;

    /// <summary>Whether the file itself is damaged.</summary>
    public static bool IsDamage(SqliteException fault) => (fault.SqliteExtendedErrorCode & 0xFF) is Corrupt or NotADatabase;

    /// <summary>What to answer; null for any other fault.</summary>
    public static RefusedException? Of(SqliteException fault) => (fault.SqliteExtendedErrorCode & 0xFF) switch
    {
        // The low byte of an extended code is its primary code: SQLITE_BUSY_SNAPSHOT (517) is busy too.
        Busy or Locked => new(StatusCodes.Status503ServiceUnavailable, "Another process holds the database: try again in a moment.", retryAfterSeconds: 1),
        ReadOnly => new(StatusCodes.Status507InsufficientStorage, "The database cannot be written: make its file and folder writable for this user."),
        Full => new(StatusCodes.Status507InsufficientStorage, "The disk that holds the database is full: make room and ask again."),
        _ => null,
    };
}
