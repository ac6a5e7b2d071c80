using System.Globalization;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

// One board of the model, or several alike. Who holds it is one text, so that boards compare by value.
internal sealed record ModelBoard(string Id, int Quantity, string Status, string Wood, string? Place, string Holds = "")
{
    public IReadOnlyList<string> Holders => Holds.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    public bool IsThere => Status is "free" or "reserved";

    public int Free => Status == "free" ? Quantity - Holders.Count : 0;

    public ModelBoard HeldBy(IEnumerable<string> holders)
    {
        var sorted = holders.Order(StringComparer.Ordinal).ToList();
        var wasHeld = Holders.Count > 0;
        return this with
        {
            Holds = string.Join(' ', sorted),
            Status = sorted.Count == Quantity ? "reserved" : wasHeld || sorted.Count > 0 ? "free" : Status,
        };
    }

    public ModelBoard Cut(string holder) => Quantity == 1
        ? this with { Status = "used", Holds = "" }
        : (this with { Quantity = Quantity - 1 }).HeldBy(Holders.Where(other => other != holder));

    public static ModelBoard Of(JsonElement board) => new(
        board.GetProperty("id").GetString()!, board.GetProperty("quantity").GetInt32(), board.GetProperty("status").GetString()!,
        WoodOf(Number(board, "thicknessMm"), Number(board, "widthMm"), Number(board, "lengthMm"), board.GetProperty("ends")),
        board.GetProperty("place").GetString(),
        string.Join(' ', HoldsOf(board).Order(StringComparer.Ordinal)));

    // What decides whether a plan made for the one can be cut from the other, as far as the model has it.
    public static string WoodOf(decimal thickness, decimal width, decimal length, JsonElement? ends = null)
    {
        var state = ends is { ValueKind: JsonValueKind.Object } said ? $"{said.GetProperty("left").GetString()} {said.GetProperty("right").GetString()}" : "unknown unknown";
        return string.Create(CultureInfo.InvariantCulture, $"{thickness:0.######}x{width:0.######}x{length:0.######} {state}");
    }

    public static decimal Number(JsonElement of, string member) => of.GetProperty(member).GetDecimal();

    private static IEnumerable<string> HoldsOf(JsonElement board) => board.GetProperty("holds") is { ValueKind: JsonValueKind.Array } holds
        ? holds.EnumerateArray().Select(hold => ModelPlan.Holder(hold.GetProperty("planId").GetString()!, hold.GetProperty("number").GetInt32()))
        : [];
}

// How far a plan's build is. Since is the line by which it was accepted first, Closed has each cut board with the line that says so.
internal sealed record ModelBuild(bool IsAccepted, bool IsOpen, long Since, string Closed)
{
    public static ModelBuild None { get; } = new(false, false, 0, "");

    public IReadOnlyList<int> Cut => [.. Closed.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(each => int.Parse(each.Split('@')[0], CultureInfo.InvariantCulture))];

    public string State(int boards) => !IsAccepted ? "" : Cut.Count == boards ? "built" : !IsOpen ? "stopped" : Cut.Count > 0 ? "under-way" : "accepted";
}

// A plan as the service gave it, with the wood of its boards when it was made.
internal sealed record ModelPlan(JsonElement Answer, IReadOnlyDictionary<string, string> Wood)
{
    public string Id => Shop.Id(Answer);

    public IReadOnlyList<(int Number, string? BoardId, JsonElement Cut)> Boards { get; } =
        [.. Shop.Boards(Answer).Select(board => (board.GetProperty("number").GetInt32(), board.GetProperty("boardId").GetString(), board))];

    public static string Holder(string plan, int number) => string.Create(CultureInfo.InvariantCulture, $"{plan}/{number}");
}

// The stock and the builds after a line of the journal, and what the line touched.
internal sealed record ModelLine(
    IReadOnlyDictionary<string, ModelBoard> Boards, IReadOnlyDictionary<string, ModelBuild> Builds, IReadOnlyList<string> Touched, string? Plan);

// A stock-take. What it saw without a change is here; what it changed is told by lines.
internal sealed class ModelTake(long number, string place)
{
    public long Number => number;

    public string Place => place;

    public bool IsOpen { get; set; } = true;

    public HashSet<string> Noted { get; } = new(StringComparer.Ordinal);
}
