using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Shop;

/// <summary><c>offcuts shop</c>.</summary>
internal static class ShopCommand
{
    public static Verb Create() => new Verb(
        "shop",
        "How the shop works: its unit, machines and what milling takes",
        "offcuts shop show",
        "offcuts shop set --unit inch --kerf 1/8 --planer-width 13")
        .With(
            new Verb("show", "Show every setting", "offcuts shop show", "offcuts shop show --json").Does(ShowAsync),
            Set.Create());

    private static async Task<int> ShowAsync(Run run)
    {
        var shop = await run.ShopAsync();
        if (run.Json)
        {
            run.WriteJson(shop, ClientJson.Default.ShopRecord);
        }
        else
        {
            ShopView.Write(shop, await run.UnitAsync(), run.Terminal);
        }

        return ExitCode.Ok;
    }
}
