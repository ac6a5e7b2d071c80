using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>
/// One change of the stock: one transaction, and one line in the journal. Nothing else writes to boards, their defects and
/// reservations, so that the journal always tells how the stock became what it is. What is not committed has never been.
/// </summary>
internal sealed class StockChange : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly SqliteTransaction transaction;

    // By id; the last state counts, null for a board that is no longer there.
    private readonly SortedDictionary<string, BoardState?> touched = new(StringComparer.Ordinal);

    private StockChange(SqliteConnection connection, DateTimeOffset now)
    {
        this.connection = connection;
        // Takes the right to write at once: what is read here stays true until the commit.
        transaction = connection.BeginTransaction();
        Now = now;
    }

    /// <summary>The one time of the change.</summary>
    public DateTimeOffset Now { get; }

    /// <summary>The transaction, to read in.</summary>
    public SqliteTransaction Transaction => transaction;

    public static StockChange Begin(Database database, TimeProvider clock)
    {
        var connection = database.Connect();
        try
        {
            return new(connection, clock.GetUtcNow());
        }
        catch
        {
            // Another process may be writing for too long.
            connection.Dispose();
            throw;
        }
    }

    /// <summary>One board as it is now, or null.</summary>
    public BoardState? Find(string id) => touched.TryGetValue(id, out var state) ? state : BoardTable.Find(transaction, id);

    /// <summary>Adds boards; their ids are given here, and their times unless they have one.</summary>
    public IReadOnlyList<Board> Add(params IReadOnlyList<Board> boards)
    {
        var first = connection.ExecuteScalar<long>(
            "UPDATE board_sequence SET next = next + @Count RETURNING next - @Count", new { boards.Count }, transaction);
        var added = boards.Select(Dated).Select((board, index) => board with
        {
            Id = BoardIds.FromNumber(first + index),
            LoggedAt = board.LoggedAt == default ? Now : board.LoggedAt,
        }).ToList();
        foreach (var (index, board) in added.Index())
        {
            Write(BoardState.Of(board, first + index));
        }

        return added;
    }

    /// <summary>Makes a board that is there another.</summary>
    public void Write(Board board, BoardState old) => Write(BoardState.Of(Dated(board), old.Row.Sequence));

    /// <summary>Makes a board what the state says, whatever it was and whether or not it was there.</summary>
    public void Write(BoardState state)
    {
        Erase(state.Row.Id);
        connection.Execute(
            """
            INSERT INTO boards (sequence, id, kind, species, thickness_ticks, width_ticks, length_ticks, quantity, surface,
                                appearance, batch, left_end, right_end, bow_ticks, crook_ticks, cup_ticks, twist_ticks,
                                thickness_estimated, width_estimated, length_estimated, moisture_tenths, moisture_on,
                                place, source, note, status, logged_at, origin_plan, cut_from, price_minor_units, price_currency)
            VALUES (@Sequence, @Id, @Kind, @Species, @ThicknessTicks, @WidthTicks, @LengthTicks, @Quantity, @Surface,
                    @Appearance, @Batch, @LeftEnd, @RightEnd, @BowTicks, @CrookTicks, @CupTicks, @TwistTicks,
                    @ThicknessEstimated, @WidthEstimated, @LengthEstimated, @MoistureTenths, @MoistureOn, @Place, @Source, @Note, @Status, @LoggedAt,
                    @OriginPlan, @CutFrom, @PriceMinorUnits, @PriceCurrency)
            """,
            state.Row,
            transaction);
        connection.Execute(
            """
            INSERT INTO board_defects (board_sequence, ordinal, kind, x_ticks, y_ticks, length_ticks, width_ticks)
            VALUES (@BoardSequence, @Ordinal, @Kind, @XTicks, @YTicks, @LengthTicks, @WidthTicks)
            """,
            state.Defects,
            transaction);
        connection.Execute(
            "INSERT INTO reservations (board_sequence, copy, plan_id, number) VALUES (@BoardSequence, @Copy, @PlanId, @Number)",
            state.Holds ?? [],
            transaction);
        touched[state.Row.Id] = state;
    }

    /// <summary>The board with the day of its moisture reading, which is today if it was told without one.</summary>
    /// <exception cref="OffcutsException">The day is yet to come.</exception>
    public Board Dated(Board board)
    {
        if (board.Moisture is not { } reading)
        {
            return board;
        }

        // Where the maker is it may be tomorrow already.
        var today = DateOnly.FromDateTime(Now.UtcDateTime);
        return reading.On > today.AddDays(1)
            ? throw new OffcutsException(
                ErrorCode.Invalid, "A moisture reading cannot be right: see errors.",
                new InputFault("#/moisture/on", $"{MoistureText.Format(reading)} is yet to come: give the day on which the reading was taken."))
            : board with { Moisture = reading.Dated(today) };
    }

    /// <summary>Takes a board out of the inventory.</summary>
    public void Erase(string id)
    {
        connection.Execute(
            "DELETE FROM reservations WHERE board_sequence = (SELECT sequence FROM boards WHERE id = @Id); DELETE FROM boards WHERE id = @Id", new { Id = id }, transaction);
        touched[id] = null;
    }

    /// <summary>The build of a plan after the last line about it; null if it is not accepted.</summary>
    public Build? FindBuild(string planId) => BuildTable.Find(transaction, planId);

    /// <summary>Writes the line and commits.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="planId">The plan that it is about; null for none.</param>
    /// <param name="build">How far that plan's build is now; null if it is not accepted.</param>
    /// <param name="undoes">The line that it takes back; null for none.</param>
    /// <param name="stockTake">The stock-take that it is part of; null for none.</param>
    /// <returns>The line's number.</returns>
    public long Commit(JournalKind kind, string? planId = null, Build? build = null, long? undoes = null, long? stockTake = null)
    {
        var line = connection.ExecuteScalar<long>(
            """
            INSERT INTO journal (line, at, kind, undoes, plan_id, build, stock_take)
            SELECT coalesce(max(line), 0) + 1, @At, @Kind, @Undoes, @PlanId, @Build, @StockTake FROM journal RETURNING line
            """,
            new { At = Stamp.Of(Now), Kind = Words.Of(kind), Undoes = undoes, PlanId = planId, Build = BuildTable.ToJson(build), StockTake = stockTake },
            transaction);
        connection.Execute(
            "INSERT INTO journal_boards (line, board_id, state) VALUES (@Line, @Id, @State)",
            touched.Select(board => new { Line = line, Id = board.Key, State = board.Value?.ToJson() }),
            transaction);
        transaction.Commit();
        return line;
    }

    /// <summary>Commits what was noted beside the stock, which is as it was: there is nothing for the journal to tell.</summary>
    /// <exception cref="InvalidOperationException">A board was touched.</exception>
    public void CommitUntold()
    {
        if (touched.Count > 0)
        {
            throw new InvalidOperationException("A change of the stock must be told.");
        }

        transaction.Commit();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        transaction.Dispose();
        connection.Dispose();
    }
}
