using Dapper;
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
    /// <summary>Up to <paramref name="limit"/> boards logged after a place in the sequence, and the place after which more follow.</summary>
    public (IReadOnlyList<Board> Boards, long? Next) List(BoardFilter filter, long after, int limit)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<BoardRow>(
            $"""
            {BoardTable.Rows}
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
            transaction);
        var found = BoardTable.Read(transaction, rows);
        return ([.. found.Take(limit).Select(state => state.ToBoard())], found.Count > limit ? found[limit - 1].Row.Sequence : null);
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

    /// <summary>All boards, as they are at one moment, oldest first.</summary>
    public IReadOnlyList<Board> ListAll()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return [.. BoardTable.Read(transaction, connection.Query<BoardRow>($"{BoardTable.Rows} ORDER BY sequence", transaction: transaction)).Select(state => state.ToBoard())];
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
