using System.CommandLine;
using System.Reflection;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Commands.Demo;
using Offcuts.Cli.Commands.Designs;
using Offcuts.Cli.Commands.Find;
using Offcuts.Cli.Commands.Fits;
using Offcuts.Cli.Commands.Journal;
using Offcuts.Cli.Commands.Keeping;
using Offcuts.Cli.Commands.Offers;
using Offcuts.Cli.Commands.Places;
using Offcuts.Cli.Commands.Plans;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Commands.Queue;
using Offcuts.Cli.Commands.Reports;
using Offcuts.Cli.Commands.Shop;
using Offcuts.Cli.Commands.Species;
using Offcuts.Cli.Commands.StockTakes;
using Offcuts.Cli.Help;

namespace Offcuts.Cli.Commands;

/// <summary>The tree of commands, and how one is run.</summary>
internal static class CommandLine
{
    private static readonly ParserConfiguration Parsing = new() { ResponseFileTokenReplacer = null };

    /// <summary>All commands.</summary>
    public static RootCommand Tree()
    {
        var root = new RootCommand("Plans cuts from the boards and offcuts that a shop has, buying as little as possible.");
        root.Options.Clear();
        root.Directives.Clear();
        foreach (var option in Globals.All)
        {
            root.Add(option);
        }

        Verb[] verbs =
        [
            BoardsCommand.Create(), FindCommand.Create(), PlacesCommand.Create(), StockTakeCommand.Create(), SpeciesCommand.Create(), DesignsCommand.Create(), PricesCommand.Create(), OffersCommand.Create(),
            ShopCommand.Create(), KeepCommand.Create(), KeepRuleCommand.Create(), CullCommand.Create(), FitCommand.Create(), PlanCommand.Create(), PlansCommand.Create(), QueueCommand.Create(), StretchCommand.Create(), FillCommand.Create(), JournalCommand.Create(), ReportsCommand.Create(), DemoCommand.Create(), StatusCommand.Create(), ServeCommand.Create(),
            CompletionCommand.Create(), CompletionCommand.CreateAnswer(), HelpCommand.Create(),
        ];
        foreach (var verb in verbs)
        {
            root.Add(verb);
        }

        return root;
    }

    /// <summary>Runs one command line and returns the exit code.</summary>
    public static async Task<int> RunAsync(string[] args, Terminal terminal, Signals signals)
    {
        var parsed = Tree().Parse(args, Parsing);
        var command = parsed.CommandResult.Command;
        if (parsed.GetValue(Globals.Help))
        {
            HelpText.Write(command, terminal, terminal.Out);
            return ExitCode.Ok;
        }

        if (parsed.GetValue(Globals.Version))
        {
            terminal.Out.WriteLine(Version());
            return ExitCode.Ok;
        }

        var json = args.TakeWhile(arg => arg != "--").Contains("--json");
        if (command is not Verb { Work: { } work } && parsed.UnmatchedTokens.Count == 0 && !json)
        {
            HelpText.Write(command, terminal, terminal.Err);
            return ExitCode.Usage;
        }

        if (ParseFaults.Explain(parsed, args) is { } wrong)
        {
            return FaultReport.Tell(new Fault("usage", wrong), terminal, json);
        }

        if (command is not Verb { Work: { } asked })
        {
            return FaultReport.Tell(new Fault("usage", $"'{HelpText.PathOf(command)}' needs a verb. See '{HelpText.PathOf(command)} --help'."), terminal, json);
        }

        return await RunAsync(asked, parsed, terminal, signals, json);
    }

    private static async Task<int> RunAsync(Func<Run, Task<int>> work, ParseResult parsed, Terminal terminal, Signals signals, bool json)
    {
        string? noStore = null;
        try
        {
            await using var run = new Run(parsed, terminal, signals);
            var code = await Work(run);
            await terminal.Out.FlushAsync(CancellationToken.None);
            if (noStore is not null)
            {
                run.Say(noStore);
            }

            return code;
        }
        catch (IOException) when (IsClosed(terminal))
        {
            return ExitCode.Ok;
        }
#pragma warning disable CA1031 // The last place that can tell the user: nothing is swallowed, an unknown fault is written to a file.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            var fault = FaultReport.Of(failure, signals, parsed.CommandResult.Command);
            return FaultReport.Tell(fault is { Code: "not-found" } && noStore is not null ? fault with { Message = $"{fault.Message} {noStore}" } : fault, terminal, json);
        }

        async Task<int> Work(Run run)
        {
            try
            {
                return await work(run);
            }
            finally
            {
                noStore = run.NoStore;
            }
        }
    }

    // A reader that left (head, a pager that was quit) is no fault; any other broken file is.
    private static bool IsClosed(Terminal terminal)
    {
        try
        {
            terminal.Out.Flush();
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }

    /// <summary>Version of this program.</summary>
    public static string Version() =>
        typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
