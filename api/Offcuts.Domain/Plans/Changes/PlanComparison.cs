namespace Offcuts.Domain;

/// <summary>Compares a plan with an earlier one.</summary>
public static class PlanComparison
{
    /// <summary>What the plan does otherwise than the earlier one.</summary>
    /// <param name="earlier">The earlier plan.</param>
    /// <param name="problem">What the plan was made from.</param>
    /// <param name="plan">The plan.</param>
    public static PlanChanges Of(EarlierPlan earlier, PlanningProblem problem, Plan plan) => new(
        earlier.Plan.WoodCost, earlier.Plan.ItemCost, earlier.Plan.ChargeCost, earlier.Problem.Shop.Currency,
        Boards(earlier, problem, plan), Parts(earlier.Plan, plan), Purchases(earlier.Plan, plan));

    private static List<BoardChange> Boards(EarlierPlan earlier, PlanningProblem problem, Plan plan)
    {
        var reasons = new ChangeReasons(earlier.Problem, problem);
        var partners = Partners(earlier.Plan.Boards, plan.Boards);
        return
        [
            .. plan.Boards.Select(board => !partners.TryGetValue(board, out var before) ? new BoardChange(BoardChangeKind.New, board, null, [])
                : IsCutAlike(before, board) ? new BoardChange(BoardChangeKind.Kept, board, before.Number, [])
                : new BoardChange(BoardChangeKind.Recut, board, before.Number, reasons.Of(before))),
            .. earlier.Plan.Boards.Where(board => !partners.ContainsValue(board))
                .Select(board => new BoardChange(BoardChangeKind.Dropped, board, board.Number, reasons.Of(board))),
        ];
    }

    /// <summary>For each board of the new plan the same one of the earlier plan; of several alike those that are cut alike first.</summary>
    private static Dictionary<BoardCut, BoardCut> Partners(IReadOnlyList<BoardCut> earlier, IReadOnlyList<BoardCut> now)
    {
        var partners = new Dictionary<BoardCut, BoardCut>(ReferenceEqualityComparer.Instance);
        var before = earlier.GroupBy(Which).ToDictionary(alike => alike.Key, alike => alike.ToList());
        foreach (var alike in now.GroupBy(Which))
        {
            var left = before.GetValueOrDefault(alike.Key) ?? [];
            foreach (var isSame in new Func<BoardCut, BoardCut, bool>[]
            {
                (one, other) => one.Copy == other.Copy && IsCutAlike(one, other), IsCutAlike, (one, other) => one.Copy == other.Copy, (_, _) => true,
            })
            {
                foreach (var board in alike.Where(board => !partners.ContainsKey(board)))
                {
                    if (left.Find(other => isSame(other, board)) is { } partner)
                    {
                        partners.Add(board, partner);
                        left.Remove(partner);
                    }
                }
            }
        }

        return partners;
    }

    // Bought boards of one offer are the same only if they are of one size.
    private static (string? BoardId, string? OfferId, Dimensions? Size) Which(BoardCut board) =>
        (board.BoardId, board.OfferId, board.OfferId is null ? null : board.Size);

    private static bool IsCutAlike(BoardCut one, BoardCut other) => one.Size == other.Size
        && one.Cuts.Select(cut => cut.Kerf).ToHashSet().SetEquals(other.Cuts.Select(cut => cut.Kerf))
        && one.Pieces.Select(Cut).ToHashSet().SetEquals(other.Pieces.Select(Cut));

    /// <summary>A piece as the saw sees it: which of several alike it becomes does not matter.</summary>
    private static (Rect At, string What, string? Name, int Count, Recipe Recipe, Length? NetWidth) Cut(Piece piece) => piece switch
    {
        PartPiece part => (part.At, part.Use.ToString(), part.Part, part.Copies.Count, part.Recipe, null),
        StripPiece strip => (strip.At, "Strip", strip.Panel, 1, Recipe.Plain, strip.NetWidth),
        LeftoverPiece => (piece.At, "Leftover", null, 0, Recipe.Plain, null),
        _ => (piece.At, "Waste", null, 0, Recipe.Plain, null),
    };

    private static List<PartChange> Parts(Plan earlier, Plan plan)
    {
        var (before, now) = (Sources(earlier), Sources(plan));
        return [.. now.Keys.Union(before.Keys, StringComparer.Ordinal)
            .Select(name => new PartChange(name, before.GetValueOrDefault(name) ?? [], now.GetValueOrDefault(name) ?? []))
            .Where(part => !part.Earlier.ToHashSet().SetEquals(part.Now))];
    }

    private static Dictionary<string, List<PieceSource>> Sources(Plan plan) => plan.Boards
        .SelectMany(board => board.Pieces.Select(piece => (Board: board, Asked: Asked(piece))))
        .Where(entry => entry.Asked.Count > 0)
        .GroupBy(entry => entry.Asked.Name!, StringComparer.Ordinal)
        .ToDictionary(part => part.Key, part => part.GroupBy(entry => (entry.Board.BoardId, entry.Board.OfferId))
            .Select(source => new PieceSource(source.Key.BoardId, source.Key.OfferId, source.Sum(entry => entry.Asked.Count))).ToList(), StringComparer.Ordinal);

    private static (string? Name, int Count) Asked(Piece piece) => piece switch
    {
        PartPiece { Use: PieceUse.Asked } part => (part.Part, part.Copies.Count),
        StripPiece strip => (strip.Panel, 1),
        _ => (null, 0),
    };

    private static List<PurchaseChange> Purchases(Plan earlier, Plan plan) =>
        [.. plan.Purchases.Concat(earlier.Purchases).GroupBy(Size).Select(offer => new PurchaseChange(
            offer.First().Offer, Count(earlier, offer.Key), Count(plan, offer.Key))).Where(change => change.Earlier != change.Now)];

    private static (string OfferId, Dimensions Size) Size(Purchase purchase) => (purchase.Offer.Offer.Id, purchase.Offer.Size);

    private static int Count(Plan plan, (string OfferId, Dimensions Size) size) => plan.Purchases.Where(purchase => Size(purchase) == size).Sum(purchase => purchase.Count);
}
