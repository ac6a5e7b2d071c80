using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>Boards as a person reads them.</summary>
internal static class BoardView
{
    /// <summary>The size of a board in the shop's unit.</summary>
    public static string Size(BoardRecord board, DisplayUnit unit) =>
        SizeText.Format(
            Lengths.Size(board.ThicknessMm, board.WidthMm, board.LengthMm),
            board.Estimated is { } estimated ? new Estimates(estimated.Thickness, estimated.Width, estimated.Length) : default, unit);

    /// <summary>The species' name; its id where an older server gives no name.</summary>
    public static string Species(BoardRecord board) => board.SpeciesName ?? board.Species;

    /// <summary><c>sheet</c>, or how far solid wood is milled: sheets are never planed.</summary>
    public static string Milled(BoardRecord board) => board.Kind == "sheet" ? "sheet" : board.Surface;

    /// <summary>Warp, ends and defects in words, as they were understood, to follow a board's size; empty where there is nothing to say.</summary>
    public static string Condition(BoardRecord board, DisplayUnit unit)
    {
        var ends = Boards.Condition.Text(board.Ends) is { } known ? $"ends {known}" : null;
        var moisture = Boards.Condition.Text(board.Moisture) is { } reading ? $"moisture {reading}" : null;
        return string.Concat(new[] { Boards.Condition.Text(board.Warp, unit), ends, moisture }.OfType<string>().Select(said => $", {said}"))
            + string.Concat(board.Defects.Select(defect => $"; {Defect(defect, unit)}"));
    }

    /// <summary>A list.</summary>
    public static void WriteTable(IEnumerable<BoardRecord> boards, DisplayUnit unit, Terminal terminal, bool withAge = false)
    {
        var all = boards.ToList();
        // Columns that few boards fill are there only where one does.
        var (warped, batched, marked) = (all.Exists(board => board.Warp is not null), all.Exists(board => board.Batch is not null), all.Exists(board => board.Defects.Count > 0));
        // Where all of a row are held its status says so; of a part of it only the number does.
        var measured = all.Exists(board => board.Moisture is not null);
        var partlyHeld = all.Exists(board => board.Holds?.Count < board.Quantity);
        var table = new Table(["ID", "SPECIES", ">SIZE", ">QTY", "SURFACE", "LOOK", .. Column(marked, "DEFECTS"), .. Column(warped, "WARP"), .. Column(measured, ">MC"), .. Column(batched, "BATCH"), .. Column(partlyHeld, ">HELD"), "STATUS", .. Column(withAge, "LOGGED"), "PLACE"]);
        foreach (var board in all)
        {
            table.Add([
                board.Id, Species(board), Size(board, unit), board.Quantity.ToString(CultureInfo.InvariantCulture), Milled(board), board.Appearance,
                .. Column(marked, string.Join(", ", board.Defects.Select(defect => defect.Kind).Distinct())),
                .. Column(warped, Boards.Condition.Text(board.Warp, unit)),
                .. Column(measured, board.Moisture is { } reading ? MoistureText.Percent(reading.Percent) : ""), .. Column(batched, board.Batch),
                .. Column(partlyHeld, (board.Holds?.Count ?? 0) is > 0 and var held ? held.ToString(CultureInfo.InvariantCulture) : ""), board.Status, .. Column(withAge, Day(board)), board.Place]);
        }

        table.Write(terminal);
    }

    /// <summary>Everything about one board.</summary>
    public static void WriteDetails(BoardRecord board, DisplayUnit unit, Terminal terminal)
    {
        (string Name, string? Value)[] rows =
        [
            ("Board", board.Id), ("Species", Species(board)), ("Size", Size(board, unit)),
            ("Quantity", board.Quantity.ToString(CultureInfo.InvariantCulture)), ("Kind", board.Kind == "sheet" ? "sheet" : $"{board.Kind}, {board.Surface}"),
            ("Appearance", board.Appearance), ("Status", board.Status), ("Warp", Boards.Condition.Text(board.Warp, unit)), ("Ends", Boards.Condition.Text(board.Ends)),
            ("Moisture", Boards.Condition.Text(board.Moisture)), ("Batch", board.Batch), ("Place", board.Place), ("Source", board.Source),
            ("Logged", Day(board)), ("Held", Held(board)), ("Comes from", Origin(board)), ("Cost", board.Price is { } price ? Price.Of(price.Amount, price.Currency) : null),
            ("Note", board.Note), .. board.Defects.Select(defect => ("Defect", (string?)Defect(defect, unit))),
        ];
        foreach (var (name, value) in rows.Where(row => !string.IsNullOrEmpty(row.Value)))
        {
            terminal.Out.WriteLine($"{name + ":",-11} {SafeText.Of(value)}");
        }
    }

    private static string Day(BoardRecord board) => board.LoggedAt.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string? Held(BoardRecord board) => board.Holds is not { } holds ? null
        : $"{(board.Quantity > 1 ? string.Create(CultureInfo.InvariantCulture, $"{holds.Count} of {board.Quantity} ") : "")}by plan {string.Join(" and ", holds.Select(hold => hold.PlanId).Distinct())}";

    private static string? Origin(BoardRecord board) => board.Origin is not { } origin ? null
        : origin.CutFrom is { } parent ? $"board {parent}, cut by plan {origin.PlanId}"
        : $"bought for plan {origin.PlanId}";

    private static IEnumerable<T> Column<T>(bool isThere, T cell) => isThere ? [cell] : [];

    private static string Defect(DefectRecord defect, DisplayUnit unit)
    {
        return $"{defect.Kind}, {Text(defect.LengthMm)} along by {Text(defect.WidthMm)} across, {Text(defect.XMm)} from the left end and {Text(defect.YMm)} from the lower edge";

        string Text(decimal millimetres) => LengthText.Format(Length.FromMillimetres(millimetres), unit);
    }
}
