namespace Offcuts.Domain;

/// <summary>What the operators and functions of formulas do, with what each of them may be given.</summary>
/// <remarks>
/// A length times or over a number is a length, a length over a length is a number; nothing here has an area, and nothing is one over a
/// length. Only like is added to like or compared with it, where a bare number is like a length.
/// </remarks>
/// <param name="unit">The unit of bare numbers.</param>
internal sealed class FormulaArithmetic(DisplayUnit unit)
{
    // More than any size or count needs; without a limit values that build on each other would double their digits each time.
    private const int MostBits = 4096;

    /// <summary>The value, if its fraction is not too fine to reckon with.</summary>
    public static FormulaValue Bounded(FormulaValue value) =>
        value.Amount.Numerator.GetBitLength() <= MostBits && value.Amount.Denominator.GetBitLength() <= MostBits ? value
            : throw new FormulaException("its numbers get too many digits: round a value on the way");

    public static FormulaValue Multiply(FormulaValue a, FormulaValue b) => (a.Kind, b.Kind) is (FormulaKind.Length, FormulaKind.Length)
        ? throw new FormulaException("it multiplies a length by a length, and that is an area: multiply by a number")
        : new(a.Amount * b.Amount, Larger(a.Kind, b.Kind), a.HasFraction || b.HasFraction);

    public static FormulaValue Divide(FormulaValue a, FormulaValue b)
    {
        if (b.Amount == default)
        {
            throw new FormulaException("it divides by zero");
        }

        var kind = (a.Kind, b.Kind) switch
        {
            (FormulaKind.Length, FormulaKind.Length) => FormulaKind.Number,
            (FormulaKind.Length, _) => FormulaKind.Length,
            (_, FormulaKind.Length) => throw new FormulaException("it divides a number by a length: if the number is a length, write its unit"),
            _ => Larger(a.Kind, b.Kind),
        };
        return new(a.Amount / b.Amount, kind, a.HasFraction || b.HasFraction);
    }

    public static FormulaValue Negate(FormulaValue a) => a with { Amount = -a.Amount };

    public FormulaValue Add(FormulaValue a, FormulaValue b)
    {
        var (x, y) = Alike(a, b);
        return x with { Amount = x.Amount + y.Amount, HasFraction = a.HasFraction || b.HasFraction };
    }

    /// <summary>The function with this name.</summary>
    public FormulaValue Call(string name, IReadOnlyList<FormulaValue> given) => (name, given.Count) switch
    {
        ("min" or "max", >= 1) => given.Aggregate((a, b) =>
        {
            var (x, y) = Alike(a, b);
            return x.Amount < y.Amount == (name == "min") ? x : y;
        }),
        ("min" or "max", _) => throw new FormulaException($"{name} needs at least one value: {name}(a, b)"),
        (_, 1) when given[0].Kind == FormulaKind.Length => throw new FormulaException(
            $"{name} of a length needs the step to go to: {name}({(unit == DisplayUnit.Inch ? "LENGTH, 1/8in" : "LENGTH, 1mm")})"),
        (_, 1) => Step(name, given[0], Ratio.Of(1)),
        (_, 2) => Step(name, given[0], given[1]),
        _ => throw new FormulaException($"{name} takes a value, and the step to go to: {name}(a) or {name}(a, step)"),
    };

    /// <summary>The value as a length, in ticks that need not be whole.</summary>
    public Ratio Ticks(FormulaValue value) => value.Kind switch
    {
        FormulaKind.Length => value.Amount,
        FormulaKind.Number => throw new FormulaException("it gives a number, where a length is needed: is a unit missing?"),
        FormulaKind.Bare when value.HasFraction && unit == DisplayUnit.Millimetre => throw new FormulaException(
            "it has a fraction without a unit, and bare numbers here are metric: write the unit, for instance 3/4in, or a decimal number"),
        FormulaKind.Bare => value.Amount * Ratio.Of(unit.ToLengthUnit().Ticks()),
    };

    private FormulaValue Step(string name, FormulaValue value, FormulaValue step)
    {
        var (x, y) = Alike(value, step);
        return y.Amount > default(Ratio)
            ? Step(name, x, y.Amount)
            : throw new FormulaException($"{name} needs a step above zero");
    }

    private static FormulaValue Step(string name, FormulaValue value, Ratio step)
    {
        var steps = value.Amount / step;
        var whole = name switch
        {
            "floor" => steps.Floor(),
            "ceil" => -(-steps).Floor(),
            _ => steps.Nearest(),
        };
        return value with { Amount = Ratio.Of(whole, 1) * step };
    }

    /// <summary>Both in one measure: a bare number beside a length is a length, beside a number a number.</summary>
    private (FormulaValue A, FormulaValue B) Alike(FormulaValue a, FormulaValue b) => (a.Kind, b.Kind) switch
    {
        (FormulaKind.Length, FormulaKind.Number) or (FormulaKind.Number, FormulaKind.Length) => throw new FormulaException(
            "it adds or compares a length and a number: one of them needs a unit, or is one too many"),
        (FormulaKind.Length, FormulaKind.Bare) => (a, new(Ticks(b), FormulaKind.Length)),
        (FormulaKind.Bare, FormulaKind.Length) => (new(Ticks(a), FormulaKind.Length), b),
        _ => (a with { Kind = Larger(a.Kind, b.Kind) }, b with { Kind = Larger(a.Kind, b.Kind) }),
    };

    private static FormulaKind Larger(FormulaKind a, FormulaKind b) => a > b ? a : b;
}

/// <summary>Why a formula has no value; ends without a full stop.</summary>
internal sealed class FormulaException(string message) : Exception(message);
