using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Reads the text of a formula: <c>top - 2 * (3in + 1/4)</c>.</summary>
/// <remarks>
/// Where a sign could mean two things the formula is refused. Elsewhere <c>36 - 1/2</c> is 36 1/2 and <c>3'-4"</c> is 40 in; here a hyphen takes
/// away, so such a pair needs parentheses. So does <c>a / 1/2</c>, since 1/2 is one number.
/// </remarks>
internal sealed partial class FormulaReader
{
    /// <summary>The functions that there are.</summary>
    public static readonly IReadOnlyList<string> Functions = ["min", "max", "floor", "ceil", "round"];

    private readonly string text;
    private readonly List<string> names = [];
    private int at;

    private FormulaReader(string text) => this.text = text;

    /// <summary>What the text says, and the names in it.</summary>
    /// <exception cref="FormulaException">It is no formula.</exception>
    public static (Expression Root, IReadOnlyList<string> Names) Read(string plain)
    {
        var reader = new FormulaReader(plain);
        var root = reader.Sum();
        reader.SkipBlanks();
        return reader.at == plain.Length
            ? (root, reader.names)
            : throw new FormulaException($"{LengthText.Quote(plain[reader.at..])} is not understood there");
    }

    private Expression Sum()
    {
        var last = Product();
        var left = last;
        while (Taken('+', '-') is { } sign)
        {
            var right = Product();
            if (sign == '-' && last is Literal a && right is Literal b && a.MayBeJoinedWith(b))
            {
                throw new FormulaException(
                    $"'{a.Text} - {b.Text}' could mean {a.Text} and {b.Text} or take {b.Text} away: write '{a.Text} {b.Text}', or '({a.Text}) - {b.Text}'");
            }

            (left, last) = (new Operation(sign, left, right), right);
        }

        return left;
    }

    private Expression Product()
    {
        var left = Signed();
        while (Taken('*', '/') is { } sign)
        {
            var right = Signed();
            if (sign == '/' && right is Literal { IsFraction: true } fraction)
            {
                throw new FormulaException($"'/ {fraction.Text}' could divide once or twice: write '/ ({fraction.Text})', or divide by one number");
            }

            left = new Operation(sign, left, right);
        }

        return left;
    }

    private Expression Signed() => Taken('-', '-') is null ? Single() : new Negative(Signed());

    private Expression Single()
    {
        SkipBlanks();
        if (Taken('(', '(') is not null)
        {
            var inner = Sum();
            Close();
            return new Grouped(inner);
        }

        if (Number().Match(text, at) is { Success: true } number)
        {
            at += number.Length;
            return Literal.Of(number);
        }

        if (Word().Match(text, at) is not { Success: true } word)
        {
            throw new FormulaException(at == text.Length ? "something is missing at its end" : $"{LengthText.Quote(text[at..])} is not understood there");
        }

        at += word.Length;
        if (!Functions.Contains(word.Value))
        {
            if (Taken('(', '(') is not null)
            {
                throw new FormulaException($"there is no function {LengthText.Quote(word.Value)}: use {string.Join(", ", Functions)}");
            }

            names.Add(word.Value);
            return new Named(word.Value);
        }

        return Taken('(', '(') is null ? throw new FormulaException($"after {word.Value} comes a parenthesis: {word.Value}(a, b)") : Call(word.Value);
    }

    private Call Call(string function)
    {
        var given = new List<Expression> { Sum() };
        while (Taken(',', ',') is not null)
        {
            given.Add(Sum());
        }

        Close();
        return new Call(function, given);
    }

    private void Close()
    {
        if (Taken(')', ')') is null)
        {
            throw new FormulaException("a parenthesis is not closed");
        }
    }

    private char? Taken(char one, char other)
    {
        SkipBlanks();
        return at < text.Length && (text[at] == one || text[at] == other) ? text[at++] : null;
    }

    private void SkipBlanks()
    {
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }
    }

    // As lengths are written, but for hyphens and for blanks in fractions, which are divisions; a unit is one only where no longer word begins.
    private const string Amount = @"(?:(?:[0-9]+ )?[0-9]+/[0-9]+|[0-9]*\.[0-9]+|[0-9]+)";
    private const string End = "(?![A-Za-z0-9_])";

    [GeneratedRegex(
        $"""\G(?:{Amount} ?(?:'|(?:foot|feet|ft){End}\.?)(?: ?{Amount}(?: ?(?:"|(?:inches|inch|in){End}\.?))?)?|{Amount}(?: ?(?<unit>"|(?:inches|inch|in|mm|cm|m){End}\.?))?)""",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Number();

    [GeneratedRegex(@"\G[A-Za-z_][A-Za-z0-9_]*", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
