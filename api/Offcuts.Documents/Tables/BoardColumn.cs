using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents.Tables;

/// <summary>A column of the table of boards.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Write">What stands in it for a board whose sizes are written in a unit; empty for nothing.</param>
/// <param name="IsLater">Whether tables were imported before there was such a column.</param>
internal sealed record BoardColumn(string Name, Func<Board, DisplayUnit, string> Write, bool IsLater = false)
{
    /// <summary>All columns in the order in which they are written.</summary>
    public static IReadOnlyList<BoardColumn> All { get; } =
    [
        new("id", (board, _) => board.Id),
        new("species", (board, _) => board.Species),
        new("quantity", (board, _) => board.Quantity.ToString(CultureInfo.InvariantCulture)),
        new("thickness", (board, unit) => TableNumber.Write(board.Size.Thickness, board.Estimates.Thickness, unit)),
        new("width", (board, unit) => TableNumber.Write(board.Size.Width, board.Estimates.Width, unit)),
        new("length", (board, unit) => TableNumber.Write(board.Size.Length, board.Estimates.Length, unit)),
        new("unit", (_, unit) => unit == DisplayUnit.Inch ? "in" : "mm"),
        new("kind", (board, _) => board.Kind == BoardKind.Sheet ? "sheet" : "solid"),
        new("surface", (board, _) => board.Surface switch
        {
            Surface.Rough => "rough",
            Surface.SkipPlaned => "skip planed",
            Surface.Surfaced => "surfaced",
        }),
        new("appearance", (board, _) => board.Appearance switch
        {
            Appearance.Clear => "clear",
            Appearance.SoundKnots => "sound knots",
            Appearance.Paint => "paint",
        }),
        new("ends", (board, _) => board.Ends == default ? "" : EndsText.Format(board.Ends)),
        new("warp", (board, _) => board.Warp.IsFlat ? "" : WarpText.FormatExact(board.Warp)),
        new("defects", (board, _) => string.Join(" | ", board.Defects.Select(DefectText.FormatExact))),
        new("moisture", (board, _) => board.Moisture is { } reading ? MoistureText.Format(reading) : "", IsLater: true),
        new("batch", (board, _) => board.Batch ?? ""),
        new("place", (board, _) => board.Place ?? ""),
        new("source", (board, _) => board.Source ?? ""),
        new("note", (board, _) => board.Note ?? ""),
        new("status", (board, _) => board.Status switch
        {
            BoardStatus.Free => "free",
            BoardStatus.Reserved => "reserved",
            BoardStatus.Used => "used",
            BoardStatus.Gone => "gone",
        }),
        new("logged", (board, _) => board.LoggedAt == default ? "" : board.LoggedAt.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
    ];
}
