using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>All that is stored of one board. The journal keeps the same as JSON.</summary>
/// <param name="Row">Its row.</param>
/// <param name="Defects">Its defects in their order.</param>
internal sealed record BoardState(BoardRow Row, IReadOnlyList<DefectRow> Defects)
{
    public static BoardState Of(Board board, long sequence) =>
        new(BoardRow.Of(board, sequence), [.. board.Defects.Select((defect, ordinal) => DefectRow.Of(defect, sequence, ordinal))]);

    public static BoardState Read(string json) => JsonSerializer.Deserialize(json, StateJson.Default.BoardState)
        ?? throw new OffcutsException(ErrorCode.DataIntegrity, "The journal holds an empty state of a board.");

    public Board ToBoard() => Row.ToBoard(Defects);

    public string ToJson() => JsonSerializer.Serialize(this, StateJson.Default.BoardState);
}

/// <summary>JSON of states in the journal. What a later version adds to a row is missing in older lines and takes its default.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(BoardState))]
internal sealed partial class StateJson : JsonSerializerContext;
