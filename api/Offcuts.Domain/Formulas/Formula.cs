using System.Diagnostics.CodeAnalysis;
using System.Numerics;

namespace Offcuts.Domain;

/// <summary>
/// A size or a quantity as plain arithmetic on named values: <c>top - 2 * 3in</c>, <c>ceil(width / 2 1/4in) + 1</c>. Evaluated without rounding; only
/// a length at the end is brought to whole ticks.
/// </summary>
public sealed class Formula
{
    /// <summary>Longest text, in characters.</summary>
    public const int MaxText = 200;

    private const long MostNumber = 1_000_000_000;

    private readonly Expression root;
    private readonly FormulaArithmetic arithmetic;
    private readonly DisplayUnit unit;

    private Formula(string text, Expression root, IReadOnlyList<string> names, DisplayUnit unit)
    {
        (Text, this.root, Names, this.unit) = (text, root, names, unit);
        arithmetic = new FormulaArithmetic(unit);
    }

    /// <summary>The formula as it was written, its signs plain.</summary>
    public string Text { get; }

    /// <summary>The names that it uses.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Reads a formula; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="unit">The unit of bare numbers, where lengths are needed.</param>
    /// <param name="formula">The formula; null if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, DisplayUnit unit, [NotNullWhen(true)] out Formula? formula, [NotNullWhen(false)] out string? error)
    {
        (formula, error) = (null, null);
        var plain = LengthSigns.Plain(text ?? "");
        if (plain.Length is 0 or > MaxText)
        {
            error = plain.Length == 0 ? "No formula is given. Write for instance top - 6in." : $"A formula has at most {MaxText} characters: give parts of it names of their own.";
            return false;
        }

        try
        {
            var (root, names) = FormulaReader.Read(plain);
            formula = new Formula(plain, root, [.. names.Distinct(StringComparer.Ordinal)], unit);
            return true;
        }
        catch (FormulaException fault)
        {
            error = $"{LengthText.Quote(plain)}: {fault.Message}.";
            return false;
        }
    }

    /// <summary>The value, exact; a length up to 100 m, a number up to a thousand million, or as far below zero; never throws.</summary>
    /// <param name="known">The values of names.</param>
    /// <param name="value">The value.</param>
    /// <param name="error">Why there is none; null if there is.</param>
    public bool TryValue(IReadOnlyDictionary<string, FormulaValue> known, out FormulaValue value, [NotNullWhen(false)] out string? error) =>
        Try(known, Sound, out value, out error);

    /// <summary>The value as a length above zero and at most 100 m, the nearest whole tick of it; never throws.</summary>
    public bool TryLength(IReadOnlyDictionary<string, FormulaValue> known, out Length length, [NotNullWhen(false)] out string? error) =>
        Try(known, ToLength, out length, out error);

    /// <summary>The value as a count, whole and at least zero; never throws.</summary>
    public bool TryCount(IReadOnlyDictionary<string, FormulaValue> known, int most, out int count, [NotNullWhen(false)] out string? error) =>
        Try(known, value => ToCount(value, most), out count, out error);

    private bool Try<T>(IReadOnlyDictionary<string, FormulaValue> known, Func<FormulaValue, T> taken, out T found, [NotNullWhen(false)] out string? error)
    {
        (found, error) = (default!, null);
        try
        {
            found = taken(root.Value(
                name => known.TryGetValue(name, out var value) ? value : throw new FormulaException(Unknown(name, known.Keys)), arithmetic));
            return true;
        }
        catch (FormulaException fault)
        {
            error = $"{LengthText.Quote(Text)}: {fault.Message}.";
            return false;
        }
    }

    private static FormulaValue Sound(FormulaValue value)
    {
        var most = Ratio.Of(value.Kind == FormulaKind.Length ? Length.MaxTicks : MostNumber);
        return value.Amount <= most && value.Amount >= -most ? value
            : throw new FormulaException(value.Kind == FormulaKind.Length ? "it gives more than 100 m" : "it gives more than a thousand million");
    }

    private Length ToLength(FormulaValue value)
    {
        var ticks = arithmetic.Ticks(value).Nearest();
        return ticks > BigInteger.Zero && ticks <= Length.MaxTicks ? Length.FromTicks((long)ticks)
            : throw new FormulaException($"it gives {Shown(new(Ratio.Of(ticks, 1), FormulaKind.Length))}: a length is above zero and at most 100 m");
    }

    private int ToCount(FormulaValue value, int most) => value switch
    {
        { Kind: FormulaKind.Length } => throw new FormulaException("it gives a length, where a number of pieces is needed: divide it by another length"),
        { Amount.IsWhole: false } => throw new FormulaException($"it gives {Shown(value)}, where a whole number is needed: use floor, ceil or round"),
        _ when value.Amount < default(Ratio) || value.Amount > Ratio.Of(most) => throw new FormulaException($"it gives {Shown(value)}: give 0 to {most}"),
        _ => (int)value.Amount.Numerator,
    };

    private string Shown(FormulaValue value) => value.Shown(unit) is { Length: <= 30 } shown ? shown : "a number with very many digits";

    internal static string Unknown(string name, IEnumerable<string> known)
    {
        var names = known.ToList();
        var meant = Spelling.Nearest(name, names) is { } near ? $"did you mean {near}?" : names.Count == 0 ? "there are none" : $"there are {string.Join(", ", names)}";
        return $"there is no value named {LengthText.Quote(name)} ({meant})";
    }
}
