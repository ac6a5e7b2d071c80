using Offcuts.Cli.Commands.Prices;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What a supplier charges beyond the goods, as lines of a list.</summary>
internal static class ChargeLines
{
    /// <summary>Writes a line for each charge.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="indent">What stands before each line.</param>
    /// <param name="delivery">For bringing the goods.</param>
    /// <param name="topUp">What the order lacks of the minimum.</param>
    /// <param name="minimum">The minimum, where the order lacks of it.</param>
    /// <param name="currency">The shop's currency.</param>
    public static void Write(Terminal terminal, string indent, decimal delivery, decimal topUp, decimal minimum, string currency)
    {
        if (delivery > 0)
        {
            terminal.Out.WriteLine($"{indent}delivery: {Price.Of(delivery, currency)}");
        }

        if (topUp > 0)
        {
            terminal.Out.WriteLine($"{indent}up to the minimum order of {Price.Of(minimum, currency)}: {Price.Of(topUp, currency)}, paid all the same, so take more for it");
        }
    }
}
