using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;

namespace Offcuts.Host.Plans;

/// <summary>The values and answers that a request gives a design that leaves something open.</summary>
/// <param name="Design">The design.</param>
/// <param name="Values">Values of parameters; others have their defaults.</param>
/// <param name="Answers">Answers to choices; others are open.</param>
internal sealed record DesignSettings(Design Design, IReadOnlyDictionary<string, long> Values, IReadOnlyDictionary<string, string> Answers)
{
    private static readonly MadeWithRecord Nothing = new(new Dictionary<string, decimal>(), new Dictionary<string, decimal>(), new Dictionary<string, string>());

    /// <summary>What a request gives.</summary>
    /// <param name="design">The design.</param>
    /// <param name="with">Values of parameters, as the wire has them.</param>
    /// <param name="choose">Answers to choices.</param>
    /// <param name="faults">Told what cannot be.</param>
    public static DesignSettings Read(Design design, IReadOnlyDictionary<string, decimal>? with, IReadOnlyDictionary<string, string>? choose, Faults faults) => new(
        design, ValuesOf(design, with ?? new Dictionary<string, decimal>(), faults), AnswersOf(design, choose ?? new Dictionary<string, string>(), faults));

    /// <summary>The design without formulas, and without those choices that are answered or have one answer left; and what it is made with, null if nothing is open.</summary>
    /// <param name="catalogue">What the species classes stand for.</param>
    /// <param name="faults">Told what cannot be.</param>
    public (Design Design, MadeWithRecord? MadeWith) Apply(SpeciesCatalogue catalogue, Faults faults)
    {
        if (!Design.Bends && !Design.HasAlternatives)
        {
            return (Design, null);
        }

        var settled = Settled((detail) => faults.Add("#/with", detail));
        var values = DesignValues.At(Design, Values, (_, _) => { });
        var made = new MadeWithRecord(
            values.Where(value => value.Value.Kind == FormulaKind.Length).ToDictionary(value => value.Key, value => Length.FromTicks((long)value.Value.Amount.Nearest()).Millimetres),
            values.Where(value => value.Value.Kind != FormulaKind.Length).ToDictionary(value => value.Key, value => Rounded(value.Value.Amount)),
            Answers);
        var ways = settled.HasAlternatives ? Alternatives.Of(settled, catalogue.All) : [];
        return ways.Count == 1 ? (ways[0].Design, Answered(made, ways[0], null)) : (settled, made);
    }

    /// <summary>The design as its maker prefers it: what it leaves open has its defaults and the first answers.</summary>
    /// <param name="design">The design.</param>
    /// <param name="catalogue">What the species classes stand for.</param>
    /// <param name="at">Where what is wrong is told.</param>
    /// <param name="faults">Told what cannot be.</param>
    public static Design Usual(Design design, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        var isSound = true;
        var settled = new DesignSettings(design, new Dictionary<string, long>(), new Dictionary<string, string>()).Settled(detail =>
        {
            isSound = false;
            faults.Add(at, detail);
        });
        return isSound ? Alternatives.Of(settled, catalogue.All)[0].Design : settled;
    }

    /// <summary>The ways to build the design; none where a value gives something that cannot be built.</summary>
    /// <param name="catalogue">What the species classes stand for.</param>
    public IReadOnlyList<Alternative> Ways(SpeciesCatalogue catalogue)
    {
        var isSound = true;
        var settled = Settled(_ => isSound = false);
        return isSound ? Alternatives.Of(settled, catalogue.All) : [];
    }

    private Design Settled(Action<string> fault)
    {
        var instance = DesignInstance.At(Design, Values, (pointer, detail) => fault($"{Told(Design, pointer)}: {detail}"));
        foreach (var (choice, answer) in Answers)
        {
            instance = instance.Then(DesignInstance.With(instance.Design, choice, answer));
        }

        foreach (var wrong in DesignRules.Check(instance.Design))
        {
            fault($"{Told(Design, instance.Original(wrong.Pointer))}: {wrong.Detail}");
        }

        return instance.Design;
    }

    /// <summary>What a stored run is made with, with the answers of the way that was found.</summary>
    /// <param name="madeWith">The stored record; null for none.</param>
    /// <param name="way">The way.</param>
    /// <param name="compared">How the ways compared; null until that is known.</param>
    public static MadeWithRecord Answered(string? madeWith, Alternative way, ComparisonRecord? compared) =>
        Answered(madeWith is null ? Nothing : JsonSerializer.Deserialize(madeWith, WireJson.Default.MadeWithRecord)!, way, compared);

    private static MadeWithRecord Answered(MadeWithRecord made, Alternative way, ComparisonRecord? compared) => made with
    {
        Choices = made.Choices.Concat(way.Answers).ToDictionary(StringComparer.Ordinal),
        Compared = compared,
    };

    private static Dictionary<string, long> ValuesOf(Design design, IReadOnlyDictionary<string, decimal> with, Faults faults)
    {
        var set = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var (name, written) in with)
        {
            var at = $"#/with/{name}";
            if (FindParameter(design, name, at, faults) is not { } parameter || ToValue(parameter, written, at, faults) is not { } value)
            {
                continue;
            }

            if (parameter.WhyNot(value, design.FormulaUnit) is { } why)
            {
                faults.Add(at, why);
            }

            set[name] = value;
        }

        return set;
    }

    /// <summary>The parameter of a name; null, with a fault, if the design has none.</summary>
    public static Parameter? FindParameter(Design design, string name, string at, Faults faults)
    {
        var found = design.Parameters.FirstOrDefault(parameter => parameter.Name == name);
        if (found is null)
        {
            faults.Add(at, $"The design has no parameter '{name}'. {Known(name, [.. design.Parameters.Select(known => known.Name)], "It has none.")}");
        }

        return found;
    }

    /// <summary>A number of the wire as the parameter counts; null, with a fault, if it is none.</summary>
    public static long? ToValue(Parameter parameter, decimal written, string at, Faults faults)
    {
        if (parameter.Kind == ParameterKind.Length && Length.TryFromMillimetres(written, out var length))
        {
            return length.Ticks;
        }

        if (parameter.Kind == ParameterKind.Count && decimal.IsInteger(written) && Math.Abs(written) <= Limits.MaxQuantity)
        {
            return (long)written;
        }

        faults.Add(at, parameter.Kind == ParameterKind.Length ? "It is no length: give millimetres, a multiple of 0.003125." : $"It is a count: give a whole number up to {Limits.MaxQuantity}.");
        return null;
    }

    private static Dictionary<string, string> AnswersOf(Design design, IReadOnlyDictionary<string, string> choose, Faults faults)
    {
        var answers = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, answer) in choose)
        {
            var at = $"#/choose/{name}";
            if (design.Choices.FirstOrDefault(choice => choice.Name == name) is not { } choice)
            {
                faults.Add(at, $"The design has no choice '{name}'. {Known(name, [.. design.Choices.Select(known => known.Name)], "It has none.")}");
            }
            else if (!choice.Answers.Contains(answer, StringComparer.Ordinal))
            {
                faults.Add(at, $"'{answer}' is no answer to '{name}'. {Known(answer, choice.Answers, "")}");
            }
            else
            {
                answers[name] = answer;
            }
        }

        return answers;
    }

    private static string Known(string written, IReadOnlyList<string> names, string none) => Spelling.Nearest(written, names) is { } near ? $"Did you mean {near}?"
        : names.Count > 0 ? $"Give one of {string.Join(", ", names)}."
        : none;

    // What a pointer such as #/parts/2/size is called by its maker.
    private static string Told(Design design, string pointer)
    {
        var path = pointer.Split('/');
        IReadOnlyList<string> names = path.Length < 3 ? [] : path[1] switch
        {
            "parts" => [.. design.Parts.Select(part => part.Name)],
            "panels" => [.. design.Panels.Select(panel => panel.Name)],
            "items" => [.. design.Items.Select(item => item.Name)],
            _ => [],
        };
        return names.Count > 0 ? string.Join(", ", [names[int.Parse(path[2], System.Globalization.CultureInfo.InvariantCulture)], .. path[3..]])
            : path.Length == 3 ? path[2]
            : design.Name;
    }

    private static decimal Rounded(Ratio amount) => (decimal)((amount * Ratio.Of(1_000_000)).Nearest()) / 1_000_000m;
}
