using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>All that is stored of one board. The journal keeps the same as JSON.</summary>
/// <param name="Row">Its row.</param>
/// <param name="Defects">Its defects in their order.</param>
/// <param name="Holds">Who holds it; null for nobody, as in lines from before there were plans that hold boards.</param>
internal sealed record BoardState(
    BoardRow Row,
    IReadOnlyList<DefectRow> Defects,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<HoldRow>? Holds = null)
{
    public static BoardState Of(Board board, long sequence) => new(
        BoardRow.Of(board, sequence),
        [.. board.Defects.Select((defect, ordinal) => DefectRow.Of(defect, sequence, ordinal))],
        board.Holds.Count == 0 ? null : [.. board.Holds.Select((hold, index) =>
            new HoldRow { BoardSequence = sequence, Copy = index + 1, PlanId = hold.PlanId, Number = hold.Number })]);

    public static BoardState Read(string json) => JsonSerializer.Deserialize(json, StateJson.Default.BoardState)
        ?? throw new OffcutsException(ErrorCode.DataIntegrity, "The journal holds an empty state of a board.");

    public Board ToBoard() => Row.ToBoard(Defects, Holds ?? []);

    public string ToJson() => JsonSerializer.Serialize(this, StateJson.Default.BoardState);
}
