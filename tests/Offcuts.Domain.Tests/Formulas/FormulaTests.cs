using Xunit;

namespace Offcuts.Domain.Tests;

public class FormulaTests
{
    private static readonly Dictionary<string, FormulaValue> Known = new(StringComparer.Ordinal)
    {
        ["top"] = FormulaValue.Of(Length.FromInches(42)),
        ["n"] = FormulaValue.Of(5),
        ["gap"] = FormulaValue.Of(Length.FromMillimetres(60)),
    };

    // By hand.
    [Theory]
    [InlineData("top", "42in")]
    [InlineData("top - 6in", "36in")]
    [InlineData("top - 6", "36in")]
    [InlineData("top-6", "36in")]
    [InlineData("2 * 3", "6in")]
    [InlineData("36 1/2", "36 1/2in")]
    [InlineData("top - 36 1/2", "5 1/2in")]
    [InlineData("top * 3/4", "31 1/2in")]
    [InlineData("3/4 * top", "31 1/2in")]
    [InlineData("top / 4", "10 1/2in")]
    [InlineData("(top - 2 * 3in) / 3", "12in")]
    [InlineData("top - n * 1in", "37in")]
    [InlineData("3' 4\" + 2ft", "64in")]
    [InlineData("3ft 4 1/2in", "40 1/2in")]
    [InlineData("min(top, 36)", "36in")]
    [InlineData("max(top, 36, 50in)", "50in")]
    [InlineData("round(top / 32, 1/16in)", "1 5/16in")]
    [InlineData("floor(top / 4, 1)", "10in")]
    [InlineData("ceil(top / 4, 1)", "11in")]
    [InlineData("round(10.5in, 1in)", "11in")]
    [InlineData("gap * 2 + 1.2cm", "132mm")]
    [InlineData("-(6in - top)", "36in")]
    [InlineData("top / gap * 25mm", "444.5mm")]
    [InlineData("½ * top", "21in")]
    public void A_length_is_as_worked_out_by_hand(string formula, string length)
    {
        Assert.True(Read(formula, DisplayUnit.Inch).TryLength(Known, out var found, out var error), error);
        Assert.Equal(LengthText.Parse(length, DisplayUnit.Inch), found);
    }

    // Twenty values that each are the one before times itself would have a million digits.
    [Fact]
    public void Values_that_build_on_each_other_keep_to_so_many_digits()
    {
        var known = new Dictionary<string, FormulaValue>(StringComparer.Ordinal) { ["a"] = new(Ratio.Of(2, 3), FormulaKind.Number) };
        string? error = null;
        for (var step = 0; step < 20 && error is null; step++)
        {
            known["a"] = Read("a * a", DisplayUnit.Inch).TryValue(known, out var value, out error) ? value : known["a"];
        }

        Assert.Contains("too many digits: round a value on the way", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("n", 5)]
    [InlineData("2 * n + 1", 11)]
    [InlineData("floor(top / 9in)", 4)]
    [InlineData("ceil(top / 9in)", 5)]
    [InlineData("round(top / 9in)", 5)]
    [InlineData("ceil(top / (2 1/4in + gap))", 10)]
    [InlineData("max(0, n - 7)", 0)]
    [InlineData("floor(n, 2)", 4)]
    [InlineData("top / 7in", 6)]
    public void A_count_is_as_worked_out_by_hand(string formula, int count)
    {
        Assert.True(Read(formula, DisplayUnit.Inch).TryCount(Known, 100, out var found, out var error), error);
        Assert.Equal(count, found);
    }

    [Theory]
    [InlineData("top * top", "an area")]
    [InlineData("2 / top", "a number by a length")]
    [InlineData("top - n", "a length and a number")]
    [InlineData("n", "a number, where a length is needed")]
    [InlineData("top / gap", "a number, where a length is needed")]
    [InlineData("min(n, top)", "a length and a number")]
    [InlineData("top - 50in", "-8\"")]
    [InlineData("top - top", "0\"")]
    [InlineData("top * 1000", "at most 100 m")]
    [InlineData("top / (n - 5)", "divides by zero")]
    [InlineData("topp - 1in", "did you mean top?")]
    [InlineData("round(top)", "needs the step")]
    [InlineData("round(top, 0)", "above zero")]
    public void A_length_that_cannot_be_is_a_fault_that_says_why(string formula, string why)
    {
        Assert.False(Read(formula, DisplayUnit.Inch).TryLength(Known, out _, out var error));
        Assert.Contains(why, error, StringComparison.Ordinal);
        Assert.StartsWith($"'{formula}': ", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("top", "a length, where a number of pieces is needed")]
    [InlineData("n / 2", "5/2, where a whole number")]
    [InlineData("n - 6", "-1: give 0 to 100")]
    [InlineData("n * 30", "150: give 0 to 100")]
    public void A_count_that_cannot_be_is_a_fault_that_says_why(string formula, string why)
    {
        Assert.False(Read(formula, DisplayUnit.Inch).TryCount(Known, 100, out _, out var error));
        Assert.Contains(why, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("top -", "missing at its end")]
    [InlineData("(top", "not closed")]
    [InlineData("top 2", "'2' is not understood")]
    [InlineData("top & n", "'& n' is not understood")]
    [InlineData("sqrt(n)", "no function 'sqrt'")]
    [InlineData("min", "min(a, b)")]
    [InlineData("36 - 1/2", "36 1/2")]
    [InlineData("top + 36 - 1/2", "36 1/2")]
    [InlineData("3' - 4\"", "parenthes|'3' 4\"'")]
    [InlineData("top / 3/4", "/ (3/4)")]
    [InlineData("2 1 / 2", "'1 / 2' is not understood")]
    [InlineData("3 5/4 * n", "fraction that is not one")]
    [InlineData("1/0", "fraction that is not one")]
    [InlineData("", "No formula")]
    public void What_is_no_formula_or_could_mean_two_things_is_refused(string text, string why)
    {
        Assert.False(Formula.TryParse(text, DisplayUnit.Inch, out _, out var error));
        Assert.Contains(why.Split('|'), each => error.Contains(each, StringComparison.Ordinal));
    }

    [Fact]
    public void A_bare_fraction_needs_a_unit_where_bare_numbers_are_metric()
    {
        Assert.False(Read("top - 3/4", DisplayUnit.Millimetre).TryLength(Known, out _, out var error));
        Assert.Contains("metric", error, StringComparison.Ordinal);
        Assert.True(Read("top * 3/4", DisplayUnit.Millimetre).TryLength(Known, out var length, out _));
        Assert.Equal(Length.FromInches(31, 1, 2), length);
        Assert.True(Read("top - 66.8", DisplayUnit.Millimetre).TryLength(Known, out length, out _));
        Assert.Equal(1000m, length.Millimetres);
    }

    [Fact]
    public void A_length_is_the_nearest_tick()
    {
        Assert.True(Read("top / 7 / 9", DisplayUnit.Inch).TryLength(Known, out var length, out _));
        Assert.Equal((long)Math.Round(42m * 8128 / 63), length.Ticks);
    }

    private static Formula Read(string text, DisplayUnit unit)
    {
        Assert.True(Formula.TryParse(text, unit, out var formula, out var error), error);
        return formula;
    }
}
