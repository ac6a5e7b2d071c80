using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.StockTakes;

/// <summary>The stock-take that a step belongs to.</summary>
internal static class OpenTake
{
    /// <summary>Tells it from others that are open.</summary>
    public static readonly Option<string> Place = new("--place") { Description = "The place, where several stock-takes are open", HelpName = "PLACE" };

    /// <summary>The one that is open, or of several the one of the place that was named.</summary>
    /// <exception cref="CliException">None is open, or several are and no place was named.</exception>
    public static async Task<StockTakeRecord> FindAsync(Run run, IOffcutsApi api)
    {
        var open = await Paging.AllAsync<StockTakeSummary>(async cursor =>
        {
            var page = await api.ListStockTakesAsync(new StockTakeQuery { State = "open", Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        var place = run.Get(Place);
        return open.Where(take => place is null || take.Place == place).ToList() switch
        {
            [var only] => await api.GetStockTakeAsync(only.Number, run.Cancellation),
            [] when place is not null => throw new CliException("not-found", $"No stock-take of '{place}' is open. Begin one with 'offcuts stocktake start \"{place}\"'."),
            [] => throw new CliException("not-found", "No stock-take is open. Begin one with 'offcuts stocktake start PLACE'."),
            var several => throw CliException.Usage($"Several stock-takes are open: name the place with --place ({string.Join(", ", several.Select(take => take.Place))})."),
        };
    }
}
