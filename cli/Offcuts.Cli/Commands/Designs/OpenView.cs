using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Designs;

/// <summary>What a design leaves open, as a person reads it.</summary>
internal static class OpenView
{
    /// <summary>Its parameters and choices; nothing for a design that has none.</summary>
    public static void Write(DesignEntry design, DisplayUnit unit, Terminal terminal)
    {
        if (design.Parameters is { Count: > 0 } parameters)
        {
            var table = new Table("PARAMETER", "VALUES", "IF NOT SAID");
            foreach (var (name, parameter) in parameters)
            {
                table.Add(name, Values(parameter, unit), Default(parameter, unit));
            }

            terminal.Out.WriteLine();
            table.Write(terminal);
        }

        if (design.Choices is { Count: > 0 } choices)
        {
            var table = new Table("CHOICE", "ANSWERS");
            foreach (var (name, answers) in choices)
            {
                table.Add(name, string.Join(", ", answers));
            }

            terminal.Out.WriteLine();
            table.Write(terminal);
        }
    }

    /// <summary>The formulas and conditions of its parts, one line each.</summary>
    public static void WriteFormulas(DesignEntry design, Terminal terminal)
    {
        var members = (design.Parts ?? []).Select(part => (part.Name, part.Formulas, part.When, part.InOrder))
            .Concat((design.Panels ?? []).Select(panel => (panel.Name, panel.Formulas, panel.When, panel.InOrder)))
            .Concat((design.Items ?? []).Select(item => (item.Name, item.Formulas, item.When, InOrder: (bool?)null)))
            .Concat((design.Groups ?? []).Select(group => (Name: $"Group {group.Name}", Formulas: (IReadOnlyDictionary<string, string>?)null, When: (IReadOnlyList<ConditionRecord>?)null, group.InOrder)));
        foreach (var (name, formulas, when, inOrder) in members)
        {
            string?[] said =
            [
                formulas is { Count: > 0 } ? string.Join("; ", formulas.Select(formula => $"{MemberName(formula.Key)} = {formula.Value}")) : null,
                when is { Count: > 0 } ? $"only with {string.Join(" and ", when.Select(condition => $"{condition.Choice} = {condition.Answer}"))}" : null,
                inOrder == true ? "an earlier species is preferred where the money is equal" : null,
            ];
            if (said.Any(each => each is not null))
            {
                terminal.Out.WriteLine(SafeText.Of($"{name}: {string.Join("; ", said.OfType<string>())}."));
            }
        }
    }

    /// <summary>A quantity, marked where it follows by a formula.</summary>
    public static string Quantity(IReadOnlyDictionary<string, string>? formulas, string atDefaults) =>
        Marked(atDefaults, formulas?.Keys.Any(key => key is "quantity" or "mostQuantity") ?? false);

    /// <summary>A size, marked where it follows by a formula.</summary>
    public static string Size(IReadOnlyDictionary<string, string>? formulas, string atDefaults) =>
        Marked(atDefaults, formulas?.Keys.Any(key => key.EndsWith("thicknessMm", StringComparison.OrdinalIgnoreCase) || key.EndsWith("widthMm", StringComparison.OrdinalIgnoreCase) || key.EndsWith("lengthMm", StringComparison.OrdinalIgnoreCase)) ?? false);

    private static string Marked(string atDefaults, bool follows) => follows ? $"{atDefaults} *" : atDefaults;

    // lengthMm is length, mostQuantity most quantity.
    private static string MemberName(string key)
    {
        var bare = key.EndsWith("Mm", StringComparison.Ordinal) ? key[..^2] : key;
        return string.Concat(bare.Select(sign => char.IsUpper(sign) ? $" {char.ToLowerInvariant(sign)}" : sign.ToString()));
    }

    private static string Values(ParameterRecord parameter, DisplayUnit unit) => parameter switch
    {
        { Length: { } length } => $"{Text(length.FromMm, unit)} to {Text(length.ToMm, unit)} by {Text(length.StepMm, unit)}",
        { Count: { } count } => string.Create(CultureInfo.InvariantCulture, $"{count.From} to {count.To}{(count.Step == 1 ? "" : $" by {count.Step}")}"),
        _ => $"= {parameter.Formula}",
    };

    private static string? Default(ParameterRecord parameter, DisplayUnit unit) => parameter switch
    {
        { Length: { } length } => Text(length.DefaultMm ?? length.FromMm, unit),
        { Count: { } count } => (count.Default ?? count.From).ToString(CultureInfo.InvariantCulture),
        _ => null,
    };

    private static string Text(decimal millimetres, DisplayUnit unit) => LengthText.Format(Length.FromMillimetres(millimetres), unit);
}
