using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Storage;

/// <summary>Reads boards with their defects and with the plans that hold them; <see cref="StockChange"/> writes them.</summary>
internal static class BoardTable
{
    // SQLite takes only so many parameters at once.
    private const int BoardsAtOnce = 500;

    /// <summary>All rows; what restricts and orders them follows.</summary>
    public const string Rows = """
        SELECT sequence, id, kind, species, thickness_ticks AS ThicknessTicks, width_ticks AS WidthTicks, length_ticks AS LengthTicks,
        quantity, surface, appearance, batch, left_end AS LeftEnd, right_end AS RightEnd,
        bow_ticks AS BowTicks, crook_ticks AS CrookTicks, cup_ticks AS CupTicks, twist_ticks AS TwistTicks,
        thickness_estimated AS ThicknessEstimated, width_estimated AS WidthEstimated, length_estimated AS LengthEstimated,
        moisture_tenths AS MoistureTenths, moisture_on AS MoistureOn,
        place, source, note, status, logged_at AS LoggedAt,
        origin_plan AS OriginPlan, cut_from AS CutFrom, price_minor_units AS PriceMinorUnits, price_currency AS PriceCurrency
        FROM boards
        """;

    /// <summary>Boards with their defects and with the plans that hold them.</summary>
    /// <param name="transaction">So that a board changed meanwhile is neither missed nor told twice.</param>
    /// <param name="rows">Their rows, read in it.</param>
    public static List<BoardState> Read(SqliteTransaction transaction, IEnumerable<BoardRow> rows) =>
        [.. rows.Chunk(BoardsAtOnce).SelectMany(part => Whole(transaction, part))];

    /// <summary>One board, or null.</summary>
    public static BoardState? Find(SqliteTransaction transaction, string id) =>
        Read(transaction, transaction.Connection!.Query<BoardRow>($"{Rows} WHERE id = @Id", new { Id = id }, transaction)).SingleOrDefault();

    private static IEnumerable<BoardState> Whole(SqliteTransaction transaction, BoardRow[] rows)
    {
        var sequences = rows.Select(row => row.Sequence).ToList();
        var defects = transaction.Connection!.Query<DefectRow>(
            """
            SELECT board_sequence AS BoardSequence, ordinal, kind, x_ticks AS XTicks, y_ticks AS YTicks,
                   length_ticks AS LengthTicks, width_ticks AS WidthTicks
            FROM board_defects WHERE board_sequence IN @Sequences ORDER BY board_sequence, ordinal
            """,
            new { Sequences = sequences },
            transaction).ToLookup(defect => defect.BoardSequence);
        var holds = transaction.Connection!.Query<HoldRow>(
            """
            SELECT board_sequence AS BoardSequence, copy, plan_id AS PlanId, number
            FROM reservations WHERE board_sequence IN @Sequences ORDER BY board_sequence, copy
            """,
            new { Sequences = sequences },
            transaction).ToLookup(hold => hold.BoardSequence);
        return rows.Select(row => new BoardState(
            row, [.. defects[row.Sequence]], holds.Contains(row.Sequence) ? [.. holds[row.Sequence]] : null));
    }
}
