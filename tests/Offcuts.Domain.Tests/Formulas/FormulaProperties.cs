using System.Data;
using System.Globalization;
using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

// Random formulas against two outsiders: decimal arithmetic on the same tree, and the expressions of System.Data.DataColumn.
public class FormulaProperties
{
    private static readonly Dictionary<string, FormulaValue> Nothing = [];

    [Fact]
    public void A_number_is_what_decimal_arithmetic_gives() => Trees(4).Sample(tree =>
    {
        if (tree.Value is not { } expected)
        {
            return;
        }

        Assert.True(Formula.TryParse(tree.Text, DisplayUnit.Inch, out var formula, out var fault), fault);
        Assert.True(formula.TryValue(Nothing, out var value, out var error), error);
        var found = (double)value.Amount.Numerator / (double)value.Amount.Denominator;
        Assert.True(Math.Abs(found - (double)expected) <= 1e-9 * Math.Max(1, Math.Abs(found)), $"{tree.Text} = {found}, not {expected}");
    }, iter: 5_000);

    [Fact]
    public void A_number_is_what_a_general_expression_library_gives() => Trees(4).Where(tree => !tree.HasFunction && tree.Value is not null).Sample(tree =>
    {
        using var table = new DataTable { Locale = CultureInfo.InvariantCulture };
        var expected = Convert.ToDouble(table.Compute(tree.Decimal, ""), CultureInfo.InvariantCulture);
        Assert.True(Formula.TryParse(tree.Text, DisplayUnit.Inch, out var formula, out var fault), fault);
        Assert.True(formula.TryValue(Nothing, out var value, out var error), error);
        var found = (double)value.Amount.Numerator / (double)value.Amount.Denominator;
        Assert.True(Math.Abs(found - expected) <= 1e-6 * Math.Max(1, Math.Abs(found)), $"{tree.Text} = {found}, not {expected}");
    }, iter: 2_000);

    // Laws that no rounding keeps: the evaluator is exact.
    [Fact]
    public void Lengths_obey_the_laws_of_arithmetic_exactly() => Gen.Select(Gen.Long[1, 100_000], Gen.Long[1, 100_000], Gen.Int[1, 97], Gen.Int[1, 97]).Sample((a, b, m, n) =>
    {
        var known = new Dictionary<string, FormulaValue>
        {
            ["a"] = FormulaValue.Of(Length.FromTicks(a)),
            ["b"] = FormulaValue.Of(Length.FromTicks(b)),
            ["m"] = FormulaValue.Of(m),
            ["n"] = FormulaValue.Of(n),
        };
        Same("(a + b) * m", "a * m + m * b");
        Same("a / n * n", "a");
        Same("(a / m + b / n) * m * n", "a * n + b * m");
        Same("a - b", "-(b - a)");
        Same("min(a, b) + max(a, b)", "a + b");
        Same("a / b * b", "a");
        Same("ceil(a / m, 1/64in)", "-floor(-a / m, 1/64in)");
        Same("floor(a, b) + (a - floor(a, b))", "a");
        Assert.InRange((double)Value("(a - floor(a, b)) / b").Amount.Numerator, 0, double.MaxValue);
        Assert.True(Value("a - floor(a, b)").Amount < Value("b").Amount);
        Assert.True(Value("max(round(a, b) - a, a - round(a, b)) * 2").Amount <= Value("b").Amount);

        void Same(string one, string other) => Assert.Equal(Value(one), Value(other));

        FormulaValue Value(string text)
        {
            Assert.True(Formula.TryParse(text, DisplayUnit.Inch, out var formula, out var fault), fault);
            Assert.True(formula.TryValue(known, out var value, out var error), error);
            return value;
        }
    }, iter: 1_000);

    [Fact]
    public void Whatever_is_written_is_a_formula_or_a_fault() =>
        OneOf("top", "n", " ", "-", "+", "*", "/", "(", ")", ",", "min", "round", "1/2", "36", "3'", "4\"", "in", "mm", "..", "½", "0", ".5", "9999999999", "x", "=", "é")
            .Array[0, 14].Select(string.Concat).Sample(text =>
            {
                var known = new Dictionary<string, FormulaValue> { ["top"] = FormulaValue.Of(Length.FromInches(30)), ["n"] = FormulaValue.Of(3) };
                if (!Formula.TryParse(text, DisplayUnit.Inch, out var formula, out var error))
                {
                    return error.Length > 0;
                }

                return (formula.TryLength(known, out var length, out error) ? length > Length.Zero : error!.Length > 0)
                    && (formula.TryCount(known, 100, out var count, out error) ? count is >= 0 and <= 100 : error!.Length > 0)
                    && (formula.TryValue(known, out _, out error) || error.Length > 0);
            }, iter: 20_000);

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static Gen<Tree> Trees(int depth)
    {
        var number = Gen.OneOf(
            Gen.Int[0, 60].Select(n => Tree.Leaf(n.ToString(CultureInfo.InvariantCulture), n, $"{n}.0")),
            Gen.Int[1, 999].Select(n => Tree.Leaf($"{n / 100m:0.00}".ToString(CultureInfo.InvariantCulture), n / 100m, $"{n / 100m:0.00}")),
            Gen.Select(Gen.Int[0, 40], Gen.Int[1, 15]).Select((w, n) => Tree.Leaf($"{w} {n}/16", w + (n / 16m), $"({w}.0 + {n}.0 / 16.0)")));
        if (depth == 0)
        {
            return number;
        }

        var below = Trees(depth - 1);
        return Gen.OneOf(
            number,
            Gen.Select(below, below, OneOf('+', '-', '*', '/')).Select(Tree.Of),
            Gen.Select(below, below, OneOf("min", "max")).Select((a, b, f) =>
                new Tree($"{f}({a.Text}, {b.Text})", f == "min" ? Least(a.Value, b.Value) : -Least(-a.Value, -b.Value), "", true)),
            Gen.Select(below, OneOf("floor", "ceil", "round")).Select((a, f) => new Tree($"{f}({a.Text})", Rounded(f, a.Value), "", true)));

        static decimal? Least(decimal? a, decimal? b) => a is { } x && b is { } y ? Math.Min(x, y) : null;
    }

    // Near a step the last digit of a decimal decides, and a decimal is not exact: no verdict there.
    private static decimal? Rounded(string function, decimal? value)
    {
        if (value is not { } known)
        {
            return null;
        }

        var nearest = Math.Round(known * 2) / 2;
        return nearest != known && Math.Abs(known - nearest) < 1e-12m ? null
            : function switch { "floor" => Math.Floor(known), "ceil" => Math.Ceiling(known), _ => Math.Floor(known + 0.5m) };
    }

    private sealed record Tree(string Text, decimal? Value, string Decimal, bool HasFunction)
    {
        public static Tree Leaf(string text, decimal value, string asDecimal) => new(text, value, asDecimal, false);

        public static Tree Of(Tree a, Tree b, char sign) => new(
            $"({a.Text}) {sign} ({b.Text})", Result(a.Value, b.Value, sign), $"({a.Decimal} {sign} {b.Decimal})", a.HasFunction || b.HasFunction);

        private static decimal? Result(decimal? a, decimal? b, char sign)
        {
            if (a is not { } x || b is not { } y || (sign == '/' && Math.Abs(y) < 0.001m))
            {
                return null;
            }

            var value = sign switch { '+' => x + y, '-' => x - y, '*' => x * y, _ => x / y };
            return Math.Abs(value) < 100_000m ? value : null;
        }
    }
}
