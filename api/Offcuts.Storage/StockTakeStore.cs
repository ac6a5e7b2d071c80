using System.Globalization;
using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>What one step of a stock-take came to.</summary>
/// <param name="Finding">How the board was found; null where a sighting was taken back.</param>
/// <param name="Board">The board as it is now.</param>
/// <param name="Line">The line of the journal that tells what changed; null where nothing did.</param>
public sealed record StockTakeStep(Finding? Finding, Board Board, long? Line);

/// <summary>
/// The stock-takes. What they change goes through <see cref="StockChange"/> like every other change, with a line of the journal that names the
/// stock-take: what has been dealt with is read from there, so that a line that is taken back makes its boards unseen again.
/// </summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when.</param>
public sealed class StockTakeStore(Database database, TimeProvider clock)
{
    private const int MostNamed = 10;

    /// <summary>Begins a stock-take of a place, or goes on with the one that is open.</summary>
    public (StockTake Take, bool IsNew) Start(string place)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        if (connection.QuerySingleOrDefault<StockTakeRow>(
            $"{StockTakeTable.Rows} WHERE place = @Place AND finished_at IS NULL", new { Place = place }, transaction) is { } open)
        {
            return (open.ToStockTake(), false);
        }

        var now = clock.GetUtcNow();
        var number = connection.ExecuteScalar<long>(
            "INSERT INTO stock_takes (place, started_at) VALUES (@Place, @Now) RETURNING number", new { Place = place, Now = Stamp.Of(now) }, transaction);
        transaction.Commit();
        return (new StockTake(number, place, now, null), true);
    }

    /// <summary>Up to <paramref name="limit"/> stock-takes, newest first, before a number, and the number before which more follow.</summary>
    /// <param name="isOpen">Only those that are open, or only those that are finished; null for all.</param>
    /// <param name="before">The number; null for the newest.</param>
    /// <param name="limit">The most of them.</param>
    public (IReadOnlyList<StockTake> Takes, long? Next) List(bool? isOpen, long? before, int limit)
    {
        using var connection = database.Connect();
        var rows = connection.Query<StockTakeRow>(
            $"""
            {StockTakeTable.Rows}
            WHERE (@IsOpen IS NULL OR (finished_at IS NULL) = @IsOpen) AND (@Before IS NULL OR number < @Before) ORDER BY number DESC LIMIT @Rows
            """,
            new { IsOpen = isOpen, Before = before, Rows = limit + 1 }).Select(row => row.ToStockTake()).ToList();
        return ([.. rows.Take(limit)], rows.Count > limit ? rows[limit - 1].Number : null);
    }

    /// <summary>A stock-take without what it has dealt with; null if there is none of that number.</summary>
    public StockTake? FindTake(long number)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return StockTakeTable.Find(transaction, number);
    }

    /// <summary>How far a stock-take is; null if there is none of that number.</summary>
    public StockTakeState? Find(long number)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return StockTakeTable.Find(transaction, number) is { } take ? StockTakeTable.StateOf(transaction, take) : null;
    }

    /// <summary>A board is there. If the book has it elsewhere, or gone, it is moved here.</summary>
    /// <exception cref="OffcutsException">There is no such board or stock-take, the stock-take is finished, or the board was cut up.</exception>
    public StockTakeStep Confirm(long number, string boardId)
    {
        using var change = StockChange.Begin(database, clock);
        var take = Open(change, number);
        var (board, state) = Known(change, boardId);
        RefuseUsed(board);
        if (board.Status != BoardStatus.Gone && board.Place == take.Place)
        {
            return Seen(change, take, board);
        }

        var here = board with { Place = take.Place, Status = board.Status == BoardStatus.Gone ? BoardStatus.Free : board.Status };
        return new(Finding.Moved, BoardStore.Replace(change, here, state), change.Commit(JournalKind.Edit, stockTake: number));
    }

    /// <summary>A board is there, but otherwise than the book has it.</summary>
    /// <param name="number">The stock-take.</param>
    /// <param name="corrected">The board as it is; it lies here if it names no place.</param>
    /// <exception cref="OffcutsException">As for <see cref="Confirm"/>, or a plan holds the board and counts on what would change.</exception>
    public StockTakeStep Correct(long number, Board corrected)
    {
        using var change = StockChange.Begin(database, clock);
        var take = Open(change, number);
        var (board, state) = Known(change, corrected.Id);
        RefuseUsed(board);
        var replaced = BoardStore.Replace(change, corrected with { Place = corrected.Place ?? take.Place }, state);
        return new(
            board.Place == take.Place && board.Status != BoardStatus.Gone ? Finding.Corrected : Finding.Moved, replaced,
            change.Commit(JournalKind.Edit, stockTake: number));
    }

    /// <summary>A board is not there: it is struck off.</summary>
    /// <exception cref="OffcutsException">As for <see cref="Confirm"/>, or the book has it elsewhere, or a plan holds it.</exception>
    public StockTakeStep Strike(long number, string boardId)
    {
        using var change = StockChange.Begin(database, clock);
        var take = Open(change, number);
        var (board, state) = Known(change, boardId);
        if (board.Status is BoardStatus.Used or BoardStatus.Gone)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Board {board.Id} is {Words.Of(board.Status)} already.");
        }

        if (board.Place != take.Place)
        {
            var where = board.Place is { } other ? $"at '{other}'" : "at no place";
            throw new OffcutsException(
                ErrorCode.Conflict, $"By the book board {board.Id} lies {where}, and this is a stock-take of '{take.Place}', which leaves all others alone.");
        }

        return new(Finding.Struck, Gone(change, board, state), change.Commit(JournalKind.Edit, stockTake: number));
    }

    /// <summary>A board is there that is not in the book.</summary>
    /// <exception cref="OffcutsException">There is no such stock-take, or it is finished.</exception>
    public StockTakeStep Add(long number, Board board)
    {
        using var change = StockChange.Begin(database, clock);
        var take = Open(change, number);
        var added = change.Add(board with { Place = take.Place })[0];
        return new(Finding.Added, added, change.Commit(JournalKind.Log, stockTake: number));
    }

    /// <summary>Takes back that a board was seen just as the book has it. What changed the stock is taken back in the journal.</summary>
    /// <exception cref="OffcutsException">It was not seen so.</exception>
    public StockTakeStep Forget(long number, string boardId)
    {
        using var change = StockChange.Begin(database, clock);
        Open(change, number);
        var (board, _) = Known(change, boardId);
        var forgotten = change.Transaction.Connection!.Execute(
            "DELETE FROM sightings WHERE stock_take = @Number AND board_id = @Id", new { Number = number, board.Id }, change.Transaction);
        if (forgotten == 0)
        {
            throw new OffcutsException(
                ErrorCode.Conflict, $"Board {board.Id} was not confirmed in stock-take {Said(number)}. What it changed is taken back in the journal.");
        }

        change.CommitUntold();
        return new(null, board, null);
    }

    /// <summary>Ends a stock-take.</summary>
    /// <param name="number">The stock-take.</param>
    /// <param name="strike">Whether to strike off what was not seen, or to leave it in the book; null where all was seen.</param>
    /// <exception cref="OffcutsException">There is none, or it is finished; something was not seen and nobody said what to do; or a plan holds what is to be struck off.</exception>
    public StockTakeState Finish(long number, bool? strike)
    {
        using var change = StockChange.Begin(database, clock);
        var take = Open(change, number);
        var unseen = StockTakeTable.StateOf(change.Transaction, take).Unseen;
        if (unseen.Count > 0 && strike is null)
        {
            throw new OffcutsException(
                ErrorCode.Conflict, $"{Boards(unseen)} not seen yet. Look again, or say what is to become of what is unseen: strike it off, or leave it in the book.");
        }

        if (unseen.Where(board => board.Holds.Count > 0).ToList() is { Count: > 0 } held && strike == true)
        {
            throw new OffcutsException(
                ErrorCode.Conflict, $"{Boards(held)} held by plans and cannot be struck off. Release the plans ({string.Join(", ", held.SelectMany(board => board.Holds).Select(hold => hold.PlanId).Distinct())}), or leave what is unseen in the book.");
        }

        foreach (var board in unseen)
        {
            if (strike == true)
            {
                Gone(change, board, change.Find(board.Id)!);
            }
            else
            {
                StockTakeTable.Note(change, take, board.Id, Finding.Left);
            }
        }

        change.Transaction.Connection!.Execute(
            "UPDATE stock_takes SET finished_at = @Now WHERE number = @Number", new { Now = Stamp.Of(change.Now), Number = number }, change.Transaction);
        if (unseen.Count > 0 && strike == true)
        {
            change.Commit(JournalKind.Edit, stockTake: number);
        }
        else
        {
            change.CommitUntold();
        }

        return Find(number)!;
    }

    private static StockTakeStep Seen(StockChange change, StockTake take, Board board)
    {
        StockTakeTable.Note(change, take, board.Id, Finding.Confirmed);
        change.CommitUntold();
        return new(Finding.Confirmed, board, null);
    }

    private static StockTake Open(StockChange change, long number) => StockTakeTable.Find(change.Transaction, number) switch
    {
        null => throw new OffcutsException(ErrorCode.NotFound, $"There is no stock-take {Said(number)}. List them to see which there are."),
        { FinishedAt: not null } => throw new OffcutsException(ErrorCode.Conflict, $"Stock-take {Said(number)} is finished: start another of its place."),
        var open => open,
    };

    private static (Board Board, BoardState State) Known(StockChange change, string id) => change.Find(id) is { } state
        ? (state.ToBoard(), state)
        : throw new OffcutsException(ErrorCode.NotFound, $"There is no board '{id}'. If it has no id, log it by a line that says what it is.");

    private static void RefuseUsed(Board board)
    {
        if (board.Status == BoardStatus.Used)
        {
            throw new OffcutsException(
                ErrorCode.Conflict, $"Board {board.Id} is cut up, and what was left of it has ids of its own. If this is a piece of it, log it by a line that says what it is.");
        }
    }

    private static Board Gone(StockChange change, Board board, BoardState state) => BoardStore.Replace(change, board with { Status = BoardStatus.Gone }, state);

    private static string Boards(IReadOnlyList<Board> boards)
    {
        var named = string.Join(", ", boards.Take(MostNamed).Select(board => board.Id));
        return boards.Count == 1 ? $"Board {named} is"
            : boards.Count <= MostNamed ? $"Boards {named} are"
            : string.Create(CultureInfo.InvariantCulture, $"Boards {named} and {boards.Count - MostNamed} more are");
    }

    private static string Said(long number) => number.ToString(CultureInfo.InvariantCulture);
}
