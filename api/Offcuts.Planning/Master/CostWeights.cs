using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Master;

/// <summary>How a pattern's two costs are added up for one linear program.</summary>
internal readonly record struct CostWeights(double Money, double Worth)
{
    /// <summary>Only the money, for bounds.</summary>
    public static CostWeights MoneyOnly { get; } = new(1, 0);

    /// <summary>
    /// Money first, worth as a tie-break: a minor unit of worth counts a hundredth of one of money, and less where boards cost less than they are worth.
    /// Used to find plans, never to prove them; what it gets wrong about the order of the objectives, the integer programs over the pool put right.
    /// </summary>
    public static CostWeights Blend(PlanningModel model) => new(1, 0.01 * model.PriceByWorth);

    public double Of(Pattern pattern) => (Money * pattern.Money) + (Worth * pattern.Worth);

    public double Of(Solution solution) => (Money * solution.Money) + (Worth * solution.Worth);

    /// <summary>What using a board costs before anything is cut from it.</summary>
    public double OfBoard(PlanningModel model, BoardType board) =>
        (Money * board.Price) + (Worth * (board.WorthConsumed + model.HandlingOf(board)));
}
