using Offcuts.Domain;

namespace Offcuts.Pictures;

/// <summary>What wood is called at the rack and at the counter.</summary>
internal static class Words
{
    /// <summary>The species' name; its id if the species list does not have it.</summary>
    public static string Species(string id) => SpeciesCatalogue.Default.Find(id)?.Name ?? id;

    /// <summary>What a board is: <c>white ash, rough</c>; sheets have no surface worth telling.</summary>
    public static string Wood(string species, BoardKind kind, Surface surface) => (kind, surface) switch
    {
        (BoardKind.Sheet, _) => Species(species),
        (_, Surface.Rough) => $"{Species(species)}, rough",
        (_, Surface.Surfaced) => $"{Species(species)}, surfaced",
    };

    /// <summary>A thickness as a yard says it: quarters for rough wood of a usual rough thickness, else as it is.</summary>
    public static string Thickness(Offer offer, DisplayUnit unit)
    {
        var quarter = Length.FromInches(0, 1, 4).Ticks;
        return offer is { Kind: BoardKind.Solid, Surface: Surface.Rough } && NominalSizes.Surfaced(offer.Thickness) is not null
            && offer.Thickness.Ticks % quarter == 0
            ? FormattableString.Invariant($"{offer.Thickness.Ticks / quarter}/4")
            : LengthText.Format(offer.Thickness, unit);
    }

    /// <summary>What an appearance lets the wood be used for.</summary>
    public static string Look(Appearance appearance) => appearance switch
    {
        Appearance.Clear => "clear show face",
        Appearance.SoundKnots => "sound knots",
        Appearance.Paint => "paint grade",
    };

    /// <summary>What a person calls the board: its id, or from whom it is bought.</summary>
    public static string Name(BoardCut board, PlanningProblem problem)
    {
        if (board.BoardId is { } id)
        {
            var several = problem.Stock.FirstOrDefault(stock => stock.Id == id)?.Quantity > 1;
            return several ? FormattableString.Invariant($"{id}, piece {board.Copy}") : id;
        }

        var offer = problem.Offers.FirstOrDefault(offer => offer.Id == board.OfferId);
        return FormattableString.Invariant($"buy: {offer?.Name ?? Species(board.Species)} from {offer?.Supplier ?? board.OfferId}, piece {board.Copy}");
    }

    /// <summary>So many of a thing.</summary>
    public static string Count(int count, string one, string many) =>
        FormattableString.Invariant($"{count} {(count == 1 ? one : many)}");

    /// <summary>Volume as the shop counts it: board feet, or cubic metres in a metric shop.</summary>
    public static string Volume(decimal boardFeet, DisplayUnit unit) => unit switch
    {
        DisplayUnit.Inch => FormattableString.Invariant($"{boardFeet:0.0} bd ft"),
        DisplayUnit.Millimetre => FormattableString.Invariant($"{boardFeet * 0.002359737216m:0.0000} m³"),
    };
}
