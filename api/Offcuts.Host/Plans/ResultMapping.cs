using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Plans from the domain to the wire.</summary>
internal static class ResultMapping
{
    /// <summary>A plan as it is told and stored, with the names that species have now.</summary>
    public static PlanResult ToResult(Plan plan, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var currency = problem.Shop.Currency;
        var stock = problem.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        return new PlanResult(
            Words.Of(plan.Status), currency, InCurrency(plan.TotalCost), InCurrency(plan.WoodCost), InCurrency(plan.ItemCost),
            InCurrency(plan.WoodBound), decimal.Round(plan.Gap, 6), InCurrency(plan.WorthConsumed), InCurrency(plan.WorthReturned),
            [.. plan.Boards.Select(board => ToRecord(board, board.BoardId is { } id ? stock.GetValueOrDefault(id) : null, problem, catalogue))],
            [.. plan.GlueUps.Select(glueUp => ToRecord(glueUp, catalogue))],
            [.. plan.Purchases.Select(purchase => ToRecord(purchase, plan.Purchases, currency, catalogue))],
            ShoppingLists.Of(plan, problem, catalogue),
            [.. plan.Missing.Select(missing => new MissingRecord(
                missing.Name, missing.Quantity, Words.Of(missing.Reason), PlanText.Of(missing, problem), missing.Closest,
                missing.Needed?.Millimetres, missing.Has?.Millimetres))],
            [.. plan.Warnings.Select(warning => new WarningRecord(
                Words.Of(warning.Kind), warning.Subject, PlanText.Of(warning, problem.Shop.Unit), warning.Value?.Millimetres, warning.Limit?.Millimetres))],
            new RunRecord(
                plan.Run.Seed, Milliseconds(plan.Run.Budget), Milliseconds(plan.Run.Elapsed), Milliseconds(plan.Run.FirstPlanAfter),
                plan.Run.Finished, plan.Run.PlannerVersion),
            [.. plan.Counts.Select(count => ToRecord(count, problem))],
            [.. plan.Laminations.Select(lamination => LaminationMapping.ToRecord(lamination, problem, catalogue))],
            ChangeMapping.ToRecord(plan, problem),
            MovementMapping.Of(plan, problem, catalogue), InCurrency(plan.ChargeCost), InCurrency(plan.StopCost),
            problem.Builds.Count == 0 ? null : TogetherMapping.ToRecord(plan, problem),
            plan.WorthBound is { } least ? InCurrency(least) : null, plan.WorthGap is { } gap ? InCurrency(gap) : null);

        decimal InCurrency(Money money) => MoneyText.ToDecimal(money, currency);
    }

    public static PartCountRecord ToRecord(PartCount count, PlanningProblem problem) => new(
        count.Part, count.Count, count.Spares,
        count.Gaps is { } gaps ? new GapsRecord(gaps.Number, gaps.Total.Millimetres, gaps.Nearest(problem.Shop.Unit).Millimetres) : null,
        CountText.Of(count, problem.Design.Parts.First(part => part.Name == count.Part), problem.Shop.Unit));

    /// <summary>A purchase at the price that all purchases of its offer reach.</summary>
    public static PurchaseRecord ToRecord(Purchase purchase, IReadOnlyList<Purchase> all, string currency, SpeciesCatalogue catalogue)
    {
        var offer = purchase.Offer.Offer;
        var price = StepPrices.UnitPrice(offer, all.Where(other => other.Offer.Offer.Id == offer.Id).Select(other => (other.Offer, other.Count)));
        return new(
            offer.Id, offer.Supplier, offer.Name, Words.Of(offer.Kind), offer.Species, Words.Of(offer.Surface),
            ShopMapping.ToRecord(purchase.Offer.Size), purchase.Count, MoneyText.ToDecimal(purchase.Offer.Price, currency),
            MoneyText.ToDecimal(purchase.Cost, currency), offer.SupplierName, catalogue.NameOf(offer.Species),
            new RateRecord(MoneyText.ToDecimal(price, currency), Unit(offer)));
    }

    private static string Unit(Offer offer) => offer.Form switch
    {
        ByThePiece => "piece",
        ByRunningLength running => Words.Of(running.Unit),
        ByVolume volume => Words.Of(volume.Unit),
        _ => throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer)),
    };

    public static int Milliseconds(TimeSpan time) => (int)time.TotalMilliseconds;

    private static BoardCutRecord ToRecord(BoardCut board, Board? stock, PlanningProblem problem, SpeciesCatalogue catalogue) => new(
        board.Number, board.BoardId, board.OfferId, board.Copy, Words.Of(board.Kind), board.Species, Words.Of(board.Surface),
        ShopMapping.ToRecord(board.Size), stock?.Place,
        [.. board.Defects.Select(defect => new DefectRecord(
            defect.Kind, defect.Area.X.Millimetres, defect.Area.Y.Millimetres, defect.Area.Length.Millimetres, defect.Area.Width.Millimetres))],
        Words.Of(board.FirstCut),
        [.. board.Pieces.Select(piece => ToRecord(piece, problem))],
        [.. board.Cuts.Select(cut => new CutRecord(
            cut.Order, Words.Of(cut.Direction), cut.Kerf.X.Millimetres, cut.Kerf.Y.Millimetres, cut.Kerf.Length.Millimetres, cut.Kerf.Width.Millimetres))],
        catalogue.NameOf(board.Species),
        stock is not null && problem.ReachOf(stock) is not Reach.Easy and var reach ? Words.Of(reach) : null);

    private static PieceRecord ToRecord(Piece piece, PlanningProblem problem)
    {
        return piece switch
        {
            PartPiece part => LaminationMapping.ToRecord(At("part"), part, problem) with
            {
                Finished = part.Finished is { } size ? ShopMapping.ToRecord(size) : null,
                Use = part.Use == PieceUse.Asked ? null : Words.Of(part.Use),
            },
            StripPiece strip => At("strip") with
            {
                Name = strip.Panel,
                Copy = strip.Copy,
                SubPanel = strip.SubPanel,
                Order = strip.Order,
                NetWidthMm = strip.NetWidth.Millimetres,
            },
            LeftoverPiece leftover => At("leftover") with { Ends = ConditionMapping.ToSaid(leftover.Ends) },
            WastePiece => At("waste"),
            _ => throw new ArgumentException($"Unknown kind of piece {piece.GetType().Name}.", nameof(piece)),
        };

        PieceRecord At(string kind) =>
            new(kind, piece.At.X.Millimetres, piece.At.Y.Millimetres, piece.At.Length.Millimetres, piece.At.Width.Millimetres)
            {
                LossThicknessMm = piece.Loss?.Thickness.Millimetres,
                LossWidthMm = piece.Loss?.Width.Millimetres,
            };
    }

    private static GlueUpRecord ToRecord(GlueUp glueUp, SpeciesCatalogue catalogue) => new(
        glueUp.Panel, glueUp.Copy, glueUp.Species,
        [.. glueUp.SubPanels.Select(sub => new SubPanelRecord(
            sub.Number, sub.NeededWidth.Millimetres,
            [.. sub.Strips.Select(strip => new StripRecord(strip.Order, strip.BoardNumber, strip.NetWidth.Millimetres))]))],
        catalogue.NameOf(glueUp.Species));
}
