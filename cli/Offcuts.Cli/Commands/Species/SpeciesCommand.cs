using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Species;

/// <summary><c>offcuts species</c>.</summary>
internal static class SpeciesCommand
{
    private static readonly Argument<string> Id = new("ID") { Description = "Lower-case words with hyphens, for instance osage-orange" };
    private static readonly Option<string> Name = new("--name") { Description = "The name people know", HelpName = "TEXT", Required = true };
    private static readonly Option<string[]> Aliases = new("--alias") { Description = "Another name by which it may be written; may be given again", HelpName = "TEXT" };
    private static readonly Option<string[]> Classes = new("--class") { Description = "A class it belongs to, for instance hardwood; may be given again", HelpName = "WORD" };
    private static readonly Option<decimal?> Gravity = new("--specific-gravity") { Description = "Specific gravity at 12 % moisture content", HelpName = "NUMBER", CustomParser = Values.Number };
    private static readonly Option<string> Source = new("--source") { Description = "Where the numbers are from", HelpName = "TEXT" };

    public static Verb Create() => new Verb(
        "species", "Species and sheet materials, the reference list and the shop's own", "offcuts species list")
        .With(
            new Verb("list", "List all species with their other names", "offcuts species list", "offcuts species list --json").Does(ListAsync),
            new Verb(
                "add", "Add a species of the shop's own",
                "offcuts species add osage-orange --name \"Osage orange\" --alias hedge --class hardwood")
                .With(Id, Name, Aliases, Classes, Gravity, Source).Begins().Does(AddAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var list = await (await run.ConnectAsync()).ListSpeciesAsync(run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(list, ClientJson.Default.SpeciesList);
            return ExitCode.Ok;
        }

        Write(list.Items, run);
        return ExitCode.Ok;
    }

    private static async Task<int> AddAsync(Run run)
    {
        var entry = new SpeciesEntry(run.Get(Id), run.Get(Name)!, run.Get(Aliases), run.Get(Classes), run.Get(Gravity), Source: run.Get(Source));
        var species = await (await run.ConnectAsync()).CreateSpeciesAsync(entry, run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(species, ClientJson.Default.SpeciesRecord);
        }
        else
        {
            Write([species], run);
        }

        return ExitCode.Ok;
    }

    private static void Write(IReadOnlyList<SpeciesRecord> list, Run run)
    {
        var table = new Table("ID", "NAME", ">GRAVITY", "CLASSES", "ALSO");
        foreach (var species in list)
        {
            table.Add(
                species.Id, species.Name, species.SpecificGravity?.ToString(CultureInfo.InvariantCulture),
                string.Join(", ", species.Classes), string.Join(", ", species.Aliases));
        }

        table.Write(run.Terminal);
    }
}
