namespace Offcuts.Domain;

/// <summary>What came out of a board: where its wood went, and what goes back to the rack.</summary>
/// <param name="Size">The board before cutting.</param>
/// <param name="Balance">Where its wood went.</param>
/// <param name="Kept">What goes back to the rack, planned leftovers first.</param>
public sealed record Outcome(Dimensions Size, Balance Balance, IReadOnlyList<AddedPiece> Kept);

/// <summary>
/// Closes the book on one board: parts + leftovers + kerf + waste must make the board exactly, or the maker says how it is.
/// </summary>
/// <remarks>
/// What was spoiled or thrown away is waste, and so is what the plan calls waste; pieces that the plan did not foresee are taken
/// out of that. What is missing must be said to be waste or given a reason. The saw's dust is always what the plan says.
/// A reason explains lost wood, never grown wood: pieces that the board cannot have held would be cut from by the next plan.
/// </remarks>
public static class Bookkeeping
{
    /// <summary>How much larger than its board a piece may be told, with a reason: 1/16 in.</summary>
    /// <remarks>
    /// Tapes are read to 1/16 in or to 1 mm (common practice), so that each of the two readings, of the board and of the piece, may be
    /// half a mark off: together one mark, of which the larger is taken.
    /// </remarks>
    public static Length Rounding { get; } = Length.FromInches(0, 1, 16);

    /// <summary>The outcome of a board that went exactly as planned.</summary>
    public static Outcome AsPlanned(BoardCut cut) => Close(cut, new BoardReport { Number = cut.Number }).Outcome;

    /// <summary>The outcome of a board by what the maker says.</summary>
    /// <param name="cut">The plan's cuts.</param>
    /// <param name="report">What the maker says.</param>
    /// <returns>The outcome, and what cannot be right: where anything is found, the outcome counts for nothing.</returns>
    public static (Outcome Outcome, IReadOnlyList<InputFault> Faults) Close(BoardCut cut, BoardReport report)
    {
        var faults = new FaultList();
        var size = report.Size ?? cut.Size;
        var kept = Kept(cut, report, faults);
        CheckFit(size, kept, report.Reason, faults);
        var parts = Sum(cut.Pieces.Where(piece => piece is PartPiece or StripPiece).Select(piece => piece.At.Area));
        var spoiled = Sum(Spoiled(cut, report, faults).Select(piece => piece.At.Area));
        var leftovers = Sum(kept.Select(piece => piece.Size.Face));
        var struck = Sum(Planned(cut).Index().Where(leftover => report.Leftovers.Any(said => said.Leftover == leftover.Index + 1 && !said.IsKept))
            .Select(leftover => leftover.Item.At.Area));
        var pool = Sum(cut.Pieces.OfType<WastePiece>().Select(piece => piece.At.Area)) + spoiled + struck;
        var added = Sum(report.Added.Select(piece => piece.Size.Face));
        var waste = (added < pool ? pool - added : default) + Sum(report.Waste);
        var kerf = cut.Size.Face - Sum(cut.Pieces.Select(piece => piece.At.Area));
        var balance = new Balance(size.Face, parts - spoiled, leftovers, kerf, waste);
        var hasGrown = HasGrown(balance, kept);
        if (faults.Found.Count == 0 && (hasGrown || (balance.Difference != default && string.IsNullOrWhiteSpace(report.Reason))))
        {
            faults.Add("#", DoesNotAddUp(cut.Number, balance, hasGrown));
        }

        return (new Outcome(size, balance, kept), faults.Found);
    }

    private static IEnumerable<LeftoverPiece> Planned(BoardCut cut) => cut.Pieces.OfType<LeftoverPiece>();

    private static List<AddedPiece> Kept(BoardCut cut, BoardReport report, FaultList faults)
    {
        var planned = Planned(cut).Select(leftover => new AddedPiece(new(cut.Size.Thickness, leftover.At.Width, leftover.At.Length), leftover.Ends)).ToList();
        var kept = planned.Cast<AddedPiece?>().ToList();
        var told = new HashSet<int>();
        foreach (var (index, said) in report.Leftovers.Index())
        {
            if (said.Leftover < 1 || said.Leftover > planned.Count)
            {
                faults.Add($"#/leftovers/{index}", planned.Count == 0
                    ? (FormattableString)$"Board {cut.Number} has no planned leftover; add the piece instead."
                    : $"Board {cut.Number} has no planned leftover {said.Leftover}: give 1 to {planned.Count}, or add the piece instead.");
            }
            else if (!told.Add(said.Leftover))
            {
                faults.Add($"#/leftovers/{index}", $"Leftover {said.Leftover} stands twice: say all about it once.");
            }
            else
            {
                var was = planned[said.Leftover - 1];
                kept[said.Leftover - 1] = said.IsKept ? new AddedPiece(said.Size ?? was.Size, was.Ends, said.Place, said.Note) : null;
            }
        }

        return [.. kept.OfType<AddedPiece>(), .. report.Added];
    }

    private static IEnumerable<Piece> Spoiled(BoardCut cut, BoardReport report, FaultList faults)
    {
        foreach (var (index, number) in report.Spoiled.Index())
        {
            if (number < 1 || number > cut.Pieces.Count || cut.Pieces[number - 1] is not (PartPiece or StripPiece))
            {
                faults.Add($"#/spoiled/{index}", $"Piece {number} of board {cut.Number} is no part and no strip.");
            }
            else if (report.Spoiled.Take(index).Contains(number))
            {
                faults.Add($"#/spoiled/{index}", $"Piece {number} stands twice.");
            }
            else
            {
                yield return cut.Pieces[number - 1];
            }
        }
    }

    // A piece larger than its board in any direction is a slip; a reason covers no more than how exactly one measures.
    private static void CheckFit(Dimensions board, IEnumerable<AddedPiece> kept, string? reason, FaultList faults)
    {
        foreach (var size in kept.Select(piece => piece.Size))
        {
            var beyond = new[] { size.Thickness - board.Thickness, size.Width - board.Width, size.Length - board.Length }.Max();
            if (beyond > Rounding)
            {
                faults.Add("#", $"A piece of {SizeText.FormatExact(size)} does not come out of a board of {SizeText.FormatExact(board)}, whatever the reason: check the size. If the board was larger than the book has it, say its size too.");
            }
            else if (beyond > Length.Zero && string.IsNullOrWhiteSpace(reason))
            {
                faults.Add("#", $"A piece of {SizeText.FormatExact(size)} does not come out of a board of {SizeText.FormatExact(board)}: check the size, or give the reason.");
            }
        }
    }

    // Whether more wood is there afterwards than the board had. Dust and waste count for nothing here: a thinner blade, or what was not cut off, is a reason.
    private static bool HasGrown(Balance balance, IEnumerable<AddedPiece> kept) =>
        balance.Parts + balance.Leftovers > balance.Board + Sum(kept.Select(piece => (piece.Size.Width + piece.Size.Length) * Rounding));

    private static FormattableString DoesNotAddUp(int number, Balance balance, bool hasGrown) => balance.Difference > default(Area)
        ? (FormattableString)$"Board {number} does not add up: {AreaText.Format(balance.Difference)} of {AreaText.Format(balance.Board)} are not accounted for. Say what was thrown away, or give the reason."
        : hasGrown
        ? (FormattableString)$"Board {number} does not add up, whatever the reason: {AreaText.Format(default(Area) - balance.Difference)} more came out of it than the {AreaText.Format(balance.Board)} that it has. Correct the sizes, or say which of its pieces came to nothing."
        : $"Board {number} does not add up: {AreaText.Format(default(Area) - balance.Difference)} more came out of it than the {AreaText.Format(balance.Board)} that it has. Correct the sizes, or give the reason.";

    private static Area Sum(IEnumerable<Area> areas) => areas.Aggregate(default(Area), (sum, area) => sum + area);
}
