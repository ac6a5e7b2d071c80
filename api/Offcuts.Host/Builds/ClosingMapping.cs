using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Builds;

/// <summary>What the maker says of cut boards, from the wire to the store.</summary>
internal static class ClosingMapping
{
    public static BoardReport ToReport(BoardClosingEntry entry, string at, Faults faults)
    {
        faults.Text($"{at}/place", entry.Place, Limits.MaxLine);
        faults.Text($"{at}/batch", entry.Batch, Limits.MaxName);
        faults.Text($"{at}/reason", entry.Reason, Limits.MaxNote);
        return new BoardReport
        {
            Number = entry.Number,
            Size = ToSize(entry.Size, $"{at}/size", faults),
            Leftovers = [.. faults.Entries($"{at}/leftovers", entry.Leftovers, Limits.MaxQuantity).Select(each =>
                ToLeftover(each.Entry, $"{at}/leftovers/{each.Index}", faults))],
            Added = [.. faults.Entries($"{at}/added", entry.Added, Limits.MaxDefects).Select(each => ToAdded(each.Entry, $"{at}/added/{each.Index}", faults))],
            Spoiled = entry.Spoiled ?? [],
            Waste = [.. faults.Entries($"{at}/waste", entry.Waste, Limits.MaxDefects).Select(each =>
                faults.Millimetres($"{at}/waste/{each.Index}/lengthMm", each.Entry.LengthMm) * faults.Millimetres($"{at}/waste/{each.Index}/widthMm", each.Entry.WidthMm))],
            Place = entry.Place,
            Batch = entry.Batch,
            Reason = entry.Reason,
        };
    }

    /// <summary>The cut board; null if the report cannot be right.</summary>
    public static CutBoard? ToCut(BoardReport report, Plan plan, PlanningProblem problem, string at, Faults faults)
    {
        if (plan.Boards.FirstOrDefault(board => board.Number == report.Number) is not { } cut)
        {
            faults.Add($"{at}/number", $"The plan has no board {report.Number}: give 1 to {plan.Boards.Count}.");
            return null;
        }

        var (outcome, wrong) = Bookkeeping.Close(cut, report);
        foreach (var fault in wrong)
        {
            faults.Add(at + fault.Pointer[1..], fault.Detail);
        }

        return new CutBoard(report.Number, cut.BoardId, cut.BoardId is null ? Bought(cut, outcome, report, plan, problem) : null, outcome, report);
    }

    // What was bought for the build enters the inventory as used, with its price, so that its leftovers have a cost and a parent.
    private static Board Bought(BoardCut cut, Outcome outcome, BoardReport report, Plan plan, PlanningProblem problem)
    {
        var purchase = plan.PurchaseOf(cut);
        var offer = purchase.Offer.Offer;
        return new Board
        {
            Id = "",
            Kind = cut.Kind,
            Species = cut.Species,
            Size = outcome.Size,
            Surface = cut.Surface,
            Appearance = offer.Appearance,
            Batch = report.Batch,
            Place = report.Place,
            Source = offer.SupplierName ?? offer.Supplier,
            LoggedAt = default,
            Status = BoardStatus.Used,
            Price = new BoardPrice(purchase.Offer.Price, problem.Shop.Currency),
        };
    }

    private static LeftoverReport ToLeftover(LeftoverClosingEntry entry, string at, Faults faults)
    {
        CheckWords(entry.Place, entry.Note, at, faults);
        return new LeftoverReport(entry.Leftover, entry.Kept, ToSize(entry.Size, $"{at}/size", faults), entry.Place, entry.Note);
    }

    private static AddedPiece ToAdded(AddedPieceEntry entry, string at, Faults faults)
    {
        CheckWords(entry.Place, entry.Note, at, faults);
        return new AddedPiece(
            ShopMapping.ToDimensions(entry.Size, $"{at}/size", faults), ConditionMapping.ToEnds(entry.Ends, $"{at}/ends", faults), entry.Place, entry.Note);
    }

    private static void CheckWords(string? place, string? note, string at, Faults faults)
    {
        faults.Text($"{at}/place", place, Limits.MaxLine);
        faults.Text($"{at}/note", note, Limits.MaxNote);
    }

    private static Dimensions? ToSize(SizeRecord? size, string at, Faults faults) => size is null ? null : ShopMapping.ToDimensions(size, at, faults);
}
