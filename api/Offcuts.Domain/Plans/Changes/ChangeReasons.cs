namespace Offcuts.Domain;

/// <summary>Finds what has changed from one problem to the next about a board and what was cut from it.</summary>
internal sealed class ChangeReasons
{
    private readonly PlanningProblem earlier;
    private readonly Dictionary<string, Board> boardsBefore;
    private readonly Dictionary<string, Board> boards;
    private readonly Dictionary<(string, Dimensions), OfferSize> offers;
    private readonly Dictionary<string, ChangeReasonKind> parts;
    private readonly bool isOtherShop;

    public ChangeReasons(PlanningProblem earlier, PlanningProblem now)
    {
        this.earlier = earlier;
        boardsBefore = earlier.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        boards = now.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        offers = now.Offers.SelectMany(OfferSize.Of).DistinctBy(size => (size.Offer.Id, size.Size)).ToDictionary(size => (size.Offer.Id, size.Size));
        parts = Parts(now.Design);
        isOtherShop = earlier.Shop with { Unit = now.Shop.Unit, Currency = now.Shop.Currency } != now.Shop;
    }

    /// <summary>The reasons; none if all is as it was.</summary>
    /// <param name="board">The board as the earlier plan cuts it.</param>
    public List<ChangeReason> Of(BoardCut board)
    {
        var source = SourceOf(board);
        if (source is ChangeReasonKind.BoardGone or ChangeReasonKind.BoardFewer or ChangeReasonKind.OfferGone)
        {
            return [new ChangeReason(source.Value)];
        }

        var reasons = board.Pieces.Select(NameOf).OfType<string>().Distinct(StringComparer.Ordinal).Where(parts.ContainsKey)
            .Select(name => new ChangeReason(parts[name], name)).ToList();
        if (source is { } changed)
        {
            reasons.Insert(0, new ChangeReason(changed));
        }

        return isOtherShop ? [.. reasons, new ChangeReason(ChangeReasonKind.ShopChanged)] : reasons;
    }

    private ChangeReasonKind? SourceOf(BoardCut board) => board.BoardId is not { } id
        ? offers.ContainsKey((board.OfferId!, board.Size)) ? null : ChangeReasonKind.OfferGone
        : !boards.TryGetValue(id, out var now) ? ChangeReasonKind.BoardGone
        : !boardsBefore[id].IsSameWoodAs(now) ? ChangeReasonKind.BoardChanged
        : now.Quantity < board.Copy ? ChangeReasonKind.BoardFewer
        : null;

    private Dictionary<string, ChangeReasonKind> Parts(Design now)
    {
        var (parts, panels) = (now.Parts.ToDictionary(part => part.Name, StringComparer.Ordinal), now.Panels.ToDictionary(panel => panel.Name, StringComparer.Ordinal));
        return earlier.Design.Parts.Select(part => (part.Name, Kind: KindOf(parts.GetValueOrDefault(part.Name), other => IsAlike(part, other), other => other.Quantity < part.Quantity)))
            .Concat(earlier.Design.Panels.Select(panel => (panel.Name, Kind: KindOf(panels.GetValueOrDefault(panel.Name), other => IsAlike(panel, other), other => other.Quantity < panel.Quantity))))
            .Where(part => part.Kind is not null).ToDictionary(part => part.Name, part => part.Kind!.Value, StringComparer.Ordinal);
    }

    private static ChangeReasonKind? KindOf<T>(T? now, Func<T, bool> isAlike, Func<T, bool> isFewer)
        where T : class => now is null ? ChangeReasonKind.PartGone
            : !isAlike(now) ? ChangeReasonKind.PartChanged
            : isFewer(now) ? ChangeReasonKind.PartFewer
            : null;

    private static bool IsAlike(Part one, Part other) => one.Species.SequenceEqual(other.Species) && one.Tolerates.SequenceEqual(other.Tolerates)
        && one with { Species = other.Species, Tolerates = other.Tolerates, Quantity = other.Quantity } == other;

    private static bool IsAlike(Panel one, Panel other) => one.Species.SequenceEqual(other.Species) && one.Tolerates.SequenceEqual(other.Tolerates)
        && one with { Species = other.Species, Tolerates = other.Tolerates, Quantity = other.Quantity } == other;

    private static string? NameOf(Piece piece) => piece switch
    {
        PartPiece part => part.Part,
        StripPiece strip => strip.Panel,
        _ => null,
    };
}
