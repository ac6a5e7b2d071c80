using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class MoneyTextTests
{
    // ISO 4217, list one: minor units.
    [Theory]
    [InlineData("USD", 2, "12.40 USD")]
    [InlineData("EUR", 2, "12.40 EUR")]
    [InlineData("JPY", 0, "1240 JPY")]
    [InlineData("KWD", 3, "1.240 KWD")]
    public void Prints_the_currencys_digits(string currency, int digits, string printed)
    {
        Assert.Equal(digits, MoneyText.MinorDigits(currency));
        Assert.Equal(printed, MoneyText.Format(new Money(1240), currency));
    }

    [Theory]
    [InlineData("12.40", 1240)]
    [InlineData("12.4 USD", 1240)]
    [InlineData(" 12usd ", 1200)]
    [InlineData("0", 0)]
    [InlineData("12.400", 1240)]
    [InlineData(".5", 50)]
    public void Reads_amounts(string text, long minorUnits)
    {
        Assert.True(MoneyText.TryParse(text, "USD", out var amount, out _));
        Assert.Equal(minorUnits, amount.MinorUnits);
    }

    [Theory]
    [InlineData(null, "No amount")]
    [InlineData("12,40", "comma")]
    [InlineData("1,240.50", "comma")]
    [InlineData("-1", "negative")]
    [InlineData("12.405", "finer")]
    [InlineData("12 EUR", "not an amount in USD")]
    [InlineData("1e3", "not an amount")]
    [InlineData("10000000000.01", "largest")]
    [InlineData("99999999999999999999999999999999999999999", "not an amount")]
    public void Says_what_is_wrong(string? text, string saying)
    {
        Assert.False(MoneyText.TryParse(text, "USD", out var amount, out var error));
        Assert.Equal(Money.Zero, amount);
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_printed_is_read_as_the_same_amount() =>
        Gen.Long[0, MoneyText.MaxMinorUnits].Select(Gen.Int[0, 2].Select(index => new[] { "USD", "JPY", "KWD" }[index])).Sample((minorUnits, currency) =>
            MoneyText.TryParse(MoneyText.Format(new Money(minorUnits), currency), currency, out var amount, out _) && amount.MinorUnits == minorUnits);

    [Fact]
    public void No_text_makes_the_reader_throw() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,-+ USD"], 0, 40]).Sample(text =>
            MoneyText.TryParse(text, "USD", out _, out var error) == (error is null));

    [Theory]
    [InlineData("USD", true)]
    [InlineData("usd", false)]
    [InlineData("US", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void Knows_the_form_of_a_currency_code(string? text, bool expected) => Assert.Equal(expected, MoneyText.IsCurrencyCode(text));
}
