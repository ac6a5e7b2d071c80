using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>Which boards to list; what is null does not restrict.</summary>
public sealed record BoardFilter
{
    /// <summary>Species id.</summary>
    public string? Species { get; init; }

    /// <summary>Least thickness.</summary>
    public Length? MinThickness { get; init; }

    /// <summary>Greatest thickness.</summary>
    public Length? MaxThickness { get; init; }

    /// <summary>Least length.</summary>
    public Length? MinLength { get; init; }

    /// <summary>Least width.</summary>
    public Length? MinWidth { get; init; }

    /// <summary>Status.</summary>
    public BoardStatus? Status { get; init; }

    /// <summary>Kind.</summary>
    public BoardKind? Kind { get; init; }

    /// <summary>Batch, exactly.</summary>
    public string? Batch { get; init; }

    /// <summary>Place, exactly.</summary>
    public string? Place { get; init; }
}

/// <summary>The boards on the rack.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when a board is logged.</param>
public sealed class BoardStore(Database database, TimeProvider clock)
{
    private const int DefectsAtOnce = 500;

    private const string Columns = """
        sequence, id, kind, species, thickness_ticks AS ThicknessTicks, width_ticks AS WidthTicks, length_ticks AS LengthTicks,
        quantity, surface, appearance, batch, left_end AS LeftEnd, right_end AS RightEnd,
        bow_ticks AS BowTicks, crook_ticks AS CrookTicks, cup_ticks AS CupTicks, twist_ticks AS TwistTicks, place, source, note, status, logged_at AS LoggedAt
        """;

    /// <summary>Up to <paramref name="limit"/> boards logged after a place in the sequence, and the place after which more follow.</summary>
    public (IReadOnlyList<Board> Boards, long? Next) List(BoardFilter filter, long after, int limit)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<BoardRow>(
            $"""
            SELECT {Columns} FROM boards
            WHERE sequence > @After
              AND (@Species IS NULL OR species = @Species) AND (@Place IS NULL OR place = @Place) AND (@Batch IS NULL OR batch = @Batch)
              AND (@Status IS NULL OR status = @Status) AND (@Kind IS NULL OR kind = @Kind)
              AND (@MinThickness IS NULL OR thickness_ticks >= @MinThickness)
              AND (@MaxThickness IS NULL OR thickness_ticks <= @MaxThickness)
              AND (@MinLength IS NULL OR length_ticks >= @MinLength) AND (@MinWidth IS NULL OR width_ticks >= @MinWidth)
            ORDER BY sequence LIMIT @Rows
            """,
            new
            {
                After = after,
                Rows = limit + 1,
                filter.Species,
                filter.Place,
                filter.Batch,
                Status = filter.Status is { } status ? Words.Of(status) : null,
                Kind = filter.Kind is { } kind ? Words.Of(kind) : null,
                MinThickness = filter.MinThickness?.Ticks,
                MaxThickness = filter.MaxThickness?.Ticks,
                MinLength = filter.MinLength?.Ticks,
                MinWidth = filter.MinWidth?.Ticks,
            },
            transaction).AsList();
        var page = rows.Take(limit).ToList();
        return (WithDefects(connection, transaction, page), rows.Count > limit ? page[^1].Sequence : null);
    }

    /// <summary>All boards that are free, as they are at one moment, oldest first.</summary>
    public IReadOnlyList<Board> ListFree()
    {
        using var connection = database.Connect();
        // One transaction, so that a board changed meanwhile is neither missed nor told twice.
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<BoardRow>(
            $"SELECT {Columns} FROM boards WHERE status = @Status ORDER BY sequence", new { Status = Words.Of(BoardStatus.Free) }, transaction);
        // By parts, because SQLite takes only so many parameters at once.
        return [.. rows.Chunk(DefectsAtOnce).SelectMany(part => WithDefects(connection, transaction, [.. part]))];
    }

    /// <summary>One board, or null.</summary>
    public Board? Find(string id)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<BoardRow>($"SELECT {Columns} FROM boards WHERE id = @Id", new { Id = id }, transaction).AsList();
        return WithDefects(connection, transaction, rows).SingleOrDefault();
    }

    /// <summary>Logs boards, all or none; their ids are given here, and their times unless they have one.</summary>
    public IReadOnlyList<Board> Add(IReadOnlyList<Board> boards)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var now = clock.GetUtcNow();
        var first = connection.ExecuteScalar<long>(
            "UPDATE board_sequence SET next = next + @Count RETURNING next - @Count", new { boards.Count }, transaction);
        var logged = boards.Select((board, index) => board with { Id = BoardIds.FromNumber(first + index), LoggedAt = board.LoggedAt == default ? now : board.LoggedAt }).ToList();
        for (var index = 0; index < logged.Count; index++)
        {
            Insert(connection, transaction, logged[index], first + index);
        }

        transaction.Commit();
        return logged;
    }

    /// <summary>Replaces what is known of the board with this id, but for the time it was logged; null if there is none.</summary>
    public Board? Replace(Board board)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var old = connection.QuerySingleOrDefault<BoardRow>(
            $"SELECT {Columns} FROM boards WHERE id = @Id", new { board.Id }, transaction);
        if (old is null)
        {
            return null;
        }

        var replaced = board with { LoggedAt = old.ToBoard([]).LoggedAt };
        connection.Execute("DELETE FROM boards WHERE sequence = @Sequence", new { old.Sequence }, transaction);
        Insert(connection, transaction, replaced, old.Sequence);
        transaction.Commit();
        return replaced;
    }

    /// <summary>Forgets a board; false if there is none.</summary>
    public bool Delete(string id)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var deleted = connection.Execute("DELETE FROM boards WHERE id = @Id", new { Id = id }, transaction);
        transaction.Commit();
        return deleted > 0;
    }

    private static void Insert(SqliteConnection connection, SqliteTransaction transaction, Board board, long sequence)
    {
        connection.Execute(
            """
            INSERT INTO boards (sequence, id, kind, species, thickness_ticks, width_ticks, length_ticks, quantity, surface,
                                appearance, batch, left_end, right_end, bow_ticks, crook_ticks, cup_ticks, twist_ticks, place, source, note, status, logged_at)
            VALUES (@Sequence, @Id, @Kind, @Species, @ThicknessTicks, @WidthTicks, @LengthTicks, @Quantity, @Surface,
                    @Appearance, @Batch, @LeftEnd, @RightEnd, @BowTicks, @CrookTicks, @CupTicks, @TwistTicks, @Place, @Source, @Note, @Status, @LoggedAt)
            """,
            BoardRow.Of(board, sequence),
            transaction);
        connection.Execute(
            """
            INSERT INTO board_defects (board_sequence, ordinal, kind, x_ticks, y_ticks, length_ticks, width_ticks)
            VALUES (@BoardSequence, @Ordinal, @Kind, @XTicks, @YTicks, @LengthTicks, @WidthTicks)
            """,
            board.Defects.Select((defect, ordinal) => DefectRow.Of(defect, sequence, ordinal)),
            transaction);
    }

    private static List<Board> WithDefects(SqliteConnection connection, SqliteTransaction transaction, List<BoardRow> rows)
    {
        var defects = connection.Query<DefectRow>(
            """
            SELECT board_sequence AS BoardSequence, ordinal, kind, x_ticks AS XTicks, y_ticks AS YTicks,
                   length_ticks AS LengthTicks, width_ticks AS WidthTicks
            FROM board_defects WHERE board_sequence IN @Sequences ORDER BY board_sequence, ordinal
            """,
            new { Sequences = rows.Select(row => row.Sequence) },
            transaction).ToLookup(defect => defect.BoardSequence);
        return [.. rows.Select(row => row.ToBoard(defects[row.Sequence]))];
    }
}
