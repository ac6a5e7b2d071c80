using Xunit;

namespace Offcuts.Domain.Tests;

public class AgeReadingTests
{
    private static readonly DateOnly Today = new(2026, 3, 31);

    [Theory]
    [InlineData("2y", "2024-03-31")]
    [InlineData("1 year", "2025-03-31")]
    [InlineData(" 3 YEARS ", "2023-03-31")]
    // February has no 31st.
    [InlineData("1 month", "2026-02-28")]
    [InlineData("18mo", "2024-09-30")]
    [InlineData("6 weeks", "2026-02-17")]
    [InlineData("90d", "2025-12-31")]
    [InlineData("0 days", "2026-03-31")]
    public void An_age_is_counted_back_from_today(string text, string since)
    {
        Assert.True(AgeReading.TryParse(text, Today, out var read, out var error), error);
        Assert.Equal(DateOnly.ParseExact(since, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), read);
    }

    // What is read is never more than what a list of boards to let go may be asked for.
    [Theory]
    [InlineData("100 years")]
    [InlineData("1200 months")]
    [InlineData("36500 days")]
    public void The_greatest_age_is_a_hundred_years_however_it_is_written(string text)
    {
        Assert.True(AgeReading.TryParse(text, Today, out var since, out _));
        Assert.Equal(AgeReading.MostDays, Today.DayNumber - since.DayNumber);
    }

    [Theory]
    [InlineData("")]
    [InlineData("old")]
    [InlineData("2")]
    // Minutes, months or metres?
    [InlineData("2m")]
    [InlineData("-1y")]
    [InlineData("1.5y")]
    [InlineData("200 years")]
    [InlineData("101 years")]
    [InlineData("36501 days")]
    [InlineData("999999 days")]
    [InlineData("9999999 days")]
    public void What_is_no_age_is_refused_with_the_way_to_mend_it(string text)
    {
        Assert.False(AgeReading.TryParse(text, Today, out _, out var error));
        Assert.Contains("give", error, StringComparison.Ordinal);
    }
}
