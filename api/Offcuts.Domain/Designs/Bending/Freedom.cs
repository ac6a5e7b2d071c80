namespace Offcuts.Domain;

/// <summary>A value that follows from others by a formula.</summary>
/// <param name="Name">The name that formulas use.</param>
/// <param name="Formula">How it follows, for instance <c>top - 6in</c>.</param>
public sealed record DerivedValue(string Name, string Formula);

/// <summary>Something that can be built in one of several ways: a solid back or one of sheet, with a drawer or without.</summary>
/// <param name="Name">Its name, unique in the design.</param>
/// <param name="Answers">The ways; the earlier is preferred where the money is equal.</param>
public sealed record Choice(string Name, IReadOnlyList<string> Answers)
{
    /// <summary>The answer that makes an optional part.</summary>
    public const string Yes = "yes";

    /// <summary>The answer that leaves an optional part out.</summary>
    public const string No = "no";

    /// <summary>With something or without; with it is preferred if it costs no more.</summary>
    public static Choice Optional(string name) => new(name, [Yes, No]);
}

/// <summary>A part is made only with this answer to a choice.</summary>
/// <param name="Choice">Name of the choice.</param>
/// <param name="Answer">The answer.</param>
public sealed record Condition(string Choice, string Answer);

/// <summary>What of a part, panel or item a formula may give.</summary>
public enum Measure
{
    /// <summary>Finished thickness, the least where there is a tolerance.</summary>
    Thickness,

    /// <summary>Finished width, the least where there is a tolerance.</summary>
    Width,

    /// <summary>Finished length, the least where there is a tolerance.</summary>
    Length,

    /// <summary>The largest thickness that will do.</summary>
    MostThickness,

    /// <summary>The largest width that will do.</summary>
    MostWidth,

    /// <summary>The largest length that will do.</summary>
    MostLength,

    /// <summary>How many, the fewest where more will do.</summary>
    Quantity,

    /// <summary>The most that will do.</summary>
    MostQuantity,

    /// <summary>Spare blanks.</summary>
    Spares,

    /// <summary>The span that pieces share.</summary>
    Span,

    /// <summary>The narrowest strip of a panel.</summary>
    NarrowestStrip,

    /// <summary>The widest strip of a panel.</summary>
    WidestStrip,
}

/// <summary>What a part, panel or item leaves open.</summary>
public sealed record MemberFreedom
{
    /// <summary>Nothing.</summary>
    public static MemberFreedom None { get; } = new();

    /// <summary>The measures that follow from parameters; where there is one, the member's own number is what it gives at the defaults.</summary>
    public IReadOnlyDictionary<Measure, string> Formulas { get; init; } = new Dictionary<Measure, string>();

    /// <summary>The answers without which it is not made.</summary>
    public IReadOnlyList<Condition> Conditions { get; init; } = [];

    /// <summary>Whether an earlier species of its list is preferred to a later one where the money is equal.</summary>
    public bool SpeciesInOrder { get; init; }

    /// <summary>Whether nothing is left open.</summary>
    public bool IsNone => Formulas.Count == 0 && Conditions.Count == 0 && !SpeciesInOrder;
}
