using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Designs;

/// <summary><c>offcuts designs</c>.</summary>
internal static class DesignsCommand
{
    private static readonly Argument<string> File = Documents.Argument("A design");
    private static readonly Argument<string> Design = new("DESIGN") { Description = "Its reference, or the id of a version" };
    private static readonly Option<bool> Yes = new("--yes", "-y") { Description = "Do not ask" };

    public static Verb Create() => new Verb(
        "designs", "Designs: what is to be built, in finished sizes", "offcuts designs add hall-bench.yaml", "offcuts designs list")
        .With(
            new Verb("list", "List the designs in the store", "offcuts designs list", "offcuts designs list --json").Does(ListAsync),
            new Verb("add", "Store a design; changed content becomes a new version", "offcuts designs add hall-bench.yaml", "offcuts designs add - --json")
                .With(File).Begins().Does(AddAsync),
            new Verb("show", "Show a design's parts", "offcuts designs show hall-bench", "offcuts designs show hall-bench --json").With(Design).Does(ShowAsync),
            new Verb("versions", "List the versions of a design, newest first", "offcuts designs versions hall-bench").With(Design).Does(VersionsAsync),
            new Verb("remove", "Forget a design with all its versions; plans keep theirs", "offcuts designs remove hall-bench --yes")
                .With(Design, Yes).Does(RemoveAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var designs = await Paging.AllAsync<DesignSummary>(async cursor =>
        {
            var page = await api.ListDesignsAsync(new PageQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        Write(designs, run);
        return ExitCode.Ok;
    }

    private static async Task<int> AddAsync(Run run)
    {
        var api = await run.ConnectAsync();
        using var document = await Documents.ReadAsync(run, run.Get(File));
        var stored = await api.StoreDesignAsync(document, run.Cancellation);
        DefectNotes.Say(run, stored.Design);
        if (run.Json)
        {
            run.WriteJson(stored, ClientJson.Default.DesignRecord);
            return ExitCode.Ok;
        }

        run.Terminal.Out.WriteLine(SafeText.Of(stored.Reference));
        run.Say($"Stored '{stored.Design.Name}', version {stored.Version}. Plan it with 'offcuts plan {stored.Reference}'.");
        return ExitCode.Ok;
    }

    private static async Task<int> ShowAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var design = await api.GetDesignAsync(run.Get(Design), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(design, ClientJson.Default.DesignRecord);
        }
        else
        {
            DesignView.Write(design, await api.ListSpeciesAsync(run.Cancellation), await run.ShopAsync(), await run.UnitAsync(), run.Terminal);
        }

        return ExitCode.Ok;
    }

    private static async Task<int> VersionsAsync(Run run)
    {
        var page = await (await run.ConnectAsync()).ListDesignVersionsAsync(run.Get(Design), run.Cancellation);
        Write(page.Items, run);
        return ExitCode.Ok;
    }

    private static async Task<int> RemoveAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var design = await api.GetDesignAsync(run.Get(Design), run.Cancellation);
        if (!run.Confirm($"Remove the design '{design.Design.Name}' with all its versions?", Yes))
        {
            run.Say("Nothing was removed.");
            return ExitCode.Failed;
        }

        await api.DeleteDesignAsync(design.Reference, run.Cancellation);
        return ExitCode.Ok;
    }

    private static void Write(IReadOnlyList<DesignSummary> designs, Run run)
    {
        if (run.Json)
        {
            run.WriteJson(new DesignPage(designs, null), ClientJson.Default.DesignPage);
            return;
        }

        if (designs.Count == 0)
        {
            run.Say("There are no designs yet. Add one with 'offcuts designs add FILE'.");
            return;
        }

        var table = new Table("DESIGN", "NAME", "VERSION", "CURRENT", "STORED", ">PARTS", ">PANELS", ">ITEMS");
        foreach (var design in designs)
        {
            table.Add(
                design.Reference, design.Name, design.Version, design.Current ? "yes" : "",
                design.CreatedAt.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Count(design.Parts), Count(design.Panels), Count(design.Items));
        }

        table.Write(run.Terminal);
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
