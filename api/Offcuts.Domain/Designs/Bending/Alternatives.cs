namespace Offcuts.Domain;

/// <summary>One way to build a design that leaves choices open.</summary>
/// <param name="Design">The design, every choice answered.</param>
/// <param name="Answers">The answers by the names of the choices.</param>
public sealed record Alternative(Design Design, IReadOnlyDictionary<string, string> Answers);

/// <summary>The ways to build a design.</summary>
public static class Alternatives
{
    /// <summary>Most ways of one design that are planned against each other.</summary>
    public const int Most = 24;

    // A list of many species in order: the first few one by one, then all.
    private const int MostInOrder = 5;

    /// <summary>
    /// All ways, the preferred first: by the first choice, then by the second and so on; a list of species in order is a choice too, after the others. A
    /// choice that makes no difference any more has its first answer.
    /// </summary>
    /// <param name="design">A design without parameters.</param>
    /// <param name="catalogue">What the species classes stand for.</param>
    /// <exception cref="OffcutsException">There are more than <see cref="Most"/>.</exception>
    public static IReadOnlyList<Alternative> Of(Design design, IReadOnlyList<Species> catalogue)
    {
        List<Alternative> known = [new(design, new Dictionary<string, string>())];
        foreach (var choice in design.Choices)
        {
            known = Few([.. known.SelectMany(way => AnswersOf(choice, way.Design).Select(answer =>
                Answered(way, choice.Name, answer, DesignInstance.With(way.Design, choice.Name, answer).Design)))]);
        }

        foreach (var list in SpeciesLists.InOrder(design))
        {
            known = Few([.. known.SelectMany(way => list.IsIn(way.Design)
                ? SpeciesLists.Answers(list, catalogue, MostInOrder).Select(answer => Answered(way, list.Name, answer.Text, list.Narrowed(way.Design, answer.Species)))
                : [way])]);
        }

        return [.. known.Select(way => way with { Design = SpeciesLists.Settled(way.Design) })];
    }

    private static IEnumerable<string> AnswersOf(Choice choice, Design design) =>
        Conditions(design).Any(condition => condition.Choice == choice.Name) ? choice.Answers : choice.Answers.Take(1);

    private static IEnumerable<Condition> Conditions(Design design) => design.Parts.SelectMany(part => part.Freedom.Conditions)
        .Concat(design.Panels.SelectMany(panel => panel.Freedom.Conditions)).Concat(design.Items.SelectMany(item => item.Freedom.Conditions));

    private static Alternative Answered(Alternative way, string choice, string answer, Design design) =>
        new(design, new Dictionary<string, string>(way.Answers, StringComparer.Ordinal) { [choice] = answer });

    private static List<Alternative> Few(List<Alternative> ways) => ways.Count <= Most ? ways : throw new OffcutsException(
        ErrorCode.Invalid,
        $"The design leaves {ways.Count} ways open or more, and at most {Most} are planned against each other: answer some of its choices.");
}
