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

    /// <summary>What a pattern costs more than it gives at a linear program's prices: its reduced cost.</summary>
    /// <param name="model">The model.</param>
    /// <param name="pattern">The pattern.</param>
    /// <param name="coverDuals">The prices of the rows.</param>
    /// <param name="boardDuals">What the limits on a board's use count for, by board index.</param>
    public double Reduced(PlanningModel model, Pattern pattern, double[] coverDuals, double[] boardDuals) => Of(pattern) - boardDuals[pattern.Board.Index]
        - pattern.Cover.Sum(cover => coverDuals[cover.Row] * model.Rows[cover.Row].Scaled(cover.Amount));

    /// <summary>What using a board costs before anything is cut from it.</summary>
    public double OfBoard(PlanningModel model, BoardType board) =>
        (Money * board.Price) + (Worth * (board.WorthConsumed + model.HandlingOf(board)));
}
