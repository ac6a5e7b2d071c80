using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Bounds;

/// <summary>The prices of a linear program.</summary>
/// <param name="Rows">What covering a row is worth, by row.</param>
/// <param name="Boards">What the limits on a board's use count for, by board index; empty where it is not known.</param>
internal sealed record ProgramDuals(double[] Rows, double[] Boards)
{
    /// <summary>Those of the program as it was last solved.</summary>
    public static ProgramDuals Of(MasterProblem master) => new((double[])master.CoverDuals.Clone(), (double[])master.BoardDuals.Clone());

    /// <summary>The mean of several.</summary>
    public static ProgramDuals Mean(IReadOnlyList<ProgramDuals> all) => new(
        [.. all[0].Rows.Select((_, row) => all.Average(each => each.Rows[row]))],
        [.. all[0].Boards.Select((_, board) => all.Average(each => each.Boards[board]))]);

    /// <summary>What each board costs at these prices, by board index; no matter how much where it is not known.</summary>
    public double[] Costs(PlanningModel model) =>
        [.. model.Boards.Select(board => Boards.Length == 0 ? double.PositiveInfinity : Math.Max(0, board.Price - Boards[board.Index]))];
}
