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

    /// <summary>Greatest length.</summary>
    public Length? MaxLength { get; init; }

    /// <summary>Least width.</summary>
    public Length? MinWidth { get; init; }

    /// <summary>Only those logged before this day (UTC).</summary>
    public DateOnly? LoggedBefore { get; init; }

    /// <summary>Only those that are there: free, or held by a plan.</summary>
    public bool IsThere { get; init; }

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
    /// <summary>Up to <paramref name="limit"/> boards after a place in the list, and the place after which more follow.</summary>
    /// <param name="filter">Which boards.</param>
    /// <param name="order">How they are sorted; null for the order of logging.</param>
    /// <param name="after">The place; null for the beginning.</param>
    /// <param name="limit">The most boards.</param>
    public (IReadOnlyList<Board> Boards, BoardMark? Next) List(BoardFilter filter, BoardOrder? order, BoardMark? after, int limit)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var found = BoardTable.Read(transaction, Rows(transaction, filter, order, after, limit + 1L));
        BoardMark? next = null;
        if (found.Count > limit)
        {
            var last = found[limit - 1].Row.Sequence;
            next = new BoardMark(last, order is null ? null : connection.ExecuteScalar<string>(
                $"SELECT {order.Column} FROM boards WHERE sequence = @Sequence", new { Sequence = last }, transaction));
        }

        return ([.. found.Take(limit).Select(state => state.ToBoard())], next);
    }

    /// <summary>All boards of a kind, as they are at one moment, oldest first.</summary>
    public IReadOnlyList<Board> ListAll(BoardFilter filter)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return [.. BoardTable.Read(transaction, Rows(transaction, filter, null, null, long.MaxValue)).Select(state => state.ToBoard())];
    }

    private static IEnumerable<BoardRow> Rows(SqliteTransaction transaction, BoardFilter filter, BoardOrder? order, BoardMark? after, long rows)
    {
        var key = order?.Column ?? "''";
        var beyond = order?.IsDescending == true ? "<" : ">";
        return transaction.Connection!.Query<BoardRow>(
            $"""
            {BoardTable.Rows}
            WHERE (@Key IS NULL OR {key} {beyond} @Key OR ({key} = @Key AND sequence > @After))
              AND (@Species IS NULL OR species = @Species) AND (@Place IS NULL OR place = @Place) AND (@Batch IS NULL OR batch = @Batch)
              AND (@Status IS NULL OR status = @Status) AND (@Kind IS NULL OR kind = @Kind) AND (NOT @IsThere OR status IN ('free', 'reserved'))
              AND (@MinThickness IS NULL OR thickness_ticks >= @MinThickness)
              AND (@MaxThickness IS NULL OR thickness_ticks <= @MaxThickness)
              AND (@MinLength IS NULL OR length_ticks >= @MinLength) AND (@MaxLength IS NULL OR length_ticks <= @MaxLength)
              AND (@MinWidth IS NULL OR width_ticks >= @MinWidth) AND (@LoggedBefore IS NULL OR logged_at < @LoggedBefore)
            ORDER BY {key} {(order?.IsDescending == true ? "DESC" : "ASC")}, sequence LIMIT @Rows
            """,
            new
            {
                Key = after is null ? null : after.Key ?? "",
                After = after?.Sequence ?? 0,
                Rows = rows,
                filter.Species,
                filter.Place,
                filter.Batch,
                filter.IsThere,
                Status = filter.Status is { } status ? Words.Of(status) : null,
                Kind = filter.Kind is { } kind ? Words.Of(kind) : null,
                MinThickness = filter.MinThickness?.Ticks,
                MaxThickness = filter.MaxThickness?.Ticks,
                MinLength = filter.MinLength?.Ticks,
                MaxLength = filter.MaxLength?.Ticks,
                MinWidth = filter.MinWidth?.Ticks,
                LoggedBefore = filter.LoggedBefore is { } day ? Stamp.Of(new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero)) : null,
            },
            transaction);
    }

    /// <summary>All boards that a plan may take, as they are at one moment, oldest first; of several alike those that no plan holds.</summary>
    /// <param name="heldBy">A plan whose boards count as free, because the new plan is to take its place; null for none.</param>
    public IReadOnlyList<Board> ListFree(string? heldBy = null)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<BoardRow>(
            $"""
            {BoardTable.Rows}
            WHERE status = 'free' OR sequence IN (SELECT board_sequence FROM reservations WHERE plan_id = @HeldBy) ORDER BY sequence
            """,
            new { HeldBy = heldBy },
            transaction);
        return [.. BoardTable.Read(transaction, rows)
            .Select(state => state.ToBoard().ReleasedBy(heldBy)).Select(board => board with { Quantity = board.FreeQuantity, Holds = [] })];
    }

    /// <summary>The species, and the places, that the boards not yet cut or gone have.</summary>
    public (IReadOnlyList<string> Species, IReadOnlyList<string> Places) Names()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return (
            connection.Query<string>("SELECT DISTINCT species FROM boards WHERE status IN ('free', 'reserved') ORDER BY species", transaction: transaction).AsList(),
            connection.Query<string>(
                "SELECT DISTINCT place FROM boards WHERE place IS NOT NULL AND status IN ('free', 'reserved') ORDER BY place", transaction: transaction).AsList());
    }

    /// <summary>Every batch that was ever written, of boards that are gone too.</summary>
    public IReadOnlyList<string> Batches()
    {
        using var connection = database.Connect();
        return connection.Query<string>("SELECT DISTINCT batch FROM boards WHERE batch IS NOT NULL ORDER BY batch").AsList();
    }

    /// <summary>One board, or null.</summary>
    public Board? Find(string id)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return BoardTable.Find(transaction, id)?.ToBoard();
    }

    /// <summary>Logs boards, all or none; their ids are given here, and their times unless they have one.</summary>
    /// <param name="boards">The boards.</param>
    /// <param name="kind">What the journal calls it.</param>
    public IReadOnlyList<Board> Add(IReadOnlyList<Board> boards, JournalKind kind = JournalKind.Log)
    {
        using var change = StockChange.Begin(database, clock);
        var added = change.Add(boards);
        change.Commit(kind);
        return added;
    }

    /// <summary>Replaces what is known of the board with this id, but for when it was logged, where it comes from and who holds it; null if there is none.</summary>
    /// <exception cref="OffcutsException">A plan holds it and counts on what would change.</exception>
    public Board? Replace(Board board)
    {
        using var change = StockChange.Begin(database, clock);
        if (change.Find(board.Id) is not { } old)
        {
            return null;
        }

        var replaced = Replace(change, board, old);
        change.Commit(JournalKind.Edit);
        return replaced;
    }

    /// <summary>Replaces a board in a change that does more.</summary>
    /// <exception cref="OffcutsException">A plan holds it and counts on what would change.</exception>
    internal static Board Replace(StockChange change, Board board, BoardState old)
    {
        var was = old.ToBoard();
        var isAsPlanned = board.IsSameWoodAs(was) && board.Quantity >= was.Holds.Count && board.Status is BoardStatus.Free or BoardStatus.Reserved;
        if (!isAsPlanned)
        {
            RefuseHeld(was);
        }

        var replaced = (change.Dated(board) with { LoggedAt = was.LoggedAt, Origin = was.Origin, Price = was.Price, Holds = was.Holds }).WithHolds(was.Holds);
        change.Write(replaced, old);
        return replaced;
    }

    /// <summary>Forgets a board; false if there is none.</summary>
    /// <exception cref="OffcutsException">A plan holds it.</exception>
    public bool Delete(string id)
    {
        using var change = StockChange.Begin(database, clock);
        if (change.Find(id) is not { } board)
        {
            return false;
        }

        RefuseHeld(board.ToBoard());
        change.Erase(id);
        change.Commit(JournalKind.Delete);
        return true;
    }

    private static void RefuseHeld(Board board)
    {
        if (board.Holds.Count > 0)
        {
            var plans = string.Join(" and ", board.Holds.Select(hold => hold.PlanId).Distinct());
            throw new OffcutsException(
                ErrorCode.Conflict, $"Board {board.Id} is held by plan {plans}: release the plan first, or say how the board was cut when you close it.");
        }
    }
}
