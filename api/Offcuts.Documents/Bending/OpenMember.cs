using System.Text.RegularExpressions;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>Reads those keys of a part, panel or item that may be formulas or depend on choices. What follows by a formula is zero until all is read.</summary>
/// <param name="fields">The keys of the member.</param>
/// <param name="context">What keys are read with.</param>
/// <param name="declared">What the design declares; takes the choices of optional members.</param>
internal sealed partial class OpenMember(Fields fields, DocumentContext context, Declarations declared)
{
    private readonly SortedDictionary<Measure, string> formulas = [];

    /// <summary>All that is open; ask last.</summary>
    /// <param name="hasSpecies">Whether it is made of wood.</param>
    public MemberFreedom Freedom(bool hasSpecies = true)
    {
        List<Condition> conditions = [.. fields.Scalars("when").Select(ToCondition).OfType<Condition>()];
        if (fields.OptionalText("optional") is { } name)
        {
            conditions.Add(new Condition(name, Choice.Yes));
            if (declared.Choices.All(choice => choice.Name != name))
            {
                declared.Choices.Add(Choice.Optional(name));
            }
        }

        var freedom = new MemberFreedom { Formulas = formulas, Conditions = conditions, SpeciesInOrder = hasSpecies && fields.YesNo("in order") };
        return freedom.IsNone ? MemberFreedom.None : freedom;
    }

    /// <summary>A size of which every side may be a range.</summary>
    public (Dimensions Least, Dimensions? Most) SizeRange() => SizeFormulas(mayBeRange: true) ?? context.SizeRange(fields);

    /// <summary>A size.</summary>
    public Dimensions Size() => SizeFormulas(mayBeRange: false)?.Least ?? context.Size(fields);

    /// <summary>The quantity, or the fewest and the most.</summary>
    public (int Fewest, int? Most) QuantityRange()
    {
        if (FormulaAt("quantity") is not { } text)
        {
            return fields.QuantityRange();
        }

        var ends = Between().Split(text);
        formulas[Measure.Quantity] = ends[0];
        if (ends.Length > 1)
        {
            formulas[Measure.MostQuantity] = ends[1];
        }

        return (0, ends.Length > 1 ? 0 : null);
    }

    /// <summary>The quantity of what has no range.</summary>
    public int Quantity()
    {
        if (FormulaAt("quantity") is not { } text)
        {
            return fields.Quantity();
        }

        formulas[Measure.Quantity] = text;
        return 0;
    }

    /// <summary>A whole number within limits.</summary>
    public int? Whole(string key, Measure measure, int least, int most)
    {
        if (FormulaAt(key) is not { } text)
        {
            return fields.OptionalWhole(key, least, most);
        }

        formulas[measure] = text;
        return 0;
    }

    /// <summary>A length of a group below the member, such as a span.</summary>
    public Length Length(Fields below, string key, Measure measure)
    {
        if (!declared.HasNames || below.Optional(key) is not Scalar scalar || LengthText.TryParse(scalar.Text, context.Unit, out _, out _))
        {
            return context.Length(below, key);
        }

        formulas[measure] = LengthText.Unified(scalar.Text);
        return Domain.Length.Zero;
    }

    /// <summary>Two lengths from the smaller to the larger, by formulas; null if they are none.</summary>
    public (Length? From, Length? To)? LengthRange(string key, Measure from, Measure to)
    {
        if (!declared.HasNames || fields.Optional(key) is not Scalar scalar || RangeText.TryParse(scalar.Text, context.Unit, fromZero: false, out _, out _, out _)
            || Between().Split(LengthText.Unified(scalar.Text)) is not [var first, var last])
        {
            return null;
        }

        (formulas[from], formulas[to]) = (first, last);
        return (Domain.Length.Zero, Domain.Length.Zero);
    }

    private (Dimensions Least, Dimensions? Most)? SizeFormulas(bool mayBeRange)
    {
        if (!declared.HasNames || fields.Optional("size") is not Scalar scalar || SizeText.TryParseRange(scalar.Text, context.Unit, out _, out _, out _))
        {
            return null;
        }

        if (!SizeText.TryParseFormulas(scalar.Text, context.Unit, out var least, out var most, out var error)
            || (!mayBeRange && !least.SequenceEqual(most)))
        {
            context.Faults.Add(scalar, error ?? $"{LengthText.Quote(scalar.Text)}: a panel has one size, without ranges.");
            return default((Dimensions, Dimensions?));
        }

        (Measure Least, Measure Most)[] sides = [(Measure.Thickness, Measure.MostThickness), (Measure.Width, Measure.MostWidth), (Measure.Length, Measure.MostLength)];
        var isRange = !least.SequenceEqual(most);
        foreach (var (at, side) in sides.Index())
        {
            Keep(side.Least, least[at].Formula);
            // Beside a formula the most is one too: at the defaults both may be equal, and the wire does not write it then.
            Keep(side.Most, !isRange ? null : least[at].Formula is null ? most[at].Formula : most[at].Formula ?? LengthText.FormatExact(most[at].Plain));
        }

        return (new(least[0].Plain, least[1].Plain, least[2].Plain), isRange ? new Dimensions(most[0].Plain, most[1].Plain, most[2].Plain) : null);

        void Keep(Measure measure, string? formula)
        {
            if (formula is not null)
            {
                formulas[measure] = formula;
            }
        }
    }

    private Condition? ToCondition(Scalar scalar)
    {
        if (scalar.Text.Split('=') is [var choice, var answer] && choice.Trim().Length > 0 && answer.Trim().Length > 0)
        {
            return new Condition(choice.Trim(), answer.Trim());
        }

        context.Faults.Add(scalar, $"{LengthText.Quote(scalar.Text)} is no condition: write the choice and its answer, for instance back = solid.");
        return null;
    }

    // A plain number stays one, so that its faults are told as everywhere.
    private string? FormulaAt(string key) =>
        declared.HasNames && fields.Optional(key) is Scalar scalar && LengthText.Unified(scalar.Text) is var text && Arithmetic().IsMatch(Between().Replace(text, " ")) ? text : null;

    [GeneratedRegex(@" *(?:\.\.| to ) *", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex("[A-Za-z+*/(]", RegexOptions.CultureInvariant)]
    private static partial Regex Arithmetic();
}
