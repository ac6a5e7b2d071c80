using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Money as people write it: a decimal number and the currency's code, <c>12.40 USD</c>.</summary>
public static class MoneyText
{
    /// <summary>The largest amount read, in minor units: far below where sums over a plan could overflow.</summary>
    public const long MaxMinorUnits = 1_000_000_000_000;

    // ISO 4217, list one: currencies in use whose minor unit is not two decimal digits (from memory, 2024).
    private static readonly HashSet<string> WithoutDigits =
        [.. "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF".Split(' ')];

    private static readonly HashSet<string> WithThreeDigits = [.. "BHD IQD JOD KWD LYD OMR TND".Split(' ')];

    /// <summary>How many decimal digits the currency's minor unit stands for: 2 unless ISO 4217 says otherwise.</summary>
    public static int MinorDigits(string currency) =>
        WithoutDigits.Contains(currency) ? 0 : WithThreeDigits.Contains(currency) ? 3 : 2;

    /// <summary>Whether the text has the form of an ISO 4217 code: three capital letters.</summary>
    public static bool IsCurrencyCode(string? text) => text is { Length: 3 } && text.All(char.IsAsciiLetterUpper);

    /// <summary>The amount as a decimal number of the currency, for instance 12.40.</summary>
    public static decimal ToDecimal(Money amount, string currency) => amount.MinorUnits * Unit(currency);

    /// <summary>The amount with its currency: <c>12.40 USD</c>, <c>1240 JPY</c>.</summary>
    public static string Format(Money amount, string currency) => string.Create(
        CultureInfo.InvariantCulture, $"{ToDecimal(amount, currency)} {currency}");

    /// <summary>Reads an amount, with or without the currency's code behind it; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="currency">The shop's currency; another code is an error.</param>
    /// <param name="amount">The amount; zero if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, string currency, out Money amount, [NotNullWhen(false)] out string? error)
    {
        amount = default;
        var written = (text ?? "").Trim();
        var number = written.EndsWith(currency, StringComparison.OrdinalIgnoreCase) ? written[..^currency.Length].TrimEnd() : written;
        if (!decimal.TryParse(number, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value))
        {
            error = WhyNot(written, currency);
            return false;
        }

        return TryFromDecimal(value, currency, out amount, out error);
    }

    /// <summary>The amount of a decimal number of the currency, if it is whole minor units, not negative and not absurdly large.</summary>
    public static bool TryFromDecimal(decimal value, string currency, out Money amount, [NotNullWhen(false)] out string? error)
    {
        amount = default;
        var digits = MinorDigits(currency);
        error = value < 0 ? string.Create(CultureInfo.InvariantCulture, $"{value} is negative: give a price of zero or more.")
            : value > MaxMinorUnits * Unit(currency) ? string.Create(CultureInfo.InvariantCulture, $"{value} is more than {Format(new(MaxMinorUnits), currency)}, the largest amount that is kept.")
            : value != decimal.Round(value, digits) ? string.Create(CultureInfo.InvariantCulture, $"{value} is finer than the currency: {currency} has {digits} decimal digits.")
            : null;
        if (error is not null)
        {
            return false;
        }

        amount = new Money((long)(value / Unit(currency)));
        return true;
    }

    private static decimal Unit(string currency) => new(1, 0, 0, isNegative: false, (byte)MinorDigits(currency));

    private static string WhyNot(string written, string currency) =>
        written.Length == 0 ? $"No amount is given. Write for instance 12.40 or 12.40 {currency}."
        : written.Contains(',', StringComparison.Ordinal) ? $"{LengthText.Quote(written)} has a comma: write a decimal point and no marks between thousands, for instance 1240.50."
        : $"{LengthText.Quote(written)} is not an amount in {currency}. Write for instance 12.40 or 12.40 {currency}.";
}
