using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Storage;

namespace Offcuts.Host.StockTakes;

/// <summary>Stock-takes from the store to the wire.</summary>
internal static class StockTakeMapping
{
    public static StockTakeRecord ToRecord(StockTakeState state, SpeciesCatalogue catalogue) => new(
        state.Take.Number, state.Take.Place, state.Take.StartedAt, state.Take.FinishedAt,
        [.. state.Seen.Select(seen => new SeenBoardRecord(seen.BoardId, Words.Of(seen.Finding), seen.At, seen.Line))],
        [.. state.Unseen.Select(board => BoardMapping.ToRecord(board, catalogue))]);

    public static StockTakeStepRecord ToRecord(StockTakeStep step, SpeciesCatalogue catalogue) => new(
        step.Finding is { } finding ? Words.Of(finding) : null, BoardMapping.ToRecord(step.Board, catalogue), step.Line, null, null, 0);
}
