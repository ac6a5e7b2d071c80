using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Keeping;

/// <summary>Why a board may go, in words with sizes in the shop's unit.</summary>
/// <param name="shop">The shop.</param>
/// <param name="catalogue">The species at hand.</param>
/// <param name="written">The keep rule as it was written.</param>
/// <param name="designs">How many designs there are.</param>
/// <param name="full">The places that hold more than their limit, by their names.</param>
internal sealed class CullText(Shop shop, SpeciesCatalogue catalogue, KeepRule written, int designs, IReadOnlyDictionary<string, PlaceInUse> full)
{
    private readonly KeepText keep = KeepRuleMapping.TextOf(shop, catalogue);

    /// <summary>One reason.</summary>
    public string Of(CullReason reason, CullCandidate candidate) => reason switch
    {
        CullReason.BreaksRule => keep.Of(candidate.Ruling.AsWritten(written), candidate.Clear, candidate.Board.Size),
        CullReason.FitsNothing => FormattableString.Invariant($"no part of {(designs == 1 ? "the saved design" : $"any of the {designs} saved designs")} can be cut from it"),
        CullReason.Old => $"it has lain for {Age(candidate.Days)}",
        CullReason.PlaceFull => Full(full[candidate.Board.Place!]),
    };

    private string Full(PlaceInUse place)
    {
        var over = place.CubicMetres - place.Place.LimitCubicMetres!.Value;
        return $"{place.Place.Name} holds {VolumeText.OfCubicMetres(place.CubicMetres, shop.Unit)}, {VolumeText.OfCubicMetres(over, shop.Unit)} more than its limit, and this is worth least there";
    }

    private static string Age(int days) => days < 730
        ? FormattableString.Invariant($"{days} days")
        : FormattableString.Invariant($"{days / 365} years");
}
