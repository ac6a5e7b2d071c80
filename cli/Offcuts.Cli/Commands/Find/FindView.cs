using System.Globalization;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Find;

/// <summary>What was found, as a person reads it.</summary>
internal static class FindView
{
    private const int MostLeftovers = 3;

    /// <summary>The boards, or those that come nearest.</summary>
    public static void Write(BoardFindRecord found, DisplayUnit unit, Run run)
    {
        run.Say($"Looking for {found.Understood}.");
        if (found.Items.Count > 0)
        {
            WriteFits(found, unit, run.Terminal);
            run.Say(Summary(found));
        }
        else if (found.Nearest.Count > 0)
        {
            WriteNearest(found, unit, run.Terminal);
            run.Say("No free board gives one. These come nearest.");
        }
        else
        {
            run.Say("No free board is of that species, or lies where you said.");
        }
    }

    private static void WriteFits(BoardFindRecord found, DisplayUnit unit, Terminal terminal)
    {
        var several = found.Quantity > 1;
        var table = new Table(["ID", ">SIZE", ">QTY", "SURFACE", ">GIVES", .. several ? [">CUT"] : Array.Empty<string>(), ">SPENDS", "LEFT OVER", "PLACE"]);
        foreach (var fit in found.Items)
        {
            table.Add([
                fit.Board.Id, BoardView.Size(fit.Board, unit), Count(fit.Board.Quantity), BoardView.Milled(fit.Board), Count(fit.Gives),
                .. several ? [Count(fit.Cut)] : Array.Empty<string>(), Price.Of(fit.WorthSpent, found.Currency), Leftovers(fit.Leftovers, unit),
                fit.Reach == "easy" ? fit.Board.Place : $"{fit.Board.Place} ({fit.Reach})"]);
        }

        table.Write(terminal);
    }

    private static void WriteNearest(BoardFindRecord found, DisplayUnit unit, Terminal terminal)
    {
        var table = new Table("ID", ">SIZE", "SURFACE", "WHY NOT", "PLACE");
        foreach (var near in found.Nearest)
        {
            table.Add(near.Board.Id, BoardView.Size(near.Board, unit), BoardView.Milled(near.Board), near.Text, near.Board.Place);
        }

        table.Write(terminal);
    }

    private static string Leftovers(IReadOnlyList<SizeRecord> sizes, DisplayUnit unit)
    {
        var told = sizes.Take(MostLeftovers).Select(size =>
            SizeText.FormatFace(Length.FromMillimetres(size.WidthMm), Length.FromMillimetres(size.LengthMm), unit)).ToList();
        return sizes.Count == 0 ? "nothing to keep"
            : string.Join(", ", told) + (sizes.Count > told.Count ? $" and {Count(sizes.Count - told.Count)} more" : "");
    }

    private static string Summary(BoardFindRecord found)
    {
        var boards = found.Boards == 1 ? "One entry gives" : string.Create(CultureInfo.InvariantCulture, $"{found.Boards} entries give");
        var listed = found.Items.Count < found.Boards ? string.Create(CultureInfo.InvariantCulture, $", of which the nearest {found.Items.Count} are listed (--limit)") : "";
        var enough = found.Gives < found.Quantity ? string.Create(CultureInfo.InvariantCulture, $", too few for {found.Quantity}") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{boards} {found.Gives} in all{enough}{listed}.");
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
