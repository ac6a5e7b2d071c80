using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Designs;

/// <summary>What designs leave open, between the wire and the domain.</summary>
internal static class BendingMapping
{
    private static readonly Dictionary<string, Measure> PartMembers = Members(Enum.GetValues<Measure>()
        .Except([Measure.NarrowestStrip, Measure.WidestStrip]));

    private static readonly Dictionary<string, Measure> PanelMembers = Members(
        [Measure.Thickness, Measure.Width, Measure.Length, Measure.Quantity, Measure.NarrowestStrip, Measure.WidestStrip]);

    private static readonly Dictionary<string, Measure> ItemMembers = Members([Measure.Quantity]);

    /// <summary>The design with what the entry declares as open.</summary>
    public static Design WithDeclared(Design design, DesignEntry entry, string at, Faults faults)
    {
        var (parameters, derived) = (new List<Parameter>(), new List<DerivedValue>());
        foreach (var (name, record) in entry.Parameters ?? new Dictionary<string, ParameterRecord>())
        {
            var here = $"{at}/parameters/{name}";
            switch (record)
            {
                case { Formula: { } formula, Length: null, Count: null }:
                    derived.Add(new DerivedValue(name, LengthText.Unified(formula)));
                    break;
                case { Length: { } range, Formula: null, Count: null }:
                    parameters.Add(new Parameter(
                        name, ParameterKind.Length, Ticks("fromMm", range.FromMm), Ticks("toMm", range.ToMm), Ticks("stepMm", range.StepMm),
                        range.DefaultMm is { } standard ? Ticks("defaultMm", standard) : Ticks("fromMm", range.FromMm)));
                    break;
                case { Count: { } range, Formula: null, Length: null }:
                    parameters.Add(new Parameter(name, ParameterKind.Count, range.From, range.To, range.Step, range.Default ?? range.From));
                    break;
                default:
                    faults.Add(here, "Give exactly one of length, count and formula.");
                    break;
            }

            long Ticks(string member, decimal millimetres) => faults.Millimetres($"{here}/length/{member}", millimetres).Ticks;
        }

        return design with
        {
            Parameters = parameters,
            Derived = derived,
            FormulaUnit = entry.FormulaUnit is { } unit ? faults.Word<DisplayUnit>($"{at}/formulaUnit", unit) : DisplayUnit.Millimetre,
            Choices = [.. (entry.Choices ?? new Dictionary<string, IReadOnlyList<string>>()).Select(choice => new Choice(choice.Key, choice.Value))],
        };
    }

    public static MemberFreedom ToFreedom(PartRecord record, string at, Faults faults) =>
        ToFreedom(record.Formulas is { Count: > 0 } ? WithMost(record) : null, record.When, record.InOrder, PartMembers, at, faults);

    public static MemberFreedom ToFreedom(PanelRecord record, string at, Faults faults) => ToFreedom(record.Formulas, record.When, record.InOrder, PanelMembers, at, faults);

    public static MemberFreedom ToFreedom(ItemRecord record, string at, Faults faults) => ToFreedom(record.Formulas, record.When, null, ItemMembers, at, faults);

    /// <summary>The entry's parameters; null if there are none.</summary>
    public static IReadOnlyDictionary<string, ParameterRecord>? Parameters(Design design) => design.Parameters.Count + design.Derived.Count == 0 ? null
        : design.Parameters.Select(parameter => KeyValuePair.Create(parameter.Name, ToRecord(parameter)))
            .Concat(design.Derived.Select(each => KeyValuePair.Create(each.Name, new ParameterRecord(Formula: each.Formula)))).ToDictionary(StringComparer.Ordinal);

    /// <summary>The entry's unit of formulas; null where it does not matter or is the default.</summary>
    public static string? FormulaUnit(Design design) => design.Bends && design.FormulaUnit != DisplayUnit.Millimetre ? Words.Of(design.FormulaUnit) : null;

    /// <summary>The entry's choices; null if there are none.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>>? Choices(Design design) =>
        design.Choices.Count == 0 ? null : design.Choices.ToDictionary(choice => choice.Name, choice => choice.Answers, StringComparer.Ordinal);

    /// <summary>A member's formulas; null if there are none.</summary>
    public static IReadOnlyDictionary<string, string>? Formulas(MemberFreedom freedom) => freedom.Formulas.Count == 0 ? null
        : freedom.Formulas.OrderBy(formula => formula.Key).ToDictionary(formula => MemberOf(formula.Key), formula => formula.Value, StringComparer.Ordinal);

    /// <summary>A member's conditions; null if there are none.</summary>
    public static IReadOnlyList<ConditionRecord>? When(MemberFreedom freedom) =>
        freedom.Conditions.Count == 0 ? null : [.. freedom.Conditions.Select(condition => new ConditionRecord(condition.Choice, condition.Answer))];

    private static ParameterRecord ToRecord(Parameter parameter) => parameter.Kind == ParameterKind.Length
        ? new(Length: new(Mm(parameter.From), Mm(parameter.To), Mm(parameter.Step), Mm(parameter.Default)))
        : new(Count: new((int)parameter.From, (int)parameter.To, (int)parameter.Step, (int)parameter.Default));

    // Beside a formula the most is one too: at the defaults both may be equal, and the entry does not write it then.
    private static Dictionary<string, string> WithMost(PartRecord record)
    {
        var formulas = new Dictionary<string, string>(record.Formulas!, StringComparer.Ordinal);
        (string Least, string Most, string? Written)[] sides =
        [
            ("thicknessMm", "mostThicknessMm", Text(record.MostThicknessMm)), ("widthMm", "mostWidthMm", Text(record.MostWidthMm)), ("lengthMm", "mostLengthMm", Text(record.MostLengthMm)),
        ];
        var isRange = sides.Any(side => side.Written is not null || formulas.ContainsKey(side.Most));
        foreach (var (least, most, written) in sides.Where(side => isRange && formulas.ContainsKey(side.Least)))
        {
            formulas.TryAdd(most, written ?? formulas[least]);
        }

        if (formulas.ContainsKey("quantity") && record.MostQuantity is { } mostPieces)
        {
            formulas.TryAdd("mostQuantity", mostPieces.ToString(CultureInfo.InvariantCulture));
        }

        return formulas;

        static string? Text(decimal? millimetres) => millimetres is { } written ? string.Create(CultureInfo.InvariantCulture, $"{written}mm") : null;
    }

    private static decimal Mm(long ticks) => Length.FromTicks(ticks).Millimetres;

    private static MemberFreedom ToFreedom(
        IReadOnlyDictionary<string, string>? formulas, IReadOnlyList<ConditionRecord>? when, bool? inOrder, Dictionary<string, Measure> members, string at, Faults faults)
    {
        var found = new SortedDictionary<Measure, string>();
        foreach (var (member, formula) in formulas ?? new Dictionary<string, string>())
        {
            if (members.TryGetValue(member, out var measure))
            {
                found[measure] = LengthText.Unified(formula);
            }
            else
            {
                faults.Add($"{at}/formulas/{member}", $"No formula can give '{member}': give {string.Join(", ", members.Keys)}.");
            }
        }

        var freedom = new MemberFreedom
        {
            Formulas = found,
            Conditions = [.. faults.Entries($"{at}/when", when, Limits.MaxChoices).Select(condition => new Condition(condition.Entry.Choice, condition.Entry.Answer))],
            SpeciesInOrder = inOrder ?? false,
        };
        return freedom.IsNone ? MemberFreedom.None : freedom;
    }

    private static Dictionary<string, Measure> Members(IEnumerable<Measure> measures) => measures.ToDictionary(MemberOf, StringComparer.Ordinal);

    private static string MemberOf(Measure measure)
    {
        var name = measure.ToString();
        return $"{char.ToLowerInvariant(name[0])}{name[1..]}{(measure is Measure.Quantity or Measure.MostQuantity or Measure.Spares ? "" : "Mm")}";
    }
}
