namespace Offcuts.Domain;

/// <summary>Several copies of a design as one.</summary>
public static class DesignCopies
{
    /// <summary>
    /// Every quantity so many times over. The copies are alike: a finish group of one species has one over all of them. What is made only as far as it costs
    /// nothing (more pieces, spares) is left out, and so are the gaps, which belong to one copy.
    /// </summary>
    public static Design Of(Design design, int copies) => design with
    {
        Parts = [.. design.Parts.Select(part => part with { Quantity = part.Quantity * copies, MostQuantity = null, Spares = 0, Spacing = null })],
        Panels = [.. design.Panels.Select(panel => panel with { Quantity = panel.Quantity * copies })],
        Items = [.. design.Items.Select(item => item with { Quantity = item.Quantity * copies })],
    };

    /// <summary>More copies than this cannot be had, since a quantity ends at <see cref="Limits.MaxQuantity"/> or there is not enough wood.</summary>
    /// <param name="design">The design, its numbers settled and its species resolved.</param>
    /// <param name="stock">The boards that there are.</param>
    public static int Most(Design design, IReadOnlyList<Board> stock)
    {
        var wanted = design.Parts.Sum(part => BoardMeasure.BoardFeet(part.Finished) * part.Quantity)
            + design.Panels.Sum(panel => BoardMeasure.BoardFeet(panel.Finished) * panel.Quantity);
        var accepted = design.Parts.SelectMany(part => part.Species).Concat(design.Panels.SelectMany(panel => panel.Species)).ToHashSet(StringComparer.Ordinal);
        var there = stock.Where(board => accepted.Contains(board.Species)).Sum(board => BoardMeasure.BoardFeet(board.Size) * board.Quantity);
        var largest = design.Parts.Select(part => part.Quantity).Concat(design.Panels.Select(panel => panel.Quantity)).Concat(design.Items.Select(item => item.Quantity)).DefaultIfEmpty(1).Max();
        return wanted == 0 ? 0 : (int)Math.Min(Limits.MaxQuantity / Math.Max(1, largest), decimal.Floor(there / wanted));
    }
}
