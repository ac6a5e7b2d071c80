using Offcuts.Domain;

namespace Offcuts.Pictures;

/// <summary>What wood is called at the rack and at the counter.</summary>
internal static class Words
{
    /// <summary>What a board is: <c>white ash, rough</c>; sheets have no surface worth telling.</summary>
    public static string Wood(PlanDocument document, string species, BoardKind kind, Surface surface) => (kind, surface) switch
    {
        (BoardKind.Sheet, _) => document.Species(species),
        (_, Surface.Rough) => $"{document.Species(species)}, rough",
        (_, Surface.SkipPlaned) => $"{document.Species(species)}, skip-planed",
        (_, Surface.Surfaced) => $"{document.Species(species)}, surfaced",
    };

    /// <summary>What an appearance lets the wood be used for.</summary>
    public static string Look(Appearance appearance) => appearance switch
    {
        Appearance.Clear => "clear show face",
        Appearance.SoundKnots => "sound knots",
        Appearance.Paint => "paint grade",
    };

    /// <summary>What a person calls the board: its id, or from whom it is bought.</summary>
    public static string Name(PlanDocument document, BoardCut board)
    {
        if (board.BoardId is { } id)
        {
            var several = document.Problem.Stock.FirstOrDefault(stock => stock.Id == id)?.Quantity > 1;
            return several ? FormattableString.Invariant($"{id}, piece {board.Copy}") : id;
        }

        var offer = document.Problem.Offers.FirstOrDefault(offer => offer.Id == board.OfferId);
        return FormattableString.Invariant($"buy: {offer?.Name ?? document.Species(board.Species)} from {offer?.SupplierName ?? offer?.Supplier ?? board.OfferId}, piece {board.Copy}");
    }

    /// <summary>So many of a thing.</summary>
    public static string Count(int count, string one, string many) =>
        FormattableString.Invariant($"{count} {(count == 1 ? one : many)}");
}
