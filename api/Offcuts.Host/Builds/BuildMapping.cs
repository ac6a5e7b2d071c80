using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Host.Builds;

/// <summary>Builds from the domain to the wire.</summary>
internal static class BuildMapping
{
    /// <summary>The plan with how far its build is, if it is accepted.</summary>
    public static PlanRecord WithBuild(PlanRecord plan, Build? build, Shop shop) =>
        build is null || plan.Plan is not { } result ? plan : plan with { Build = ToRecord(build, result, shop) };

    /// <summary>The state in a word.</summary>
    /// <param name="build">The build.</param>
    /// <param name="boards">How many boards its plan cuts.</param>
    public static string StateOf(Build build, int boards) =>
        build.Closed.Count == boards ? "built"
        : !build.IsOpen ? "stopped"
        : build.Closed.Count > 0 ? "under-way"
        : "accepted";

    private static BuildRecord ToRecord(Build build, PlanResult plan, Shop shop) => new(
        StateOf(build, plan.Boards.Count), build.AcceptedAt,
        shop.HoldDays is { } days && build.IsOpen && build.Closed.Count == 0 ? build.AcceptedAt + TimeSpan.FromDays(days) : null,
        [.. plan.Boards.Select(board => ToRecord(board, build, build.Closed.FirstOrDefault(closed => closed.Number == board.Number)))]);

    private static BuildBoardRecord ToRecord(BoardCutRecord board, Build build, ClosedBoard? closed) => closed is null
        ? new(board.Number, !build.IsOpen ? "released" : board.BoardId is null ? "to-buy" : "held", board.BoardId)
        : new(board.Number, "cut", closed.BoardId, closed.At, closed.Leftovers, ToRecord(closed.Balance), closed.Reason);

    private static BalanceRecord ToRecord(Balance balance) => new(
        balance.Board.SquareMillimetres, balance.Parts.SquareMillimetres, balance.Leftovers.SquareMillimetres,
        balance.Kerf.SquareMillimetres, balance.Waste.SquareMillimetres, balance.Difference.SquareMillimetres);
}
