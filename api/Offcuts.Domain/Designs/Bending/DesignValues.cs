namespace Offcuts.Domain;

/// <summary>The values that formulas of a design see: its parameters, and what follows from them.</summary>
public static class DesignValues
{
    /// <summary>All values at a setting of the parameters.</summary>
    /// <param name="design">The design.</param>
    /// <param name="set">Values of parameters by name; for others the defaults.</param>
    /// <param name="faults">Told of what follows by no sound formula, with a pointer such as <c>#/parameters/rail</c>.</param>
    /// <returns>The values that there are.</returns>
    public static IReadOnlyDictionary<string, FormulaValue> At(Design design, IReadOnlyDictionary<string, long> set, Action<string, string> faults)
    {
        var known = design.Parameters.ToDictionary(
            parameter => parameter.Name,
            parameter => parameter.InFormulas(set.TryGetValue(parameter.Name, out var value) ? value : parameter.Default),
            StringComparer.Ordinal);
        var derived = design.Derived.ToDictionary(each => each.Name, StringComparer.Ordinal);
        var underWay = new List<string>();
        var failed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var each in design.Derived)
        {
            Derive(each);
        }

        return known;

        bool Derive(DerivedValue each)
        {
            if (known.ContainsKey(each.Name) || failed.Contains(each.Name))
            {
                return known.ContainsKey(each.Name);
            }

            if (underWay.Contains(each.Name))
            {
                faults(PointerOf(each.Name), $"'{each.Name}' follows from itself: {string.Join(" -> ", underWay.SkipWhile(name => name != each.Name).Append(each.Name))}. Give one of them a value of its own.");
                return false;
            }

            underWay.Add(each.Name);
            var value = default(FormulaValue);
            string? error = null;
            var isSound = Formula.TryParse(each.Formula, design.FormulaUnit, out var formula, out error)
                && formula.Names.All(name => !derived.TryGetValue(name, out var other) || Derive(other))
                && formula.TryValue(known, out value, out error);
            if (formula?.Names.FirstOrDefault(name => !known.ContainsKey(name) && !derived.ContainsKey(name)) is { } stranger)
            {
                error = $"{LengthText.Quote(formula.Text)}: {Formula.Unknown(stranger, known.Keys.Concat(derived.Keys))}.";
            }

            underWay.Remove(each.Name);
            if (isSound)
            {
                known.Add(each.Name, value);
                return true;
            }

            failed.Add(each.Name);
            if (error is not null)
            {
                faults(PointerOf(each.Name), error);
            }

            return false;
        }
    }

    /// <summary>Where the design declares a parameter, a value or a choice.</summary>
    internal static string PointerOf(string name) => $"#/parameters/{name}";
}
