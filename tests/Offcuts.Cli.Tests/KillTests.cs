using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;

namespace Offcuts.Cli.Tests;

// The real server is killed (SIGKILL) while it closes boards and imports: what it acknowledged is there, and nothing is half there.
public sealed class KillTests
{
    private const int Lanes = 3;
    private const int KillsInALane = 17;
    private const int Rails = 120;
    private const int Imported = 25;

    [Fact]
    public async Task Whatever_is_acknowledged_survives_a_kill_and_nothing_is_half_there()
    {
        using var prepared = new Program();
        var plan = await PrepareAsync(prepared);
        await Task.WhenAll(Enumerable.Range(1, Lanes).Select(seed => KillAsync(seed, prepared.Store, plan)));
    }

    // Each lane has a store of its own, which begins as the one that was prepared.
    private static async Task KillAsync(int seed, string prepared, string plan)
    {
        using var offcuts = new Program();
        Directory.CreateDirectory(Path.GetDirectoryName(offcuts.Store)!);
        File.Copy(prepared, offcuts.Store);
        var random = new Random(seed);
        var lane = new Lane(plan);
        for (var kill = 0; kill < KillsInALane; kill++)
        {
            var (server, address) = await offcuts.ServeAsync();
            using var killed = server;
            using var client = new HttpClient { BaseAddress = new Uri(address) };
            await lane.CompareAsync(client);
            var changing = lane.ChangeUntilKilledAsync(client, imports: kill % 3 == 2);
            // Some die in their first change, most in a later one, however slow the machine is.
            var before = lane.Changes;
            var patience = Stopwatch.StartNew();
            while (kill % 4 != 0 && lane.Changes == before && patience.Elapsed < TimeSpan.FromSeconds(20))
            {
                await Task.Delay(1);
            }

            await Task.Delay(random.Next(1, 40));
            server.Kill();
            await changing;
            await server.WaitForExitAsync();
        }

        var (last, where) = await offcuts.ServeAsync();
        using var ended = last;
        using var looking = new HttpClient { BaseAddress = new Uri(where) };
        await lane.CompareAsync(looking);
        last.Kill();
        Assert.True(lane.Changes > KillsInALane / 2, $"Only {lane.Changes} changes were acknowledged.");
    }

    // A plan that cuts many boards alike, accepted.
    private static async Task<string> PrepareAsync(Program offcuts)
    {
        await offcuts.RunAsync("boards", "add", "1 x 5 x 40", "--species", "white-ash", "--quantity", Rails.ToString(CultureInfo.InvariantCulture));
        var design = string.Create(CultureInfo.InvariantCulture, $"{{name: Rails, unit: in, parts: [{{name: Rail, quantity: {Rails}, size: 3/4 x 4 x 24, species: white-ash}}]}}");
        using var plan = JsonDocument.Parse((await offcuts.RunAsync(["plan", "-", "--budget", "5s", "--json"], design, null)).Out);
        Assert.Equal(Rails, plan.RootElement.GetProperty("plan").GetProperty("boards").GetArrayLength());
        Assert.Equal(0, (await offcuts.RunAsync("plans", "accept", "last")).Code);
        return plan.RootElement.GetProperty("id").GetString()!;
    }

    // What one server after another was asked for and has acknowledged.
    private sealed class Lane(string plan)
    {
        private readonly HashSet<string> imported = [];
        private int acknowledged;
        private int? underWay;
        private string? batchUnderWay;
        private int batches;

        public int Changes => Volatile.Read(ref acknowledged) + imported.Count;

        // Sends one change after another until it is cut off.
        public async Task ChangeUntilKilledAsync(HttpClient client, bool imports)
        {
            try
            {
                while (true)
                {
                    // One board stays, so that what it is held by can be looked at.
                    await (imports || acknowledged >= Rails - 2 ? ImportAsync(client) : CloseAsync(client));
                }
            }
            catch (HttpRequestException fault) when (fault.StatusCode is null)
            {
                // Cut off, not refused.
            }
        }

        // What is there is what was acknowledged, with or without the whole of the one that was under way.
        public async Task CompareAsync(HttpClient client)
        {
            var check = await client.GetFromJsonAsync<JsonElement>("/v1/journal/check");
            Assert.True(check.GetProperty("agrees").GetBoolean(), check.GetRawText());
            var boards = (await client.GetFromJsonAsync<JsonElement>($"/v1/plans/{plan}")).GetProperty("build").GetProperty("boards").EnumerateArray().ToList();
            var cut = boards.Where(board => board.GetProperty("state").GetString() == "cut").Select(board => board.GetProperty("number").GetInt32()).ToList();
            Assert.Equal(Enumerable.Range(1, cut.Count), cut);
            Assert.InRange(cut.Count, acknowledged, underWay ?? acknowledged);
            acknowledged = cut.Count;
            underWay = null;

            var stored = await BoardsAsync(client);
            var leftovers = stored.Where(board => board.GetProperty("origin").ValueKind == JsonValueKind.Object).Select(board => board.GetProperty("id").GetString()).ToList();
            Assert.Equal(
                boards.SelectMany(board => board.GetProperty("leftovers") is { ValueKind: JsonValueKind.Array } left ? left.EnumerateArray().Select(id => id.GetString()) : []).Order(),
                leftovers.Order());
            Assert.Equal(acknowledged, leftovers.Count);
            var rails = stored.Single(board => board.GetProperty("lengthMm").GetDecimal() == 1016m);
            Assert.Equal((Rails - acknowledged, Rails - acknowledged), (rails.GetProperty("quantity").GetInt32(), rails.GetProperty("holds").GetArrayLength()));

            var counted = stored.Where(board => board.GetProperty("batch").ValueKind == JsonValueKind.String).CountBy(board => board.GetProperty("batch").GetString()!).ToDictionary();
            Assert.All(counted.Values, count => Assert.Equal(Imported, count));
            Assert.Superset(imported, counted.Keys.ToHashSet());
            var added = counted.Keys.Except(imported).ToList();
            Assert.True(added.Count == 0 || added is [var one] && one == batchUnderWay, string.Join(", ", added));
            imported.UnionWith(added);
            batchUnderWay = null;
        }

        private async Task CloseAsync(HttpClient client)
        {
            underWay = acknowledged + 1;
            using var answer = await client.PostAsJsonAsync($"/v1/plans/{plan}/closings", new { boards = new[] { new { number = underWay } } });
            answer.EnsureSuccessStatusCode();
            acknowledged++;
            underWay = null;
        }

        private async Task ImportAsync(HttpClient client)
        {
            batchUnderWay = string.Create(CultureInfo.InvariantCulture, $"load {++batches}");
            var board = new { species = "cherry", thicknessMm = 25.4, widthMm = 100, lengthMm = 600, batch = batchUnderWay };
            using var answer = await client.PostAsJsonAsync("/v1/board-imports", new { items = Enumerable.Repeat(board, Imported) });
            answer.EnsureSuccessStatusCode();
            imported.Add(batchUnderWay);
            batchUnderWay = null;
        }

        private static async Task<List<JsonElement>> BoardsAsync(HttpClient client)
        {
            var all = new List<JsonElement>();
            string? cursor = null;
            do
            {
                var page = await client.GetFromJsonAsync<JsonElement>($"/v1/boards?limit=500{(cursor is null ? "" : $"&cursor={cursor}")}");
                all.AddRange(page.GetProperty("items").EnumerateArray());
                cursor = page.GetProperty("next").GetString();
            }
            while (cursor is not null);
            return all;
        }
    }
}
