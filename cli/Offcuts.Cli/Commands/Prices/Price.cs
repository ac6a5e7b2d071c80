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

    /// <summary>An amount that an option gives, as it goes over the wire.</summary>
    /// <exception cref="CliException">It is none.</exception>
    public static decimal Read(string option, string given, string currency) => MoneyText.TryParse(given, currency, out var money, out var error)
        ? MoneyText.ToDecimal(money, currency)
        : throw CliException.Usage($"{option}: {error}");
}
