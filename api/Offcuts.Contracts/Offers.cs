namespace Offcuts.Contracts;

/// <summary>One offer of a price list. Exactly one of the three forms is given.</summary>
/// <param name="Species">Species id, name or alias.</param>
/// <param name="ThicknessMm">Thickness as sold: the real one for surfaced stock, 25.4 for rough 4/4.</param>
/// <param name="Id">Id, unique among all offers; null for one made of supplier and place in the list.</param>
/// <param name="Name">What the supplier calls it.</param>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>.</param>
/// <param name="Appearance"><c>clear</c>, <c>sound-knots</c> or <c>paint</c>.</param>
/// <param name="ByThePiece">One fixed size at a price for the piece.</param>
/// <param name="ByRunningLength">One width in several lengths at a price for running length.</param>
/// <param name="ByVolume">Random widths and lengths at a price for volume.</param>
/// <param name="Available">How many pieces in all; null for as many as wanted.</param>
/// <param name="Steps">Lower prices for whoever buys much, each from more than the one before and for less; null for none.</param>
public sealed record OfferEntry(
    string Species,
    decimal ThicknessMm,
    string? Id = null,
    string? Name = null,
    string Kind = "solid",
    string Surface = "rough",
    string Appearance = "clear",
    PieceForm? ByThePiece = null,
    RunningForm? ByRunningLength = null,
    VolumeForm? ByVolume = null,
    int? Available = null,
    IReadOnlyList<PriceStepRecord>? Steps = null);

/// <summary>A lower price for whoever buys much: the price of all that is bought of the offer, in all its sizes together.</summary>
/// <param name="From">From how many units on: pieces, feet or metres, board feet or cubic metres, as the offer is priced.</param>
/// <param name="Price">Price of one unit in the shop's currency.</param>
public sealed record PriceStepRecord(decimal From, decimal Price);

/// <summary>What a supplier asks beyond its prices, in the shop's currency.</summary>
/// <param name="Delivery">What an order costs to bring, whatever its size.</param>
/// <param name="MinimumOrder">The least that an order must come to, delivery not counted; what it lacks is paid all the same.</param>
public sealed record TermsRecord(decimal Delivery = 0, decimal MinimumOrder = 0);

/// <summary>One fixed size; also how sheets are sold.</summary>
/// <param name="WidthMm">Width of each piece.</param>
/// <param name="LengthMm">Length of each piece.</param>
/// <param name="Price">Price of one piece in the shop's currency.</param>
public sealed record PieceForm(decimal WidthMm, decimal LengthMm, decimal Price);

/// <summary>One width in several lengths.</summary>
/// <param name="WidthMm">Width of each piece.</param>
/// <param name="LengthsMm">The lengths in stock.</param>
/// <param name="Price">Price of one unit.</param>
/// <param name="Unit"><c>foot</c> or <c>metre</c>.</param>
public sealed record RunningForm(decimal WidthMm, IReadOnlyList<decimal> LengthsMm, decimal Price, string Unit);

/// <summary>Random widths and lengths; those listed are what the yard usually has.</summary>
/// <param name="WidthsMm">Usual widths.</param>
/// <param name="LengthsMm">Usual lengths.</param>
/// <param name="Price">Price of one unit.</param>
/// <param name="Unit"><c>board-foot</c> or <c>cubic-metre</c>.</param>
public sealed record VolumeForm(IReadOnlyList<decimal> WidthsMm, IReadOnlyList<decimal> LengthsMm, decimal Price, string Unit);

/// <summary>
/// An offer with its id and supplier, and with the names of supplier and species as people write them; see <see cref="OfferEntry"/>.
/// Where an offer is sent, <paramref name="SpeciesName"/> is not read.
/// </summary>
public sealed record OfferRecord(
    string Id,
    string Supplier,
    string Species,
    decimal ThicknessMm,
    string? Name,
    string Kind,
    string Surface,
    string Appearance,
    PieceForm? ByThePiece = null,
    RunningForm? ByRunningLength = null,
    VolumeForm? ByVolume = null,
    int? Available = null,
    string? SupplierName = null,
    string? SpeciesName = null,
    IReadOnlyList<PriceStepRecord>? Steps = null);

/// <summary>One page of offers.</summary>
/// <param name="Items">The offers, by supplier and place in its list.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record OfferPage(IReadOnlyList<OfferRecord> Items, string? Next);

/// <summary>A supplier's whole price list as it is entered.</summary>
/// <param name="Offers">1 to 1000 offers.</param>
/// <param name="Supplier">The supplier's name; must suit the path if that names one.</param>
/// <param name="Terms">What the supplier asks beyond its prices; null for nothing.</param>
public sealed record PriceListEntry(IReadOnlyList<OfferEntry> Offers, string? Supplier = null, TermsRecord? Terms = null);

/// <summary>A supplier's price list.</summary>
/// <param name="Supplier">The supplier as paths name it.</param>
/// <param name="UpdatedAt">When the list was last replaced (UTC).</param>
/// <param name="Offers">Its offers.</param>
/// <param name="SupplierName">The supplier's name as the list writes it; null if it did not.</param>
/// <param name="Terms">What the supplier asks beyond its prices; null for nothing.</param>
public sealed record PriceListRecord(
    string Supplier, DateTimeOffset UpdatedAt, IReadOnlyList<OfferRecord> Offers, string? SupplierName = null, TermsRecord? Terms = null);

/// <summary>A price list in the list of them.</summary>
/// <param name="Supplier">The supplier as paths name it.</param>
/// <param name="UpdatedAt">When the list was last replaced (UTC).</param>
/// <param name="Offers">How many offers it has.</param>
/// <param name="SupplierName">The supplier's name as the list writes it; null if it did not.</param>
public sealed record PriceListSummary(string Supplier, DateTimeOffset UpdatedAt, int Offers, string? SupplierName = null);

/// <summary>All price lists.</summary>
/// <param name="Items">The lists by supplier.</param>
public sealed record PriceLists(IReadOnlyList<PriceListSummary> Items);
