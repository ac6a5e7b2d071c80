namespace Offcuts.Domain;

/// <summary>What one build has of a plan for several.</summary>
/// <param name="Build">Its name.</param>
/// <param name="Boards">Numbers of the boards from which its pieces and strips come.</param>
/// <param name="Pieces">How many pieces of parts and strips it gets, spares included.</param>
/// <param name="Missing">How many of its pieces are missing.</param>
/// <param name="WoodCost">Its share of the wood that is bought: each board is shared by the area of the blanks cut from it.</param>
/// <param name="ItemCost">What is bought ready made for it.</param>
public sealed record BuildShare(string Build, IReadOnlyList<int> Boards, int Pieces, int Missing, Money WoodCost, Money ItemCost)
{
    /// <summary>The shares of all builds of a joint design, in their order; together they have all of the plan's wood and items.</summary>
    public static IReadOnlyList<BuildShare> Of(PlanningProblem problem, Plan plan)
    {
        var wood = problem.Builds.ToDictionary(build => build, _ => 0L, StringComparer.Ordinal);
        foreach (var board in plan.Boards.Where(board => board.OfferId is not null))
        {
            Share(problem.Builds, board, plan.PurchaseOf(board).Offer.Price, wood);
        }

        return [.. problem.Builds.Select(build => new BuildShare(
            build,
            [.. plan.Boards.Where(board => board.Pieces.Any(piece => IsOf(piece, build))).Select(board => board.Number)],
            plan.Boards.Sum(board => board.Pieces.Where(piece => IsOf(piece, build)).Sum(piece => piece is PartPiece part ? part.Copies.Count : 1)),
            plan.MissingCountOf(build),
            new Money(wood[build]),
            new Money(problem.Design.Items.Where(item => JointDesign.IsOf(item.Name, build)).Sum(item => item.Cost.MinorUnits))))];
    }

    private static void Share(IReadOnlyList<string> builds, BoardCut board, Money price, Dictionary<string, long> wood)
    {
        var areas = builds.Select(build => (Build: build, Area: board.Pieces.Where(piece => IsOf(piece, build)).Aggregate(0m, (sum, piece) => sum + piece.At.Area.SquareMillimetres)))
            .Where(share => share.Area > 0).OrderBy(share => share.Area).ToList();
        var (left, all) = (price.MinorUnits, areas.Sum(share => share.Area));
        foreach (var (build, area) in areas)
        {
            // What does not divide evenly goes to the largest, which comes last.
            var own = build == areas[^1].Build ? left : (long)decimal.Floor(price.MinorUnits * area / all);
            wood[build] += own;
            left -= own;
        }
    }

    private static bool IsOf(Piece piece, string build) => piece switch
    {
        PartPiece part => JointDesign.IsOf(part.Part, build),
        StripPiece strip => JointDesign.IsOf(strip.Panel, build),
        _ => false,
    };
}
