using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

// Does to the service and to the model the same, and compares.
internal sealed partial class ModelDay(Service service)
{
    // Of so many kinds of steps one is chosen by the rest of a number, and what it is about by the quotient.
    private const int Kinds = 21;

    private readonly Shop shop = new(service);
    private readonly List<ModelLine> lines = [];
    private readonly HashSet<int> undone = [];
    private readonly List<ModelPlan> plans = [];
    private readonly Dictionary<string, ModelBoard> boards = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ModelBuild> builds = new(StringComparer.Ordinal);

    public Task DoAsync(int choice)
    {
        var detail = choice / Kinds;
        return (choice % Kinds) switch
        {
            0 or 1 => LogAsync(detail),
            2 => EditAsync(detail),
            3 => DeleteAsync(detail),
            4 or 5 or 6 => PlanAsync(detail),
            7 or 8 or 9 => AcceptAsync(detail),
            10 => ReleaseAsync(detail),
            11 or 12 => CloseAsync(detail),
            13 or 14 => UndoAsync(detail),
            15 => StartTakeAsync(detail),
            16 or 17 or 18 => StepAsync(detail),
            19 => FinishTakeAsync(detail),
            _ => RestartAsync(),
        };
    }

    // After each step: the stock and who holds it, how far the builds are, balances, and a journal that makes the same stock.
    public async Task CompareAsync()
    {
        var stored = (await service.GetAsync("/v1/boards?limit=500")).GetProperty("items").EnumerateArray().Select(ModelBoard.Of).ToList();
        Assert.Equal(boards.Values.OrderBy(board => board.Id, StringComparer.Ordinal), stored.OrderBy(board => board.Id, StringComparer.Ordinal));
        Assert.Distinct(stored.SelectMany(board => board.Holders));
        Assert.All(stored, board => Assert.True(board.Holders.Count <= board.Quantity));
        foreach (var plan in plans)
        {
            var build = await shop.BuildAsync(plan.Answer);
            Assert.Equal(BuildOf(plan).State(plan.Boards.Count), build.ValueKind == JsonValueKind.Null ? "" : build.GetProperty("state").GetString());
            foreach (var board in build.ValueKind == JsonValueKind.Null ? [] : build.GetProperty("boards").EnumerateArray().Where(board => board.GetProperty("state").GetString() == "cut"))
            {
                Assert.Equal(0m, ModelBoard.Number(board.GetProperty("balance"), "differenceMm2"));
            }
        }

        await CompareTakesAsync();
        var check = await service.GetAsync("/v1/journal/check");
        Assert.True(check.GetProperty("agrees").GetBoolean(), check.GetRawText());
        Assert.Equal(lines.Count, check.GetProperty("lines").GetInt32());
    }

    private static string Entry(int length, int quantity, string? place) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""{"quantity":{{quantity}},"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":{{length}},"place":{{JsonSerializer.Serialize(place)}}}""");

    private async Task LogAsync(int detail)
    {
        var (length, quantity, place) = (1000 + (detail % 3 * 300), 1 + (detail / 3 % 3), Places[detail / 9 % Places.Length]);
        var logged = await Service.ReadAsync(await service.SendAsync("POST", "/v1/boards", Entry(length, quantity, place)), HttpStatusCode.Created);
        var id = logged.GetProperty("id").GetString()!;
        boards[id] = new(id, quantity, "free", ModelBoard.WoodOf(25.4m, 150, length), place);
        Line(null, id);
    }

    private async Task EditAsync(int detail)
    {
        if (Pick([.. boards.Values.Where(board => board.Status != "used")], detail) is not { } board)
        {
            return;
        }

        var (length, quantity) = (1000 + (detail % 4 * 300), 1 + (detail / 4 % 3));
        var wood = ModelBoard.WoodOf(25.4m, 150, length);
        var isFine = board.Holders.Count == 0 || (wood == board.Wood && quantity >= board.Holders.Count);
        Expect(isFine, await service.SendAsync("PUT", $"/v1/boards/{board.Id}", Entry(length, quantity, board.Place)));
        if (isFine)
        {
            boards[board.Id] = (board with { Quantity = quantity, Wood = wood, Status = "free" }).HeldBy(board.Holders);
            Line(null, board.Id);
        }
    }

    private async Task DeleteAsync(int detail)
    {
        if (Pick([.. boards.Values], detail) is not { } board)
        {
            return;
        }

        var isFine = board.Holders.Count == 0;
        Expect(isFine, await service.SendAsync("DELETE", $"/v1/boards/{board.Id}"));
        if (isFine)
        {
            boards.Remove(board.Id);
            Line(null, board.Id);
        }
    }

    private async Task PlanAsync(int detail)
    {
        var answer = await shop.PlanAsync(1 + (detail % 3), buying: detail / 3 % 2 == 0, length: 500 + (detail / 6 % 3 * 150));
        var used = Shop.Boards(answer).Select(board => board.GetProperty("boardId").GetString()).OfType<string>().ToLookup(id => id);
        // What other plans hold is not there for it.
        Assert.All(used, alike => Assert.True(alike.Count() <= boards[alike.Key].Free, $"The plan cuts {alike.Count()} of {boards[alike.Key]}."));
        plans.Add(new ModelPlan(answer, used.ToDictionary(alike => alike.Key, alike => boards[alike.Key].Wood)));
    }

    private async Task AcceptAsync(int detail)
    {
        if (Pick(plans, detail) is not { } plan)
        {
            return;
        }

        var build = BuildOf(plan);
        var wanted = plan.Boards.Where(board => board.BoardId is not null && !build.Cut.Contains(board.Number)).ToLookup(board => board.BoardId!, board => board.Number);
        var isFine = build.IsOpen || wanted.All(alike =>
            boards.TryGetValue(alike.Key, out var board) && board.Wood == plan.Wood[alike.Key] && board.Free >= alike.Count());
        Expect(isFine, await shop.AcceptAsync(plan.Answer));
        if (!isFine || build.IsOpen)
        {
            return;
        }

        foreach (var alike in wanted)
        {
            boards[alike.Key] = boards[alike.Key].HeldBy([.. boards[alike.Key].Holders, .. alike.Select(number => ModelPlan.Holder(plan.Id, number))]);
        }

        builds[plan.Id] = build.IsAccepted ? build with { IsOpen = true } : new(true, true, lines.Count + 1, "");
        Line(plan.Id, [.. wanted.Select(alike => alike.Key)]);
    }

    private async Task ReleaseAsync(int detail)
    {
        if (Pick(plans, detail) is not { } plan)
        {
            return;
        }

        var build = BuildOf(plan);
        var isFine = build.IsOpen && build.Cut.Count < plan.Boards.Count;
        Expect(isFine, await shop.ReleaseAsync(plan.Answer));
        if (!isFine)
        {
            return;
        }

        var held = boards.Values.Where(board => board.Holders.Any(IsMine)).ToList();
        foreach (var board in held)
        {
            boards[board.Id] = board.HeldBy(board.Holders.Where(holder => !IsMine(holder)));
        }

        builds[plan.Id] = build.Cut.Count == 0 ? ModelBuild.None : build with { IsOpen = false };
        Line(plan.Id, [.. held.Select(board => board.Id)]);

        bool IsMine(string holder) => holder.StartsWith(plan.Id, StringComparison.Ordinal);
    }

    private async Task CloseAsync(int detail)
    {
        // Mostly of a plan that has something to cut.
        if (Pick([.. plans.Where(plan => detail % 5 == 0 || BuildOf(plan).State(plan.Boards.Count) is "accepted" or "under-way")], detail) is not { } plan)
        {
            return;
        }

        var build = BuildOf(plan);
        var open = plan.Boards.Where(board => !build.Cut.Contains(board.Number)).ToList();
        var one = detail / 2 % 3 > 0 && open.Count > 0 ? open[detail % open.Count].Number : (int?)null;
        var strikes = one is not null && detail / 6 % 2 == 0 && Leftovers(open.Single(board => board.Number == one).Cut).Count > 0;
        var said = one is null ? "{}" : string.Create(
            CultureInfo.InvariantCulture, $$"""{"boards":[{"number":{{one}},"leftovers":[{{(strikes ? """{"leftover":1,"kept":false}""" : "")}}]}]}""");
        var answer = await shop.CloseAsync(plan.Answer, said);
        var isFine = build.IsOpen && open.Count > 0;
        Expect(isFine, answer);
        if (!isFine)
        {
            return;
        }

        var told = (await Service.ReadAsync(answer, HttpStatusCode.OK)).GetProperty("build").GetProperty("boards").EnumerateArray().ToList();
        var touched = new List<string>();
        foreach (var (number, id, cut) in open.Where(board => one is null || board.Number == one))
        {
            touched.AddRange(Cut(plan, number, id, cut, told[number - 1], strikes));
        }

        var closed = open.Where(board => one is null || board.Number == one).Select(board => string.Create(CultureInfo.InvariantCulture, $"{board.Number}@{lines.Count + 1}"));
        builds[plan.Id] = build with { Closed = string.Join(' ', closed.Prepend(build.Closed)).Trim() };
        Line(plan.Id, [.. touched]);
    }

    // What the model expects of one board, from the plan alone: only new ids are learned from the answer.
    private IEnumerable<string> Cut(ModelPlan plan, int number, string? id, JsonElement cut, JsonElement told, bool strikes)
    {
        var size = cut.GetProperty("size");
        if (id is null)
        {
            var bought = told.GetProperty("boardId").GetString()!;
            boards.Add(bought, new(bought, 1, "used", ModelBoard.WoodOf(ModelBoard.Number(size, "thicknessMm"), ModelBoard.Number(size, "widthMm"), ModelBoard.Number(size, "lengthMm")), null));
            yield return bought;
        }
        else
        {
            Assert.Equal(id, told.GetProperty("boardId").GetString());
            boards[id] = boards[id].Cut(ModelPlan.Holder(plan.Id, number));
            yield return id;
        }

        var kept = Leftovers(cut).Skip(strikes ? 1 : 0).ToList();
        var ids = told.GetProperty("leftovers").EnumerateArray().Select(left => left.GetString()!).ToList();
        Assert.Equal(kept.Count, ids.Count);
        foreach (var (leftover, left) in kept.Zip(ids))
        {
            boards.Add(left, new(left, 1, "free", ModelBoard.WoodOf(
                ModelBoard.Number(size, "thicknessMm"), ModelBoard.Number(leftover, "widthMm"), ModelBoard.Number(leftover, "lengthMm"), leftover.GetProperty("ends")), id is null ? null : boards[id].Place));
            yield return left;
        }
    }

    private async Task UndoAsync(int detail)
    {
        // Every other time the newest that stands, else any.
        var newest = Enumerable.Range(1, lines.Count).LastOrDefault(line => !undone.Contains(line));
        var number = detail % 2 == 0 ? newest : lines.Count == 0 ? 0 : 1 + (detail / 2 % lines.Count);
        if (number == 0)
        {
            return;
        }

        var line = lines[number - 1];
        var isFine = !undone.Contains(number)
            && line.Touched.All(id => boards.GetValueOrDefault(id) == line.Boards.GetValueOrDefault(id))
            && (line.Plan is null || builds.GetValueOrDefault(line.Plan, ModelBuild.None) == line.Builds.GetValueOrDefault(line.Plan, ModelBuild.None));
        Expect(isFine, await shop.UndoAsync(number));
        if (!isFine)
        {
            return;
        }

        var before = number == 1 ? null : lines[number - 2];
        foreach (var id in line.Touched)
        {
            if (before?.Boards.GetValueOrDefault(id) is { } was)
            {
                boards[id] = was;
            }
            else
            {
                boards.Remove(id);
            }
        }

        if (line.Plan is { } plan)
        {
            builds[plan] = before?.Builds.GetValueOrDefault(plan) ?? ModelBuild.None;
        }

        undone.Add(number);
        undoneBy.Add(number, lines.Count + 1);
        Line(line.Plan, [.. line.Touched]);
    }

    private async Task RestartAsync()
    {
        await service.StopAsync();
        await service.StartAsync();
    }

    private ModelBuild BuildOf(ModelPlan plan) => builds.GetValueOrDefault(plan.Id, ModelBuild.None);

    private void Line(string? plan, params string[] touched) => lines.Add(new(
        new Dictionary<string, ModelBoard>(boards, StringComparer.Ordinal), new Dictionary<string, ModelBuild>(builds, StringComparer.Ordinal), touched, plan));

    private static List<JsonElement> Leftovers(JsonElement cut) =>
        [.. cut.GetProperty("pieces").EnumerateArray().Where(piece => piece.GetProperty("kind").GetString() == "leftover")];

    private static T? Pick<T>(List<T> from, int detail)
        where T : class => from.Count == 0 ? null : from[detail % from.Count];

    private static void Expect(bool isFine, HttpResponseMessage answer)
    {
        var expected = isFine ? "success" : nameof(HttpStatusCode.Conflict);
        Assert.Equal(expected, answer.IsSuccessStatusCode ? "success" : answer.StatusCode.ToString());
    }
}
