using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Plans;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Demo;

/// <summary><c>offcuts demo</c>.</summary>
internal static class DemoCommand
{
    private const string Planned = "hall-bench";
    private static readonly Option<string> Keep = new("--keep") { Description = "Folder for the demo's store, which must be new or empty; a temporary one if left out", HelpName = "FOLDER" };

    public static Verb Create() => new Verb(
        "demo",
        "Load a small shop into a store of its own and plan a bench from its leftovers; your own store is not touched",
        "offcuts demo", "offcuts demo --keep ./demo-shop")
        .With(Keep).Begins().Does(DemoAsync);

    private static async Task<int> DemoAsync(Run run)
    {
        var folder = Folder(run.Get(Keep));
        run.UseStore(ConnectionChoice.Make(null, folder, _ => null));
        var api = await run.ConnectAsync();
        await LoadAsync(run, api);
        var record = await PlanRunner.RunAsync(run, api, new PlanRequest(Planned));
        var code = await PlanAnswer.GiveAsync(run, api, record, Path.Combine(folder, $"{Planned}.html"));
        run.Say($"Go on with this shop: offcuts boards list --data {folder}");
        return code;
    }

    // A folder with something in it may be somebody's store.
    private static string Folder(string? keep)
    {
        if (keep is null)
        {
            return Directory.CreateTempSubdirectory("offcuts-demo-").FullName;
        }

        return Directory.Exists(keep) && Directory.EnumerateFileSystemEntries(keep).Any()
            ? throw CliException.Usage($"--keep {keep}: the folder is not empty. Give a new one.")
            : Directory.CreateDirectory(keep).FullName;
    }

    private static async Task LoadAsync(Run run, IOffcutsApi api)
    {
        var names = typeof(DemoCommand).Assembly.GetManifestResourceNames().Order(StringComparer.Ordinal).ToList();
        using var rack = Documents.Of(Text("demo/boards.yaml"), "boards.yaml");
        var boards = await api.ImportBoardDocumentAsync(rack, cancellationToken: run.Cancellation);
        var lists = names.Where(name => name.StartsWith("demo/prices-", StringComparison.Ordinal)).ToList();
        foreach (var name in lists)
        {
            var text = Text(name);
            using var list = Documents.Of(text, name);
            await api.ReplacePriceListAsync(SupplierName.In(text)!, list, run.Cancellation);
        }

        var designs = names.Where(name => name.StartsWith("demo/designs/", StringComparison.Ordinal)).ToList();
        foreach (var name in designs)
        {
            using var design = Documents.Of(Text(name), name);
            await api.StoreDesignAsync(design, run.Cancellation);
        }

        run.Say(string.Create(
            CultureInfo.InvariantCulture,
            $"Loaded a rack of {boards.Items.Sum(board => board.Quantity)} boards, {lists.Count} price lists and {designs.Count} designs; planning {Planned}."));
    }

    private static string Text(string name)
    {
        using var stream = typeof(DemoCommand).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The demo's {name} is not in this program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
