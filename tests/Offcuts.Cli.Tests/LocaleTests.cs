namespace Offcuts.Cli.Tests;

public sealed class LocaleTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    // German writes decimals with a comma, Turkish has an i of its own without a dot.
    [Theory]
    [InlineData("de_DE.UTF-8")]
    [InlineData("tr_TR.UTF-8")]
    public async Task Output_is_the_same_in_every_locale(string locale)
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        string[] commands =
        [
            "boards list", "boards list --json", "boards list --species WALNUT", "offers list --kind SOLID", "offers list", "shop show", "species list",
            "designs show hall-bench", "plans list", "prices list", "boards add 3,2mm x 1 x 1 --species ash", "help lengths", "boards show III",
        ];
        foreach (var command in commands)
        {
            string[] args = [.. command.Split(' '), "--data", "shop"];

            var plain = await offcuts.RunAsync(args, null, In("C"));
            var local = await offcuts.RunAsync(args, null, In(locale));

            Assert.Equal(plain, local);
        }
    }

    private static Dictionary<string, string?> In(string locale) => new() { ["LANG"] = locale, ["LC_ALL"] = locale };
}
