using System.Globalization;
using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;

namespace Offcuts.Host.Fits;

/// <summary>An outcome as it is stored. Money is in minor units, lengths are in ticks, wood is in board feet.</summary>
internal sealed record RememberedFit(
    string Effort, long WoodCost, long ChargeCost, long StopCost, long WoodBound, long ItemCost, decimal BoardFeet, decimal FromStock,
    IReadOnlyList<RememberedUse> Uses, IReadOnlyList<RememberedPurchase> Purchases, IReadOnlyList<RememberedMissing> Missing)
{
    /// <summary>The outcome as JSON.</summary>
    public static string Write(FitOutcome outcome) => JsonSerializer.Serialize(
        new RememberedFit(
            outcome.Effort.ToString(), outcome.WoodCost.MinorUnits, outcome.ChargeCost.MinorUnits, outcome.StopCost.MinorUnits, outcome.WoodBound.MinorUnits, outcome.ItemCost.MinorUnits, outcome.BoardFeet, outcome.BoardFeetFromStock,
            [.. outcome.Uses.Select(use => new RememberedUse(use.BoardId, use.Count, use.BoardFeet))],
            [.. outcome.Purchases.Select(each => new RememberedPurchase(
                each.OfferId, each.Size.Thickness.Ticks, each.Size.Width.Ticks, each.Size.Length.Ticks, each.Count))],
            [.. outcome.Missing.Select(part => new RememberedMissing(part.Name, part.Quantity, part.Reason.ToString()))]),
        WireJson.Default.RememberedFit);

    /// <summary>The outcome from JSON. Of what is missing only a reason without sizes is kept: those are found anew.</summary>
    public static FitOutcome Read(string json)
    {
        var kept = JsonSerializer.Deserialize(json, WireJson.Default.RememberedFit)!;
        return new FitOutcome
        {
            Effort = Enum.Parse<PlanEffort>(kept.Effort),
            WoodCost = new Money(kept.WoodCost),
            ChargeCost = new Money(kept.ChargeCost),
            StopCost = new Money(kept.StopCost),
            WoodBound = new Money(kept.WoodBound),
            ItemCost = new Money(kept.ItemCost),
            BoardFeet = kept.BoardFeet,
            BoardFeetFromStock = kept.FromStock,
            Uses = [.. kept.Uses.Select(use => new StockUse(use.BoardId, use.Count, use.BoardFeet))],
            Purchases = [.. kept.Purchases.Select(each => new FitPurchase(
                each.OfferId, new Dimensions(Length.FromTicks(each.Thickness), Length.FromTicks(each.Width), Length.FromTicks(each.Length)), each.Count))],
            Missing = [.. kept.Missing.Select(part => new MissingPart(part.Name, part.Quantity, Enum.Parse<MissingReason>(part.Reason)))],
        };
    }

    /// <summary>The boards that were seen, one a line.</summary>
    public static string Write(SeenStock seen) => string.Join(
        '\n', seen.Boards.Select(board => string.Create(CultureInfo.InvariantCulture, $"{board.BoardId} {board.Quantity} {board.Wood}")));

    /// <summary>The boards that were seen.</summary>
    public static SeenStock ReadSeen(string text) => new([.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line =>
    {
        var words = line.Split(' ');
        return new TouchableBoard(words[0], words[2], int.Parse(words[1], CultureInfo.InvariantCulture));
    })]);
}

/// <summary>A board in stock that a plan cuts.</summary>
internal sealed record RememberedUse(string BoardId, int Count, decimal BoardFeet);

/// <summary>Wood to buy.</summary>
internal sealed record RememberedPurchase(string OfferId, long Thickness, long Width, long Length, int Count);

/// <summary>What cannot be had.</summary>
internal sealed record RememberedMissing(string Name, int Quantity, string Reason);
