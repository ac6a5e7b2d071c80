using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>
/// What is missing cannot be had from any one board or offer, or (too few) can be had but not often enough. Members of a group
/// that asks for one species are left out: what they lack depends on the choice made for the group.
/// </summary>
internal static class MissingChecks
{
    public static void Run(AuditSheet sheet)
    {
        var strict = sheet.Problem.Design.Groups.Where(group => group.OneSpecies).Select(group => group.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var missing in sheet.Plan.Missing)
        {
            sheet.Require(missing.Quantity > 0, AuditRule.Missing, $"{missing.Name} is listed as missing {missing.Quantity} times.");
            var part = sheet.PartNamed(missing.Name);
            var panel = sheet.PanelNamed(missing.Name);
            var group = part?.Group ?? panel?.Group;
            if ((part is null && panel is null) || (group is not null && strict.Contains(group)))
            {
                continue;
            }

            var served = Sources(sheet).Any(source => part is not null ? Serves(sheet.Shop, source, part) : Serves(sheet.Shop, source, panel!));
            sheet.Require(
                served == (missing.Reason == MissingReason.TooFew), AuditRule.Missing,
                $"{missing.Name} is missing for the reason {missing.Reason}, but a board or offer {(served ? "serves" : "does not serve")} it.");
        }
    }

    private static IEnumerable<Source> Sources(AuditSheet sheet) => sheet.Problem.Stock
        .SelectMany(board => ClearParts(board).Select(rect => new Source(board.Kind, board.Species, board.Surface, board.Appearance, board.Size.Thickness, rect)))
        .Concat(sheet.Problem.Offers.Where(offer => offer.Available != 0).SelectMany(OfferSize.Of).Select(size => new Source(
            size.Offer.Kind, size.Offer.Species, size.Offer.Surface, size.Offer.Appearance, size.Size.Thickness,
            new Rect(Length.Zero, Length.Zero, size.Size.Length, size.Size.Width))));

    /// <summary>A board with defects is left out: the planner's choice among its clear rectangles is not re-derived here.</summary>
    private static IEnumerable<Rect> ClearParts(Board board) =>
        board.Defects.Count > 0 ? [] : [new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width)];

    private static bool Serves(Shop shop, Source source, Part part)
    {
        var extra = Rules.AllowancesFor(shop, source.Kind, source.Surface);
        var (length, width) = (part.Finished.Length + extra.Length, part.Finished.Width + extra.Width);
        return Suits(shop, source, part.Species, part.Appearance, part.Finished.Thickness, width)
            && (Holds(source, length, width) || (part.Grain == Grain.Free && Holds(source, width, length)));
    }

    private static bool Serves(Shop shop, Source source, Panel panel)
    {
        var extra = Rules.AllowancesFor(shop, source.Kind, source.Surface);
        var narrowest = Rules.StripLimits(shop, panel).Narrowest + extra.Width;
        return source.Kind == BoardKind.Solid && Rules.SubPanels(shop, panel).Count > 0
            && Suits(shop, source, panel.Species, panel.Appearance, panel.Finished.Thickness, narrowest)
            && Holds(source, panel.Finished.Length + extra.Length, narrowest);
    }

    private static bool Suits(Shop shop, Source source, IReadOnlyList<string> species, Appearance asked, Length finished, Length width) =>
        species.Contains(source.Species) && source.Appearance <= asked
        && Rules.ThicknessSuits(shop, source.Kind, source.Surface, source.Thickness, finished)
        && !(Rules.WidestBlank(shop, source.Kind, source.Surface, source.Thickness, finished) < width);

    private static bool Holds(Source source, Length along, Length across) => source.Clear.Length >= along && source.Clear.Width >= across;

    private sealed record Source(BoardKind Kind, string Species, Surface Surface, Appearance Appearance, Length Thickness, Rect Clear);
}
