using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Fits;

/// <summary>The places of a ranking as a table whose rows are written as they come, so that its columns are as wide as anything in them may be.</summary>
/// <param name="terminal">Where to write.</param>
/// <param name="currency">The shop's currency.</param>
/// <param name="widest">The longest reference of a design.</param>
internal sealed class FitView(Terminal terminal, string currency, int widest)
{
    private const int CostWidth = 14;
    private bool hasBegun;

    /// <summary>A table for the designs of the store.</summary>
    public static async Task<FitView> CreateAsync(Run run, IOffcutsApi api)
    {
        var designs = await Paging.AllAsync<DesignSummary>(async cursor =>
        {
            var page = await api.ListDesignsAsync(new PageQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        return new FitView(run.Terminal, (await run.ShopAsync()).Currency, designs.Select(design => design.Reference.Length).DefaultIfEmpty(0).Max());
    }

    /// <summary>Writes a row, the heading before the first.</summary>
    public void Write(FitRecord item)
    {
        if (!hasBegun)
        {
            hasBegun = true;
            Write(terminal.Bold(Line("", "DESIGN", "STILL TO SPEND", "FROM STOCK", "EATS", "LACKS")));
        }

        Write(Line(
            string.Create(CultureInfo.InvariantCulture, $"{item.Place}{(item.Sure ? "." : "?")}"), item.Design, Price.Of(item.Cost, currency),
            string.Create(CultureInfo.InvariantCulture, $"{decimal.Round(item.ShareFromStock * 100)} %"), Price.Of(item.Eaten, currency), item.Lacks));
    }

    private string Line(string place, string design, string cost, string share, string eaten, string lacks)
    {
        var line = $"{place,4}  {SafeText.Of(design).PadRight(Math.Max(widest, 6))}  {cost,CostWidth}  {share,10}  {eaten,CostWidth}  {SafeText.Of(lacks)}";
        return line.Length <= terminal.Width ? line : string.Concat(line.AsSpan(0, terminal.Width - 1), "…");
    }

    // At once: the next row may take a while.
    private void Write(string line)
    {
        terminal.Out.WriteLine(line);
        terminal.Out.Flush();
    }
}
