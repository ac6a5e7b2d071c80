using System.Globalization;
using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>A board in stock that a plan cuts.</summary>
/// <param name="Number">Its number in the plan.</param>
/// <param name="Expected">The board as it was when the plan was made.</param>
public sealed record WantedBoard(int Number, Board Expected);

/// <summary>A board of a plan that was cut.</summary>
/// <param name="Number">Its number in the plan.</param>
/// <param name="BoardId">The board in stock; null for one that was bought.</param>
/// <param name="Bought">What enters the inventory first, for one that was bought.</param>
/// <param name="Outcome">What came out of it.</param>
/// <param name="Report">What the maker said.</param>
public sealed record CutBoard(int Number, string? BoardId, Board? Bought, Outcome Outcome, BoardReport Report);

/// <summary>One of the stored designs that a plan builds.</summary>
/// <param name="Design">Its reference.</param>
/// <param name="Boards">How many boards the plan cuts in all.</param>
/// <param name="IsWhole">Whether the plan has all its pieces.</param>
public sealed record PlannedBuild(string Design, int Boards, bool IsWhole);

/// <summary>The builds of accepted plans: they take boards, cut them and give them back.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when.</param>
public sealed class BuildStore(Database database, TimeProvider clock)
{
    /// <summary>The build of a plan; null if it is not accepted.</summary>
    public Build? Find(string planId) => FindAll([planId]).GetValueOrDefault(planId);

    /// <summary>The builds of plans, as far as these are accepted.</summary>
    public IReadOnlyDictionary<string, Build> FindAll(IReadOnlyCollection<string> planIds)
    {
        using var connection = database.Connect();
        // With max() SQLite takes the other columns from the row that has it.
        return connection.Query<LineRow>(
            "SELECT plan_id AS PlanId, build, max(line) AS Line FROM journal WHERE plan_id IN @PlanIds GROUP BY plan_id", new { PlanIds = planIds })
            .Where(last => last.Build is not null)
            .ToDictionary(last => last.PlanId!, last => BuildTable.Read(last.Build)!, StringComparer.Ordinal);
    }

    /// <summary>Up to <paramref name="limit"/> builds, the last changed first, before a place in the journal, and the place before which more follow.</summary>
    public (IReadOnlyList<(string PlanId, Build Build)> Builds, long? Next) List(long? before, int limit)
    {
        using var connection = database.Connect();
        var rows = connection.Query<LineRow>(
            """
            SELECT plan_id AS PlanId, build, max(line) AS Line FROM journal WHERE plan_id IS NOT NULL GROUP BY plan_id
            HAVING build IS NOT NULL AND (@Before IS NULL OR max(line) < @Before) ORDER BY max(line) DESC LIMIT @Rows
            """,
            new { Before = before, Rows = limit + 1 }).AsList();
        return ([.. rows.Take(limit).Select(row => (row.PlanId!, BuildTable.Read(row.Build)!))], rows.Count > limit ? rows[limit - 1].Line : null);
    }

    /// <summary>Whether any plan holds a board in stock.</summary>
    public bool HoldsAny()
    {
        using var connection = database.Connect();
        return connection.ExecuteScalar<bool>("SELECT EXISTS (SELECT 1 FROM reservations)");
    }

    /// <summary>A plan takes the boards that it has not cut yet, all or none. A plan that holds them already is left as it is.</summary>
    /// <param name="planId">The plan.</param>
    /// <param name="wanted">The boards in stock that it cuts.</param>
    /// <param name="builds">The stored designs that it builds, which may wait in the queue.</param>
    /// <exception cref="OffcutsException">One is gone, held or not what it was when the plan was made.</exception>
    public Build Accept(string planId, IReadOnlyList<WantedBoard> wanted, IReadOnlyList<PlannedBuild> builds)
    {
        using var change = StockChange.Begin(database, clock);
        var build = change.FindBuild(planId);
        if (build is { IsOpen: true })
        {
            return build;
        }

        var open = wanted.Where(board => build?.HasCut(board.Number) != true);
        var refused = open.GroupBy(board => board.Expected.Id, StringComparer.Ordinal).Select(alike => Take(change, planId, [.. alike])).OfType<string>().ToList();
        if (refused.Count > 0)
        {
            throw new OffcutsException(
                ErrorCode.Conflict,
                $"Plan {planId} cannot be accepted. {string.Join(" ", refused)} Plan again from what there is; what another plan holds is free once that is released.");
        }

        var accepted = build is null ? new Build(change.Now, true, []) : build with { IsOpen = true };
        change.Transaction.Connection!.Execute("UPDATE plan_runs SET purpose = 'build' WHERE id = @PlanId", new { PlanId = planId }, change.Transaction);
        QueueTable.Claim(change.Transaction, planId, builds);
        change.Commit(JournalKind.Accept, planId, accepted);
        return accepted;
    }

    /// <summary>A plan gives back the boards that it has not cut.</summary>
    /// <exception cref="OffcutsException">It is not accepted.</exception>
    public Build? Release(string planId)
    {
        using var change = StockChange.Begin(database, clock);
        var build = change.FindBuild(planId);
        if (build is not { IsOpen: true })
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {planId} holds no boards: it is {(build is null ? "not accepted" : "released already")}.");
        }

        return Release(change, JournalKind.Release, planId, build);
    }

    /// <summary>Plans that were accepted so long ago and of which no board is cut give theirs back.</summary>
    /// <param name="after">For how long a plan may hold boards.</param>
    public void Expire(TimeSpan after)
    {
        var latest = clock.GetUtcNow() - after;
        foreach (var (planId, _) in FindAll(Holding()).Where(held => IsOver(held.Value)))
        {
            using var change = StockChange.Begin(database, clock);
            // It may have been cut or released since it was looked at.
            if (change.FindBuild(planId) is { } build && IsOver(build))
            {
                Release(change, JournalKind.Expire, planId, build);
            }
        }

        bool IsOver(Build? build) => build is { IsOpen: true, Closed.Count: 0 } && build.AcceptedAt <= latest;
    }

    /// <summary>Boards of a plan were cut: they are used, and their leftovers are logged; all of it or nothing.</summary>
    /// <exception cref="OffcutsException">The plan does not hold one of them.</exception>
    public Build Close(string planId, IReadOnlyList<CutBoard> boards)
    {
        using var change = StockChange.Begin(database, clock);
        if (change.FindBuild(planId) is not { IsOpen: true } build)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {planId} holds no boards: accept it first.");
        }

        foreach (var board in boards)
        {
            if (build.HasCut(board.Number))
            {
                throw new OffcutsException(
                    ErrorCode.Conflict,
                    string.Create(CultureInfo.InvariantCulture, $"Board {board.Number} of plan {planId} is closed already: take that back in the journal to say it anew."));
            }

            build = build with { Closed = [.. build.Closed, Cut(change, planId, board)] };
        }

        change.Commit(JournalKind.Close, planId, build);
        return build;
    }

    private static string? Take(StockChange change, string planId, IReadOnlyList<WantedBoard> alike)
    {
        var expected = alike[0].Expected;
        if (change.Find(expected.Id) is not { } state)
        {
            return $"Board {expected.Id} is not on the rack any more.";
        }

        var board = state.ToBoard();
        if (!board.IsSameWoodAs(expected))
        {
            return $"Board {expected.Id} is not what it was when the plan was made.";
        }

        if (board.FreeQuantity < alike.Count)
        {
            var holders = string.Join(" and ", board.Holds.Select(hold => $"plan {hold.PlanId}").Distinct());
            var why = holders.Length > 0 ? $"held by {holders}" : Words.Of(board.Status);
            return board.Quantity == 1
                ? $"Board {board.Id} is {why}."
                : string.Create(CultureInfo.InvariantCulture, $"Of board {board.Id} the plan cuts {alike.Count}, but {board.FreeQuantity} of {board.Quantity} are free, the others {why}.");
        }

        change.Write(board.WithHolds([.. board.Holds, .. alike.Select(wanted => new Hold(planId, wanted.Number))]), state);
        return null;
    }

    private static Build? Release(StockChange change, JournalKind kind, string planId, Build build)
    {
        foreach (var state in BoardTable.Read(change.Transaction, change.Transaction.Connection!.Query<BoardRow>(
            $"{BoardTable.Rows} WHERE sequence IN (SELECT board_sequence FROM reservations WHERE plan_id = @PlanId) ORDER BY sequence",
            new { PlanId = planId },
            change.Transaction)))
        {
            change.Write(state.ToBoard().ReleasedBy(planId), state);
        }

        var released = build.Closed.Count == 0 ? null : build with { IsOpen = false };
        change.Commit(kind, planId, released);
        return released;
    }

    private static ClosedBoard Cut(StockChange change, string planId, CutBoard cut)
    {
        var board = cut.BoardId is null ? change.Add(cut.Bought! with { Origin = new Origin(planId, null) })[0] : Consume(change, planId, cut);
        var source = board with { Batch = cut.Report.Batch ?? board.Batch, Place = cut.Report.Place ?? board.Place };
        var leftovers = change.Add([.. cut.Outcome.Kept.Select(piece => source.Leftover(piece, cut.Outcome.Size, planId))]);
        return new ClosedBoard(
            cut.Number, change.Now, board.Id, cut.BoardId is null, cut.Outcome.Size.Thickness, cut.Outcome.Balance,
            [.. leftovers.Select(leftover => leftover.Id)], cut.Report.Reason);
    }

    private static Board Consume(StockChange change, string planId, CutBoard cut)
    {
        var hold = new Hold(planId, cut.Number);
        var state = change.Find(cut.BoardId!);
        var board = state?.ToBoard();
        if (board?.Holds.Contains(hold) != true)
        {
            throw new OffcutsException(
                ErrorCode.Conflict, string.Create(CultureInfo.InvariantCulture, $"Plan {planId} does not hold board {cut.BoardId}, its board {cut.Number}: accept it first."));
        }

        change.Write(board.Without(hold), state!);
        return board;
    }

    private List<string> Holding()
    {
        using var connection = database.Connect();
        return connection.Query<string>("SELECT DISTINCT plan_id FROM reservations ORDER BY plan_id").AsList();
    }
}
