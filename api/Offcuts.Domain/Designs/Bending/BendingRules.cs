using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>What the parameters, formulas and choices of a design must keep, and the designs that they give.</summary>
internal static partial class BendingRules
{
    /// <summary>Words that a formula or a size reads otherwise.</summary>
    private static readonly HashSet<string> Reserved = new(
        [.. FormulaReader.Functions, "x", "by", "to", "default", "in", "inch", "inches", "ft", "foot", "feet", "mm", "cm", "m"], StringComparer.OrdinalIgnoreCase);

    /// <summary>Adds what is wrong with the parameters and choices themselves.</summary>
    public static void CheckDeclared(Design design, FaultList faults)
    {
        faults.Count("#/parameters", design.Parameters.Count + design.Derived.Count, 0, Limits.MaxParameters);
        faults.Count("#/choices", design.Choices.Count, 0, Limits.MaxChoices);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var name in design.Parameters.Select(parameter => parameter.Name).Concat(design.Derived.Select(each => each.Name)))
        {
            CheckName(name, names, faults);
        }

        foreach (var parameter in design.Parameters)
        {
            CheckRange(parameter, design.FormulaUnit, faults);
        }

        CheckChoices(design, faults);
    }

    /// <summary>
    /// Adds what is wrong with the designs that come of it: at the defaults, at both ends of all parameters, and at both ends of each one alone; with
    /// the first answers to all choices, and with every other answer to one. The first of them that is wrong is told.
    /// </summary>
    public static void CheckInstances(Design design, Func<Design, IReadOnlyList<InputFault>> check, FaultList faults)
    {
        foreach (var set in Samples(design))
        {
            var told = new HashSet<(string, string)>();
            var instance = DesignInstance.At(design, set, (pointer, detail) => Tell(pointer, detail));
            if (told.Count > 0)
            {
                return;
            }

            foreach (var answers in Answers(instance.Design))
            {
                var made = answers.Aggregate(instance, (known, answer) => known.Then(DesignInstance.With(known.Design, answer.Choice, answer.Answer)));
                foreach (var fault in check(made.Design))
                {
                    Tell(made.Original(fault.Pointer), fault.Detail);
                }

                if (told.Count > 0)
                {
                    return;
                }
            }

            void Tell(string pointer, string detail)
            {
                if (told.Add((pointer, detail)))
                {
                    faults.Add(pointer, $"{detail}{Where(design, set)}");
                }
            }
        }
    }

    private static void CheckName(string name, HashSet<string> names, FaultList faults)
    {
        var at = DesignValues.PointerOf(name);
        if (!NameText().IsMatch(name))
        {
            faults.Add(at, $"{LengthText.Quote(name)} cannot be the name of a value: give a letter, then at most 39 letters, digits and underscores.");
        }
        else if (Reserved.Contains(name))
        {
            faults.Add(at, $"'{name}' means something else in formulas and sizes: give another name.");
        }
        else if (!names.Add(name))
        {
            faults.Add(at, $"There are two values named '{name}': give each its own name.");
        }
    }

    private static void CheckRange(Parameter parameter, DisplayUnit unit, FaultList faults)
    {
        var at = DesignValues.PointerOf(parameter.Name);
        var isLength = parameter.Kind == ParameterKind.Length;
        var (least, most) = isLength ? (1L, Length.MaxTicks) : (0L, (long)Limits.MaxQuantity);
        if (parameter.From < least || parameter.To > most || parameter.From >= parameter.To)
        {
            faults.Add(at, $"The values of '{parameter.Name}' go from the smaller to the larger, {(isLength ? "above zero and at most 100 m" : $"from 0 to {Limits.MaxQuantity}")}: give such limits.");
        }
        else if (parameter.Step <= 0 || parameter.Step > parameter.To - parameter.From)
        {
            faults.Add(at, $"The step of '{parameter.Name}' is above zero and no larger than from one limit to the other: give such a step.");
        }
        else if (parameter.Count > Limits.MaxParameterValues)
        {
            faults.Add(at, $"'{parameter.Name}' has {parameter.Count} values, and at most {Limits.MaxParameterValues} are tried: give a larger step.");
        }
        else if (parameter.WhyNot(parameter.Default, unit) is { } why)
        {
            faults.Add(at, $"The default is none of the values: {why}");
        }
    }

    private static void CheckChoices(Design design, FaultList faults)
    {
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal);
        foreach (var choice in design.Choices)
        {
            var at = $"#/choices/{choice.Name}";
            faults.Text(at, choice.Name, Limits.MaxName, required: true);
            faults.Count(at, choice.Answers.Count, 2, Limits.MaxAnswers);
            foreach (var answer in choice.Answers)
            {
                faults.Text(at, answer, Limits.MaxName, required: true);
            }

            if (!choices.TryAdd(choice.Name, choice) || choice.Answers.Distinct(StringComparer.Ordinal).Count() < choice.Answers.Count)
            {
                faults.Add(at, $"The choice {LengthText.Quote(choice.Name)} or one of its answers is there twice: keep one.");
            }
        }

        foreach (var (kind, index, freedom) in Members(design))
        {
            foreach (var condition in freedom.Conditions)
            {
                if (!choices.TryGetValue(condition.Choice, out var choice))
                {
                    faults.Add($"#/{kind}/{index}/when", $"There is no choice {LengthText.Quote(condition.Choice)}.{Meant(condition.Choice, choices.Keys)}");
                }
                else if (!choice.Answers.Contains(condition.Answer, StringComparer.Ordinal))
                {
                    faults.Add($"#/{kind}/{index}/when", $"{LengthText.Quote(condition.Answer)} is no answer to '{choice.Name}': give {string.Join(" or ", choice.Answers)}.");
                }
            }
        }
    }

    private static string Meant(string written, IEnumerable<string> known) => Spelling.Nearest(written, known) is { } near ? $" Did you mean {near}?" : "";

    private static IEnumerable<(string Kind, int Index, MemberFreedom Freedom)> Members(Design design) =>
        design.Parts.Select((part, index) => ("parts", index, part.Freedom))
            .Concat(design.Panels.Select((panel, index) => ("panels", index, panel.Freedom)))
            .Concat(design.Items.Select((item, index) => ("items", index, item.Freedom)));

    private static IEnumerable<Dictionary<string, long>> Samples(Design design)
    {
        yield return [];
        if (design.Parameters.Count == 0)
        {
            yield break;
        }

        yield return design.Parameters.ToDictionary(parameter => parameter.Name, parameter => parameter.From);
        yield return design.Parameters.ToDictionary(parameter => parameter.Name, parameter => parameter.Last);
        foreach (var parameter in design.Parameters.Count > 1 ? design.Parameters : [])
        {
            yield return new() { [parameter.Name] = parameter.From };
            yield return new() { [parameter.Name] = parameter.Last };
        }
    }

    private static IEnumerable<List<Condition>> Answers(Design design)
    {
        List<Condition> first = [.. design.Choices.Select(choice => new Condition(choice.Name, choice.Answers[0]))];
        yield return first;
        foreach (var (index, choice) in design.Choices.Index())
        {
            foreach (var answer in choice.Answers.Skip(1))
            {
                yield return [.. first[..index], new(choice.Name, answer), .. first[(index + 1)..]];
            }
        }
    }

    private static string Where(Design design, Dictionary<string, long> set) => set.Count == 0 ? "" : $" (at {string.Join(", ", design.Parameters
        .Where(parameter => set.ContainsKey(parameter.Name)).Select(parameter => $"{parameter.Name} = {parameter.Text(set[parameter.Name], design.FormulaUnit)}"))})";

    [GeneratedRegex("^[A-Za-z][A-Za-z0-9_]{0,39}$", RegexOptions.CultureInvariant)]
    private static partial Regex NameText();
}
