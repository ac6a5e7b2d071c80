using System.CommandLine;
using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What to build a design with that leaves something open.</summary>
internal static class OpenOptions
{
    private static readonly Option<string[]> With = new("--with") { Description = "A value for a parameter of the design, for instance top=42in (its default if left out); may be given again", HelpName = "NAME=VALUE" };
    private static readonly Option<string[]> Choose = new("--choose") { Description = "An answer to a choice of the design, for instance back=sheet (what costs least if left out); may be given again", HelpName = "CHOICE=ANSWER" };

    /// <summary>In the order in which help lists them.</summary>
    public static readonly Symbol[] All = [With, Choose];

    /// <summary>The values asked for, as the wire has them; null if there are none.</summary>
    /// <exception cref="CliException">Something that cannot be read, or that the design does not have.</exception>
    public static async Task<IReadOnlyDictionary<string, decimal>?> ValuesAsync(Run run, IOffcutsApi api, string design)
    {
        if (Pairs(run, With) is not { } pairs)
        {
            return null;
        }

        var known = (await api.GetDesignAsync(design, run.Cancellation)).Design.Parameters ?? new Dictionary<string, ParameterRecord>();
        var unit = await run.UnitAsync();
        return pairs.ToDictionary(pair => pair.Key, pair => Value(With.Name, pair.Key, pair.Value, known, unit));
    }

    /// <summary>The answers asked for; null if there are none.</summary>
    /// <exception cref="CliException">Something that cannot be read.</exception>
    public static IReadOnlyDictionary<string, string>? Answers(Run run) => Pairs(run, Choose);

    /// <summary>What a plan was made with, to plan its design again: values of parameters and answers; null where the design leaves nothing open.</summary>
    public static async Task<(IReadOnlyDictionary<string, decimal>? Values, IReadOnlyDictionary<string, string>? Answers)> OfPlanAsync(Run run, IOffcutsApi api, string plan)
    {
        var record = await api.GetPlanAsync(plan, run.Cancellation);
        if (record.MadeWith is not { } made)
        {
            return (null, null);
        }

        // Without what follows from other values.
        var known = (await api.GetDesignAsync(record.Design.Version, run.Cancellation)).Design.Parameters ?? new Dictionary<string, ParameterRecord>();
        return (
            made.LengthsMm.Concat(made.Numbers).Where(value => known.TryGetValue(value.Key, out var parameter) && parameter.Formula is null)
                .ToDictionary(value => value.Key, value => value.Value, StringComparer.Ordinal),
            made.Choices);
    }

    /// <summary>A value of a parameter as the wire has it: millimetres, or a count.</summary>
    /// <param name="option">Where it was written.</param>
    /// <param name="name">The parameter.</param>
    /// <param name="text">What was written; a number without a unit is in the shop's unit where the parameter is a length.</param>
    /// <param name="known">The parameters of the design.</param>
    /// <param name="unit">The shop's unit.</param>
    /// <exception cref="CliException">It cannot be read, or the design has no such parameter.</exception>
    public static decimal Value(string option, string name, string text, IReadOnlyDictionary<string, ParameterRecord> known, DisplayUnit unit)
    {
        var open = known.Where(parameter => parameter.Value.Formula is null).Select(parameter => parameter.Key).ToList();
        if (!open.Contains(name, StringComparer.Ordinal))
        {
            var meant = Spelling.Nearest(name, open) is { } near ? $"Did you mean {near}?" : open.Count > 0 ? $"It has {string.Join(", ", open)}." : "It has none.";
            throw CliException.Invalid($"{option}: the design has no parameter '{name}'. {meant}");
        }

        if (known[name].Length is not null)
        {
            return LengthText.TryParse(text, unit, out var length, out var error) ? length.Millimetres : throw CliException.Invalid($"{option} {name}: {error}");
        }

        return Count(option, name, text);
    }

    /// <summary>Counts by the name that each is given to.</summary>
    /// <param name="run">The run.</param>
    /// <param name="option">The option, NAME=COUNT.</param>
    /// <exception cref="CliException">One that cannot be read.</exception>
    public static Dictionary<string, int> Counts(Run run, Option<string[]> option) =>
        (Pairs(run, option) ?? []).ToDictionary(pair => pair.Key, pair => Count(option.Name, pair.Key, pair.Value), StringComparer.Ordinal);

    private static int Count(string option, string name, string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            ? count
            : throw CliException.Invalid($"{option} {name}: '{text}' is no count. Give a whole number.");

    private static Dictionary<string, string>? Pairs(Run run, Option<string[]> option)
    {
        if (run.Get(option) is not { Length: > 0 } given)
        {
            return null;
        }

        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in given)
        {
            if (text.Split('=', 2) is not [var name, var value] || name.Trim().Length == 0 || value.Trim().Length == 0)
            {
                throw CliException.Invalid($"{option.Name}: '{text}' is no name with a value. Write {option.HelpName}.");
            }

            if (!pairs.TryAdd(name.Trim(), value.Trim()))
            {
                throw CliException.Invalid($"{option.Name}: '{name.Trim()}' is given twice. Give it once.");
            }
        }

        return pairs;
    }
}
