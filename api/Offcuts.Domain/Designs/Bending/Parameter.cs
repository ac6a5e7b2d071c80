namespace Offcuts.Domain;

/// <summary>What a parameter counts in.</summary>
public enum ParameterKind
{
    /// <summary>Ticks of a length.</summary>
    Length,

    /// <summary>Pieces.</summary>
    Count,
}

/// <summary>A length or a count that a design leaves to whoever builds it, within limits.</summary>
/// <param name="Name">The name that formulas use.</param>
/// <param name="Kind">Whether the numbers are ticks or pieces.</param>
/// <param name="From">The least value.</param>
/// <param name="To">No value is above this.</param>
/// <param name="Step">The distance of one value from the next, above zero.</param>
/// <param name="Default">The value where nothing else is asked for.</param>
public sealed record Parameter(string Name, ParameterKind Kind, long From, long To, long Step, long Default)
{
    /// <summary>How many values there are.</summary>
    public int Count => (int)Math.Min(((To - From) / Step) + 1, int.MaxValue);

    /// <summary>The largest value.</summary>
    public long Last => From + ((Count - 1) * Step);

    /// <summary>All values from the least on.</summary>
    public IEnumerable<long> Values => Enumerable.Range(0, Count).Select(n => From + (n * Step));

    /// <summary>Whether a number is one of the values.</summary>
    public bool Has(long value) => value >= From && value <= To && (value - From) % Step == 0;

    /// <summary>A value as formulas take it.</summary>
    public FormulaValue InFormulas(long value) => Kind == ParameterKind.Length ? FormulaValue.Of(Length.FromTicks(value)) : FormulaValue.Of((int)value);

    /// <summary>A value as people write it.</summary>
    public string Text(long value, DisplayUnit unit) => InFormulas(value).Shown(unit);

    /// <summary>The limits and the step, <c>30"..48" by 1/4"</c>.</summary>
    public string Range(DisplayUnit unit) => $"{Text(From, unit)}..{Text(To, unit)} by {Text(Step, unit)}";

    /// <summary>Why a number is none of the values, with those next to it; null if it is one.</summary>
    public string? WhyNot(long value, DisplayUnit unit)
    {
        if (Has(value))
        {
            return null;
        }

        if (value < From || value > Last)
        {
            return $"{Name} = {Text(value, unit)} is outside {Range(unit)}.";
        }

        var below = value - ((value - From) % Step);
        return $"{Name} = {Text(value, unit)} is not a step of {Range(unit)}: give {Text(below, unit)} or {Text(below + Step, unit)}.";
    }
}
