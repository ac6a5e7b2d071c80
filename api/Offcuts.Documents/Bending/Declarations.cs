using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>What a design declares as open: parameters, values that follow from them, and choices.</summary>
/// <param name="Parameters">The parameters.</param>
/// <param name="Derived">Values that follow from them.</param>
/// <param name="Choices">The choices; optional parts add their own.</param>
internal sealed record Declarations(IReadOnlyList<Parameter> Parameters, IReadOnlyList<DerivedValue> Derived, List<Choice> Choices)
{
    /// <summary>Whether sizes and quantities may be formulas.</summary>
    public bool HasNames => Parameters.Count + Derived.Count > 0;

    /// <summary>Reads the keys <c>parameters</c> and <c>choices</c>.</summary>
    public static Declarations Of(Fields root, DocumentFaults faults)
    {
        var (parameters, derived) = (new List<Parameter>(), new List<DerivedValue>());
        foreach (var entry in Entries(root, "parameters", faults))
        {
            if (entry.Value is not Scalar { IsNothing: false } scalar)
            {
                faults.Add(entry.Value, $"'{entry.Key}' should be a range such as 30in..48in by 1/4in, or a formula.");
            }
            else if (!ParameterText.IsRange(scalar.Text))
            {
                derived.Add(new DerivedValue(entry.Key, LengthText.Unified(scalar.Text)));
            }
            else if (ParameterText.TryParse(entry.Key, scalar.Text, out var parameter, out var error))
            {
                parameters.Add(parameter);
            }
            else
            {
                faults.Add(scalar, error);
            }
        }

        return new(parameters, derived, [.. Entries(root, "choices", faults).Select(entry => ToChoice(entry, faults)).OfType<Choice>()]);
    }

    private static Choice? ToChoice(Entry entry, DocumentFaults faults)
    {
        if (entry.Value is Sequence list && list.Items.All(item => item is Scalar { IsNothing: false }))
        {
            return new Choice(entry.Key, [.. list.Items.Cast<Scalar>().Select(item => item.Text.Trim())]);
        }

        faults.Add(entry.Value, $"'{entry.Key}' should be a list of answers, for instance [sheet, solid].");
        return null;
    }

    private static IReadOnlyList<Entry> Entries(Fields root, string key, DocumentFaults faults)
    {
        switch (root.Optional(key))
        {
            case null:
                return [];
            case Mapping mapping:
                return mapping.Entries;
            case { } node:
                faults.Add(node, $"'{key}' is {node.Kind}: it should be names with values.");
                return [];
        }
    }
}
