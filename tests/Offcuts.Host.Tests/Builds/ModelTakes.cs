using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

// The stock-takes of the day: each of its steps against the model.
internal sealed partial class ModelDay
{
    private static readonly string?[] Places = ["rack 1", "rack 2", null];

    private readonly List<ModelTake> takes = [];
    private readonly Dictionary<int, (ModelTake Take, IReadOnlyList<string> Ids)> takeLines = [];
    private readonly Dictionary<int, int> undoneBy = [];

    // What is unseen in the service is so in the model: of what lies there, all that neither was noted nor is told by a line that stands.
    private async Task CompareTakesAsync()
    {
        foreach (var take in takes)
        {
            var told = await service.GetAsync(Path(take));
            Assert.Equal(take.IsOpen, told.GetProperty("finishedAt").ValueKind == JsonValueKind.Null);
            Assert.Equal(
                Unseen(take).Select(board => board.Id).Order(StringComparer.Ordinal),
                told.GetProperty("unseen").EnumerateArray().Select(board => board.GetProperty("id").GetString()!).Order(StringComparer.Ordinal));
            Assert.Equal(
                Seen(take).Order(StringComparer.Ordinal),
                told.GetProperty("seen").EnumerateArray().Select(board => board.GetProperty("boardId").GetString()!).Order(StringComparer.Ordinal));
        }
    }

    private async Task StartTakeAsync(int detail)
    {
        var place = Places[detail % 2]!;
        var open = takes.Find(take => take.IsOpen && take.Place == place);
        var started = await Service.ReadAsync(
            await service.SendAsync("POST", "/v1/stock-takes", JsonSerializer.Serialize(new { place, newPlace = true })), open is null ? HttpStatusCode.Created : HttpStatusCode.OK);
        var number = started.GetProperty("number").GetInt64();
        Assert.Equal(open?.Number ?? takes.Count + 1, number);
        if (open is null)
        {
            takes.Add(new ModelTake(number, place));
        }
    }

    private Task StepAsync(int detail)
    {
        // Mostly of one that is open.
        if (Pick([.. takes.Where(take => take.IsOpen || detail % 7 == 0)], detail) is not { } take)
        {
            return StartTakeAsync(detail);
        }

        var board = Pick([.. boards.Values], detail / 3);
        return (detail % 4, board) switch
        {
            (0, { } known) => ConfirmAsync(take, known),
            (1, { } known) => StrikeAsync(take, known),
            (2, { } known) => CorrectAsync(take, known, detail / 12),
            _ => AddAsync(take),
        };
    }

    private async Task ConfirmAsync(ModelTake take, ModelBoard board)
    {
        var isFine = take.IsOpen && board.Status != "used";
        Expect(isFine, await StepAsync(take, $$"""{"confirm":"{{board.Id}}"}"""));
        if (!isFine)
        {
            return;
        }

        if (board.IsThere && board.Place == take.Place)
        {
            take.Noted.Add(board.Id);
            return;
        }

        boards[board.Id] = (board with { Place = take.Place, Status = board.Status == "gone" ? "free" : board.Status }).HeldBy(board.Holders);
        TakeLine(take, board.Id);
    }

    private async Task StrikeAsync(ModelTake take, ModelBoard board)
    {
        var isFine = take.IsOpen && board.IsThere && board.Place == take.Place && board.Holders.Count == 0;
        Expect(isFine, await StepAsync(take, $$"""{"strike":"{{board.Id}}"}"""));
        if (isFine)
        {
            boards[board.Id] = board with { Status = "gone" };
            TakeLine(take, board.Id);
        }
    }

    private async Task CorrectAsync(ModelTake take, ModelBoard board, int detail)
    {
        var (length, quantity) = (1000 + (detail % 4 * 300), 1 + (detail / 4 % 3));
        var wood = ModelBoard.WoodOf(25.4m, 150, length);
        var isFine = take.IsOpen && board.Status != "used" && (board.Holders.Count == 0 || (wood == board.Wood && quantity >= board.Holders.Count));
        // It names no place, so it lies where it was found.
        Expect(isFine, await StepAsync(take, $$"""{"correct":{"id":"{{board.Id}}","board":{{Entry(length, quantity, null)}}} }"""));
        if (isFine)
        {
            boards[board.Id] = (board with { Quantity = quantity, Wood = wood, Status = "free", Place = take.Place }).HeldBy(board.Holders);
            TakeLine(take, board.Id);
        }
    }

    private async Task AddAsync(ModelTake take)
    {
        var answer = await StepAsync(take, """{"line":"25.4mm x 150mm x 1000mm white ash"}""");
        Expect(take.IsOpen, answer);
        if (take.IsOpen)
        {
            var id = (await Service.ReadAsync(answer, HttpStatusCode.OK)).GetProperty("board").GetProperty("id").GetString()!;
            boards.Add(id, new(id, 1, "free", ModelBoard.WoodOf(25.4m, 150, 1000), take.Place));
            TakeLine(take, id);
        }
    }

    private async Task FinishTakeAsync(int detail)
    {
        if (Pick([.. takes.Where(take => take.IsOpen || detail % 7 == 0)], detail) is not { } take)
        {
            return;
        }

        var how = new[] { null, "strike", "leave" }[detail / 7 % 3];
        var unseen = Unseen(take);
        var isFine = take.IsOpen && (unseen.Count == 0 || how == "leave" || (how == "strike" && unseen.TrueForAll(board => board.Holders.Count == 0)));
        Expect(isFine, await service.SendAsync("POST", $"{Path(take)}/finish", JsonSerializer.Serialize(new { unseen = how })));
        if (!isFine)
        {
            return;
        }

        take.IsOpen = false;
        if (how == "strike" && unseen.Count > 0)
        {
            foreach (var board in unseen)
            {
                boards[board.Id] = board with { Status = "gone" };
            }

            TakeLine(take, [.. unseen.Select(board => board.Id)]);
        }
        else
        {
            take.Noted.UnionWith(unseen.Select(board => board.Id));
        }
    }

    private List<ModelBoard> Unseen(ModelTake take)
    {
        var seen = Seen(take);
        return !take.IsOpen ? [] : [.. boards.Values.Where(board => board.IsThere && board.Place == take.Place && !seen.Contains(board.Id))];
    }

    private HashSet<string> Seen(ModelTake take) =>
        [.. take.Noted, .. takeLines.Where(line => line.Value.Take == take && Stands(line.Key)).SelectMany(line => line.Value.Ids)];

    private bool Stands(int line) => !undoneBy.TryGetValue(line, out var later) || !Stands(later);

    private void TakeLine(ModelTake take, params string[] ids)
    {
        takeLines.Add(lines.Count + 1, (take, ids));
        Line(null, ids);
    }

    private Task<HttpResponseMessage> StepAsync(ModelTake take, string step) => service.SendAsync("POST", $"{Path(take)}/steps", step);

    private static string Path(ModelTake take) => string.Create(CultureInfo.InvariantCulture, $"/v1/stock-takes/{take.Number}");
}
