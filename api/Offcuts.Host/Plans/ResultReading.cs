using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Stored plans back to the domain, for what is drawn from them.</summary>
internal static class ResultReading
{
    public static Plan ToPlan(PlanResult result, PlanningProblem problem)
    {
        var offers = problem.Offers.ToDictionary(offer => offer.Id, StringComparer.Ordinal);
        return new Plan
        {
            Status = Word<PlanStatus>(result.Status),
            Boards = [.. result.Boards.Select(ToBoard)],
            GlueUps = [.. result.GlueUps.Select(ToGlueUp)],
            Laminations = [.. (result.Laminations ?? []).Select(LaminationMapping.ToLamination)],
            Purchases = [.. result.Purchases.Select(purchase => new Purchase(
                new OfferSize(offers[purchase.OfferId], Size(purchase.Size), ToMoney(purchase.UnitPrice)), purchase.Count))],
            Missing = [.. result.Missing.Select(missing => new MissingPart(
                missing.Name, missing.Quantity, Word<MissingReason>(missing.Code), missing.Closest, Mm(missing.NeededMm), Mm(missing.HasMm)))],
            Counts = [.. (result.Counts ?? []).Select(count => new PartCount(
                count.Name, count.Count, count.Spares,
                count.Gaps is { } gaps ? new EqualGaps(Length.FromMillimetres(gaps.TotalMm), gaps.Number) : null))],
            Warnings = [.. result.Warnings.Select(warning => new PlanWarning(
                Word<WarningKind>(warning.Code), warning.Subject, Mm(warning.ValueMm), Mm(warning.LimitMm)))],
            WoodCost = ToMoney(result.WoodCost),
            ItemCost = ToMoney(result.ItemCost),
            Charges = [.. result.ShoppingLists.Where(list => list.Delivery + list.TopUp > 0)
                .Select(list => new SupplierCharge(list.Supplier!, ToMoney(list.Delivery), ToMoney(list.TopUp)))],
            StopCost = ToMoney(result.StopCost),
            WoodBound = ToMoney(result.WoodBound),
            WorthConsumed = ToMoney(result.WorthConsumed),
            WorthReturned = ToMoney(result.WorthReturned),
            WorthBound = result.WorthBound is { } least ? ToMoney(Math.Abs(least)) * Math.Sign(least) : null,
            Run = new PlanRun(
                result.Run.Seed, TimeSpan.FromMilliseconds(result.Run.BudgetMs), TimeSpan.FromMilliseconds(result.Run.ElapsedMs),
                TimeSpan.FromMilliseconds(result.Run.FirstPlanAfterMs), result.Run.Finished, result.Run.PlannerVersion),
        };

        Money ToMoney(decimal amount) => MoneyText.TryFromDecimal(amount, result.Currency, out var money, out var error)
            ? money
            : throw new OffcutsException(ErrorCode.DataIntegrity, $"A stored plan cannot be read: {error}");
    }

    private static BoardCut ToBoard(BoardCutRecord record) => new()
    {
        Number = record.Number,
        BoardId = record.BoardId,
        Copy = record.Copy,
        OfferId = record.OfferId,
        Kind = Word<BoardKind>(record.Kind),
        Species = record.Species,
        Surface = Word<Surface>(record.Surface),
        Size = Size(record.Size),
        Defects = [.. record.Defects.Select(defect => new Defect(defect.Kind, Area(defect.XMm, defect.YMm, defect.LengthMm, defect.WidthMm)))],
        FirstCut = Word<FirstCut>(record.FirstCut),
        Pieces = [.. record.Pieces.Select(ToPiece)],
        Cuts = [.. record.Cuts.Select(cut => new SawCut(
            cut.Order, Word<FirstCut>(cut.Direction), Area(cut.XMm, cut.YMm, cut.LengthMm, cut.WidthMm)))],
    };

    private static Piece ToPiece(PieceRecord record)
    {
        var at = Area(record.XMm, record.YMm, record.LengthMm, record.WidthMm);
        Piece piece = record.Kind switch
        {
            "part" => LaminationMapping.ToPiece(record, at) with
            {
                Finished = record.Finished is { } size ? Size(size) : null,
                Use = record.Use is { } use ? Word<PieceUse>(use) : PieceUse.Asked,
            },
            "strip" => new StripPiece(
                at, record.Name!, record.Copy!.Value, record.SubPanel!.Value, record.Order!.Value, Length.FromMillimetres(record.NetWidthMm!.Value)),
            "leftover" => new LeftoverPiece(at)
            {
                Ends = record.Ends is { } ends ? new Ends(Word<EndState>(ends.Left), Word<EndState>(ends.Right)) : default,
            },
            "waste" => new WastePiece(at),
            _ => throw new OffcutsException(ErrorCode.DataIntegrity, $"A stored plan holds '{record.Kind}' where a kind of piece should stand."),
        };
        return piece with { Loss = LossOf(record) };
    }

    private static Loss? LossOf(PieceRecord record) => (record.LossThicknessMm, record.LossWidthMm) is (null, null)
        ? null
        : new Loss(Mm(record.LossThicknessMm) ?? Length.Zero, Mm(record.LossWidthMm) ?? Length.Zero);

    private static GlueUp ToGlueUp(GlueUpRecord record) => new(
        record.Panel, record.Copy, record.Species,
        [.. record.SubPanels.Select(sub => new SubPanel(
            sub.Number, Length.FromMillimetres(sub.NeededWidthMm),
            [.. sub.Strips.Select(strip => new StripPlace(strip.Order, strip.BoardNumber, Length.FromMillimetres(strip.NetWidthMm)))]))]);

    private static T Word<T>(string word)
        where T : struct, Enum => Words.TryRead<T>(word, out var value)
            ? value
            : throw new OffcutsException(ErrorCode.DataIntegrity, $"A stored plan holds '{word}' where a {typeof(T).Name} should stand.");

    private static Length? Mm(decimal? value) => value is { } given ? Length.FromMillimetres(given) : null;

    private static Dimensions Size(SizeRecord size) =>
        new(Length.FromMillimetres(size.ThicknessMm), Length.FromMillimetres(size.WidthMm), Length.FromMillimetres(size.LengthMm));

    private static Rect Area(decimal x, decimal y, decimal length, decimal width) =>
        new(Length.FromMillimetres(x), Length.FromMillimetres(y), Length.FromMillimetres(length), Length.FromMillimetres(width));
}
