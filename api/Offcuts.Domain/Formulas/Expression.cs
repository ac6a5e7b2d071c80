using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>A part of a formula.</summary>
internal abstract record Expression
{
    /// <summary>Its value.</summary>
    /// <param name="known">The values of names.</param>
    /// <param name="arithmetic">What operators do.</param>
    /// <exception cref="FormulaException">It has none.</exception>
    public abstract FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic);
}

/// <summary>A number as it was written, with or without a unit.</summary>
/// <param name="Text">As it was written.</param>
/// <param name="Written">Its value.</param>
/// <param name="IsFraction">Whether it is a fraction of two numbers without a whole one and without a unit.</param>
internal sealed partial record Literal(string Text, FormulaValue Written, bool IsFraction) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic) => Written;

    /// <summary>The number that the reader's pattern matched.</summary>
    public static Literal Of(Match match)
    {
        var text = match.Value.Trim();
        var hasUnit = LengthReading.UnitIn(text) is not null;
        // A number is read as so many inches, and taken as what it is of one.
        if (!LengthReading.TryRead(text, LengthUnit.Inch, out var reading, out var error))
        {
            throw new FormulaException(error.TrimEnd('.'));
        }

        var ticks = Ratio.Of(reading.Ticks, reading.Divisor);
        var isBroken = text.Contains('/', StringComparison.Ordinal);
        return hasUnit
            ? new(text, new(ticks, FormulaKind.Length), false)
            : new(text, new(ticks / Ratio.Of(Length.TicksPerInch), FormulaKind.Bare, isBroken), isBroken && !Mixed().IsMatch(text));
    }

    /// <summary>Whether a hyphen between this and the next number would elsewhere make one number of both.</summary>
    public bool MayBeJoinedWith(Literal next) =>
        (Whole().IsMatch(Text) && next.Text.Contains('/', StringComparison.Ordinal) && !Mixed().IsMatch(next.Text)) || (Feet().IsMatch(Text) && !Feet().IsMatch(next.Text));

    [GeneratedRegex("^[0-9]+ [0-9]+/", RegexOptions.CultureInvariant)]
    private static partial Regex Mixed();

    [GeneratedRegex("^[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Whole();

    [GeneratedRegex(@"(?:'|foot|feet|ft\.?)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Feet();
}

/// <summary>A parameter or another value with a name.</summary>
internal sealed record Named(string Name) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic) => known(Name);
}

/// <summary>What stands in parentheses.</summary>
internal sealed record Grouped(Expression Inner) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic) => Inner.Value(known, arithmetic);
}

/// <summary>Something below zero.</summary>
internal sealed record Negative(Expression Inner) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic) =>
        FormulaArithmetic.Negate(Inner.Value(known, arithmetic));
}

/// <summary>A sum, difference, product or quotient.</summary>
internal sealed record Operation(char Sign, Expression Left, Expression Right) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic)
    {
        var (left, right) = (Left.Value(known, arithmetic), Right.Value(known, arithmetic));
        return FormulaArithmetic.Bounded(Sign switch
        {
            '+' => arithmetic.Add(left, right),
            '-' => arithmetic.Add(left, FormulaArithmetic.Negate(right)),
            '*' => FormulaArithmetic.Multiply(left, right),
            _ => FormulaArithmetic.Divide(left, right),
        });
    }
}

/// <summary>A function of values.</summary>
internal sealed record Call(string Function, IReadOnlyList<Expression> Given) : Expression
{
    public override FormulaValue Value(Func<string, FormulaValue> known, FormulaArithmetic arithmetic) =>
        FormulaArithmetic.Bounded(arithmetic.Call(Function, [.. Given.Select(each => each.Value(known, arithmetic))]));
}
