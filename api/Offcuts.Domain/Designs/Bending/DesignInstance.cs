namespace Offcuts.Domain;

/// <summary>A design brought down to what can be planned: its parameters given values, its choices answered.</summary>
/// <param name="Design">The design without formulas and conditions.</param>
/// <param name="Parts">The place in the original of each part that is made.</param>
/// <param name="Panels">The same of panels.</param>
/// <param name="Items">The same of items.</param>
public sealed record DesignInstance(Design Design, IReadOnlyList<int> Parts, IReadOnlyList<int> Panels, IReadOnlyList<int> Items)
{
    /// <summary>The design with every number that follows by a formula as it is at the defaults; formulas stay.</summary>
    /// <param name="design">The design.</param>
    /// <param name="faults">Told, with a pointer such as <c>#/parts/2/size</c>, what has no value.</param>
    public static Design AtDefaults(Design design, Action<string, string> faults) => Measured(design, new Dictionary<string, long>(), faults);

    /// <summary>The design with values in the place of its parameters; its choices stay open. What is made none times is left out.</summary>
    /// <param name="design">The design.</param>
    /// <param name="set">Values of parameters by name; for others the defaults.</param>
    /// <param name="faults">Told, with a pointer such as <c>#/parts/2/size</c>, what has no value or no sound one.</param>
    public static DesignInstance At(Design design, IReadOnlyDictionary<string, long> set, Action<string, string> faults)
    {
        var at = Measured(design, set, faults);
        return Made(at with
        {
            Parameters = [],
            Derived = [],
            Parts = [.. at.Parts.Select(part => part with { Freedom = Fixed(part.Freedom) })],
            Panels = [.. at.Panels.Select(panel => panel with { Freedom = Fixed(panel.Freedom) })],
            Items = [.. at.Items.Select(item => item with { Freedom = Fixed(item.Freedom) })],
        }, (freedom, quantity) => quantity != 0);

        static MemberFreedom Fixed(MemberFreedom freedom) => freedom with { Formulas = MemberFreedom.None.Formulas };
    }

    /// <summary>The design with one answer to a choice: what is made only with others is left out.</summary>
    public static DesignInstance With(Design design, string choice, string answer)
    {
        var made = Made(design, (freedom, _) => freedom.Conditions.All(condition => condition.Choice != choice || condition.Answer == answer));
        return made with
        {
            Design = made.Design with
            {
                Choices = [.. design.Choices.Where(each => each.Name != choice)],
                Parts = [.. made.Design.Parts.Select(part => part with { Freedom = Answered(part.Freedom) })],
                Panels = [.. made.Design.Panels.Select(panel => panel with { Freedom = Answered(panel.Freedom) })],
                Items = [.. made.Design.Items.Select(item => item with { Freedom = Answered(item.Freedom) })],
            },
        };

        MemberFreedom Answered(MemberFreedom freedom) => freedom with { Conditions = [.. freedom.Conditions.Where(condition => condition.Choice != choice)] };
    }

    /// <summary>The same after a further step, whose places are those of this one's members.</summary>
    public DesignInstance Then(DesignInstance next) => new(
        next.Design, [.. next.Parts.Select(at => Parts[at])], [.. next.Panels.Select(at => Panels[at])], [.. next.Items.Select(at => Items[at])]);

    /// <summary>A pointer into this design as one into the original.</summary>
    public string Original(string pointer)
    {
        var path = pointer.Split('/');
        var places = path.Length < 3 ? null : path[1] switch
        {
            "parts" => Parts,
            "panels" => Panels,
            "items" => Items,
            _ => null,
        };
        if (places is not null && int.TryParse(path[2], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var index))
        {
            path[2] = places[index].ToString(System.Globalization.CultureInfo.InvariantCulture);
        }

        return string.Join('/', path);
    }

    private static DesignInstance Made(Design design, Func<MemberFreedom, int, bool> isMade)
    {
        var parts = Places(design.Parts, part => isMade(part.Freedom, part.Quantity));
        var panels = Places(design.Panels, panel => isMade(panel.Freedom, panel.Quantity));
        var items = Places(design.Items, item => isMade(item.Freedom, item.Quantity));
        return new(
            design with
            {
                Parts = [.. parts.Select(at => design.Parts[at])],
                Panels = [.. panels.Select(at => design.Panels[at])],
                Items = [.. items.Select(at => design.Items[at])],
            },
            parts, panels, items);
    }

    private static List<int> Places<T>(IReadOnlyList<T> members, Func<T, bool> isMade) =>
        [.. members.Index().Where(member => isMade(member.Item)).Select(member => member.Index)];

    private static Design Measured(Design design, IReadOnlyDictionary<string, long> set, Action<string, string> faults)
    {
        var values = DesignValues.At(design, set, faults);
        // What follows from a value that has none is told there once.
        var untold = design.Derived.Select(each => each.Name).Where(name => !values.ContainsKey(name)).ToHashSet(StringComparer.Ordinal);
        return design with
        {
            Parts = [.. design.Parts.Select((part, at) => new Measuring(part.Freedom, design.FormulaUnit, values, untold, (key, detail) => faults($"#/parts/{at}/{key}", detail)).Of(part))],
            Panels = [.. design.Panels.Select((panel, at) => new Measuring(panel.Freedom, design.FormulaUnit, values, untold, (key, detail) => faults($"#/panels/{at}/{key}", detail)).Of(panel))],
            Items = [.. design.Items.Select((item, at) => new Measuring(item.Freedom, design.FormulaUnit, values, untold, (key, detail) => faults($"#/items/{at}/{key}", detail)).Of(item))],
        };
    }
}
