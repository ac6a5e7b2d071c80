using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Prices;

/// <summary>Money as people read it.</summary>
internal static class Price
{
    /// <summary>An amount of the wire with its currency: <c>12.40 USD</c>.</summary>
    public static string Of(decimal amount, string currency) =>
        MoneyText.TryFromDecimal(amount, currency, out var money, out _)
            ? MoneyText.Format(money, currency)
            : string.Create(CultureInfo.InvariantCulture, $"{amount} {currency}");
}
