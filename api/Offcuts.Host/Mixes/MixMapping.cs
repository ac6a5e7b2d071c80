using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Fits;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning;

namespace Offcuts.Host.Mixes;

/// <summary>Mixes from the planner to the wire.</summary>
internal static class MixMapping
{
    /// <summary>The answer as it is told.</summary>
    public static MixRecord ToRecord(MixAsking asking, MixAnswer answer, TimeSpan elapsed)
    {
        var (problem, currency) = (asking.Question.Problem, asking.Question.Problem.Shop.Currency);
        var ranks = MixRank.OfCopies(asking.Question);
        return new MixRecord(
            currency,
            [.. problem.Builds.Select((build, at) => new MixedDesignRecord(
                build, asking.Designs?[at].Reference, asking.Designs?[at].Version, answer.Best?.Counts[at], (int)ranks[at].Pieces, InCurrency(ranks[at].Worth)))],
            answer.Best is { } best ? Used(best, currency) : null, answer.IsSure, answer.AtMost is { } most ? InCurrency(most.Worth) : null, answer.Tried,
            ResultMapping.Milliseconds(elapsed));

        decimal InCurrency(Money money) => MoneyText.ToDecimal(money, currency);
    }

    private static MixUseRecord Used(PlannedMix mix, string currency)
    {
        var (plan, stock) = (mix.Plan, mix.Problem.Stock);
        var outcome = FitOutcome.Of(plan, mix.Problem.Design, PlanEffort.Thorough);
        List<MixLeftoverRecord> leftovers = [.. plan.Boards.SelectMany(board => board.Pieces.OfType<LeftoverPiece>().Select(piece => (board, piece)))
            .OrderByDescending(each => each.piece.At.Area.SquareMillimetres).ThenBy(each => each.board.Number)
            .Select(each => new MixLeftoverRecord(each.board.BoardId!, each.board.Species, ShopMapping.ToRecord(Size(each.board, each.piece))))];
        return new MixUseRecord(
            InCurrency(mix.Rank.Worth), FitMapping.CubicMetres(outcome.BoardFeet), (int)mix.Rank.Pieces, InCurrency(plan.ItemCost),
            InCurrency(plan.WorthConsumed), InCurrency(plan.WorthReturned),
            new PileOfBoardsRecord(stock.Sum(board => board.Quantity), stock.Sum(board => Volume(board.Size) * board.Quantity)),
            new PileOfBoardsRecord(plan.Boards.Count, plan.Boards.Sum(board => Volume(board.Size))),
            [.. outcome.Uses.Select(use => new FitBoardRecord(use.BoardId, use.Count, FitMapping.CubicMetres(use.BoardFeet)))],
            new PileOfBoardsRecord(leftovers.Count, plan.Boards.Sum(board => board.Pieces.OfType<LeftoverPiece>().Sum(piece => Volume(Size(board, piece))))),
            leftovers);

        decimal InCurrency(Money money) => MoneyText.ToDecimal(money, currency);

        static Dimensions Size(BoardCut board, LeftoverPiece piece) => new(board.Size.Thickness, piece.At.Width, piece.At.Length);
    }

    private static decimal Volume(Dimensions size) => decimal.Round(BoardMeasure.CubicMetres(size), 9);
}
