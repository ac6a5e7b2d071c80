using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>A plan as a person reads it: what it costs, what to buy, what to cut, what to mind.</summary>
internal sealed class PlanView(Terminal terminal, DisplayUnit unit, PlanResult plan)
{
    // What becomes of a piece, before its size.
    private const int NameWidth = 31;

    private readonly TextWriter to = terminal.Out;

    /// <summary>Writes all of it.</summary>
    public void Write(PlanRecord record)
    {
        to.WriteLine(terminal.Bold(SafeText.Of($"{record.Design.Name}  (plan {record.Id})")));
        WriteMadeWith(record.MadeWith);
        WriteMoney();
        new ChangesView(terminal, unit, plan).Write(record.From);
        new TogetherView(terminal, unit, plan).Write();
        WriteShopping();
        WriteBoards();
        WriteGlueUps();
        WriteCounts();
        WriteMovements();
        WriteMissing();
        WriteWarnings();
        if (record.Build is { } build)
        {
            to.WriteLine();
            BuildView.Write(record, build, terminal);
        }
    }

    private void WriteMadeWith(MadeWithRecord? made)
    {
        if (made is null)
        {
            return;
        }

        to.WriteLine(SafeText.Of($"Made with {MadeWithText.Of(made.LengthsMm, made.Numbers, made.Choices, unit)}."));
        if (made.Compared is { } compared)
        {
            var verdict = compared.Sure ? "no other costs less" : "another may cost less, or as little and be preferred; a longer --budget may tell";
            to.WriteLine($"The cheapest of {Count(compared.Ways)} ways to build it: {verdict}.");
        }
    }

    private void WriteMoney()
    {
        var charges = plan.ChargeCost > 0 ? $", {Money(plan.ChargeCost)} for delivery and minimum orders" : "";
        to.WriteLine($"Costs {Money(plan.TotalCost)}: {Money(plan.WoodCost)} for wood, {Money(plan.ItemCost)} for items{charges}.");
        if (plan.StopCost > 0)
        {
            to.WriteLine($"Buys of more than one supplier: each after the first saves at least {Money(plan.StopCost / (Suppliers() - 1))}, what a stop must save.");
        }

        to.WriteLine(Verdict());
        to.WriteLine($"Cuts up boards worth {Money(plan.WorthConsumed)}; leftovers worth {Money(plan.WorthReturned)} go back to the rack.");
        if (plan.WorthBound is { } least)
        {
            to.WriteLine(WorthText.Of(plan.WorthConsumed - plan.WorthReturned, least, Money));
        }

        if (!plan.Run.Finished)
        {
            to.WriteLine("The search was ended before it was done; a longer --budget may find better.");
        }
        else if (plan.Gap > 0)
        {
            to.WriteLine("The search ended by itself: a longer --budget changes nothing, another --seed may.");
        }
    }

    // The gap is a share of what this plan spends, rounded up so that it never promises too much.
    private string Verdict() => (plan.Status, plan.Gap) switch
    {
        ("proved", _) => $"Proved: no plan for these parts spends less on {Outlay()}.",
        (_, 0) => $"Proved for the parts that can be had: no plan for them spends less on {Outlay()}.",
        _ => string.Create(
            CultureInfo.InvariantCulture,
            $"Not proved: another plan may spend up to {Math.Ceiling(plan.Gap * 1000) / 10:0.#} % less on {Outlay()}, but none less than {Money(plan.WoodBound)}."),
    };

    private string Outlay() => (plan.ChargeCost > 0, plan.StopCost > 0) switch
    {
        (false, false) => "wood",
        (true, false) => "wood and charges",
        (false, true) => $"wood, with {Money(plan.StopCost)} counted for further stops",
        _ => $"wood and charges, with {Money(plan.StopCost)} counted for further stops",
    };

    private int Suppliers() => plan.ShoppingLists.Count(list => list.Supplier is not null);

    private void WriteShopping()
    {
        Heading("Buy");
        if (plan.ShoppingLists.Count == 0)
        {
            to.WriteLine("  Nothing.");
        }

        new ShoppingView(terminal, unit, plan).Write();
    }

    private void WriteBoards()
    {
        Heading("Cut, in this order");
        if (plan.Boards.Count == 0)
        {
            to.WriteLine("  Nothing.");
        }

        foreach (var board in plan.Boards)
        {
            var which = Which(board);
            var place = board.Place is null ? "" : $", {board.Place}{(board.Reach is null ? "" : $" ({board.Reach})")}";
            to.WriteLine(SafeText.Of(
                $"  {Count(board.Number),2}. {which}{place}: {board.SpeciesName ?? board.Species}, {Milled(board.Kind, board.Surface)}, {Lengths.Text(board.Size, unit)}; {First(board)}"));
            foreach (var piece in board.Pieces.Where(piece => piece.Kind != "waste"))
            {
                var name = Piece(piece);
                if (name.Length > NameWidth - 2)
                {
                    // A number at its end must not run into the size.
                    to.WriteLine(SafeText.Of($"        {name}"));
                    name = "";
                }

                to.WriteLine(SafeText.Of(
                    $"        {name,-NameWidth}{Face(piece)}{(piece.Turned == true ? ", turned" : "")}{Finished(piece)}{Loss(piece)}".TrimEnd()));
                if (piece.Steps is { } steps)
                {
                    to.WriteLine(SafeText.Of($"        {"",-NameWidth}{steps}"));
                }

                if (Stays(piece, board) is { Length: > 0 } stays)
                {
                    to.WriteLine(SafeText.Of($"        {"",-NameWidth}{stays}"));
                }
            }
        }
    }

    // By the first cut itself, as on the cut sheet: a board that is planned to be ripped first may begin with a crosscut that clears a bad end.
    private static string First(BoardCutRecord board) =>
        board.Cuts.MinBy(cut => cut.Order) is { } cut ? $"{cut.Direction} first" : "no cut, use it whole";

    private string Which(BoardCutRecord board)
    {
        var alike = plan.Boards.Count(other => (other.BoardId, other.OfferId) == (board.BoardId, board.OfferId)) > 1;
        var piece = alike || board.Copy > 1 ? $", piece {Count(board.Copy)}" : "";
        if (board.BoardId is { } id)
        {
            return $"board {id}{piece}";
        }

        var bought = plan.Purchases.FirstOrDefault(purchase => purchase.OfferId == board.OfferId);
        return $"bought: {bought?.Name ?? board.SpeciesName ?? board.Species} from {bought?.SupplierName ?? bought?.Supplier ?? board.OfferId}{piece}";
    }

    private void WriteGlueUps()
    {
        var laminations = plan.Laminations ?? [];
        if (plan.GlueUps.Count + laminations.Count == 0)
        {
            return;
        }

        Heading("Glue up");
        foreach (var part in laminations)
        {
            var layers = string.Join(" + ", part.Layers.Select(layer => $"layer {Count(layer.Layer)} (board {Count(layer.BoardNumber)})"));
            to.WriteLine(SafeText.Of($"  {part.Part} {Count(part.Copy)}: {layers}, face to face, each milled to {Text(part.LayerThicknessMm)}"));
        }

        foreach (var panel in plan.GlueUps)
        {
            if (GlueUpText.SubPanels([.. panel.SubPanels.Select(part => Length.FromMillimetres(part.NeededWidthMm))], unit) is { } widths)
            {
                to.WriteLine(SafeText.Of($"  {panel.Panel} {Count(panel.Copy)}: {widths}; surface each before you glue them to each other"));
            }

            foreach (var part in panel.SubPanels)
            {
                var strips = string.Join(" + ", part.Strips.Select(strip => $"{Text(strip.NetWidthMm)} (board {Count(strip.BoardNumber)})"));
                var which = panel.SubPanels.Count > 1 ? $", sub-panel {Count(part.Number)}" : "";
                to.WriteLine(SafeText.Of($"  {panel.Panel} {Count(panel.Copy)}{which}: {strips}, together at least {Text(part.NeededWidthMm)} wide"));
            }
        }
    }

    private void WriteCounts()
    {
        if (plan.Counts is not { Count: > 0 } counts)
        {
            return;
        }

        Heading("How many");
        foreach (var count in counts)
        {
            to.WriteLine(SafeText.Of($"  {count.Text}"));
        }
    }

    private void WriteMovements()
    {
        if (plan.Movements is not { Count: > 0 } movements)
        {
            return;
        }

        Heading("Movement across the grain");
        foreach (var movement in movements)
        {
            to.WriteLine(SafeText.Of($"  {movement.Text}"));
        }

        to.WriteLine($"  {MovementText.Caution}");
    }

    private void WriteMissing()
    {
        if (plan.Missing.Count == 0)
        {
            return;
        }

        Heading("Missing");
        foreach (var part in plan.Missing)
        {
            to.WriteLine(SafeText.Of($"  {part.Reason}"));
        }
    }

    private void WriteWarnings()
    {
        if (plan.Warnings.Count == 0)
        {
            return;
        }

        Heading("Mind");
        foreach (var line in WarningLines.Of(plan.Warnings, unit))
        {
            to.WriteLine(SafeText.Of($"  {line}"));
        }
    }

    private void Heading(string text)
    {
        to.WriteLine();
        to.WriteLine(terminal.Bold(text));
    }

    /// <summary>What a piece is called.</summary>
    public string Piece(PieceRecord piece) => piece.Kind switch
    {
        "part" => $"{piece.Name}{(piece.Use == "spare" ? " spare" : "")} {Copies(piece)}",
        "strip" => Strip(piece),
        "leftover" => "keep",
        _ => piece.Kind,
    };

    private static string Copies(PieceRecord piece) => piece.Copies is { } copies
        ? RecipeText.Copies([.. copies.Select(copy => new PartCopy(copy.Copy, copy.Layer))], piece.Layers > 1)
        : Count(piece.Copy ?? 1);

    private string Strip(PieceRecord piece)
    {
        var divided = plan.GlueUps.Any(panel => panel.Panel == piece.Name && panel.Copy == piece.Copy && panel.SubPanels.Count > 1);
        var where = divided ? $"{Count(piece.SubPanel ?? 1)}.{Count(piece.Order ?? 1)}" : Count(piece.Order ?? 1);
        return $"strip {where} of {piece.Name} {Count(piece.Copy ?? 1)}";
    }

    private string Face(PieceRecord piece) => SizeText.FormatFace(Length.FromMillimetres(piece.WidthMm), Length.FromMillimetres(piece.LengthMm), unit);

    private string Stays(PieceRecord piece, BoardCutRecord board) => piece.Kind is not ("part" or "strip") ? "" : StayingText.Of(
        Area(piece.XMm, piece.YMm, piece.LengthMm, piece.WidthMm),
        board.Defects.Select(defect => new Defect(defect.Kind, Area(defect.XMm, defect.YMm, defect.LengthMm, defect.WidthMm))), unit);

    private static Rect Area(decimal x, decimal y, decimal length, decimal width) =>
        new(Length.FromMillimetres(x), Length.FromMillimetres(y), Length.FromMillimetres(length), Length.FromMillimetres(width));

    private string Loss(PieceRecord piece) => Boards.Condition.Loss(piece, unit) is { Length: > 0 } loss ? $"; {loss}" : "";

    private string Finished(PieceRecord piece) => piece.Finished is { } size ? $", finish to {Lengths.Text(size, unit)}" : "";

    private static string Milled(string kind, string surface) => kind == "sheet" ? "sheet" : surface;

    private string Text(decimal millimetres) => LengthText.Format(Length.FromMillimetres(millimetres), unit);

    private string Money(decimal amount) => Price.Of(amount, plan.Currency);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
