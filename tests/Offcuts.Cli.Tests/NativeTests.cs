using System.Text.Json.Nodes;

namespace Offcuts.Cli.Tests;

// Native code makes no code at run time. The ordinary build can be forbidden to as well, so that this needs no native compiler:
// whatever would make code (System.Reflection.Emit, as Dapper does by itself) then fails.
public sealed class NativeTests : IDisposable
{
    private const string MakesCode = "System.Runtime.CompilerServices.RuntimeFeature.IsDynamicCodeSupported";
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Commands_work_where_no_code_can_be_made()
    {
        var settings = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "offcuts.runtimeconfig.json")))!;
        settings["runtimeOptions"]!["configProperties"]![MakesCode] = false;
        var file = Path.Combine(offcuts.Folder, "offcuts.runtimeconfig.json");
        await File.WriteAllTextAsync(file, settings.ToJsonString());
        string[] commands =
        [
            "demo --keep shop", "status", "boards list", "boards list --species cherry --min-length 30 --json", "boards show 6JY",
            "boards add 1x4x20 --species walnut", "boards edit 6JY --place attic", "boards remove 6JY --yes", "designs list", "designs show hall-bench",
            "offers list --kind solid", "prices list", "shop show", "shop set --kerf 3/32", "species list", "plan hall-bench --budget 1s", "plans list",
            "boards log 3 @ 3/4 x 5 1/2 x ~36 ash, rack 2", "boards export -o rack.csv", "boards import rack.csv", "boards labels -o labels.html",
            "journal list", "journal check", "help lengths",
        ];
        foreach (var command in commands)
        {
            using var process = offcuts.Start(
                Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet",
                ["exec", "--runtimeconfig", file, Path.Combine(AppContext.BaseDirectory, "offcuts.dll"), .. command.Split(' ')],
                new() { ["OFFCUTS_DATA"] = "shop" });
            process.StandardInput.Close();

            var outcome = await Program.FinishAsync(process);

            Assert.True(outcome.Code == 0, $"{command}: {outcome}");
        }
    }
}
