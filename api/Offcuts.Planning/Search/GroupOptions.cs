using Offcuts.Domain;
using Offcuts.Planning.Explaining;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>A species and batches that things which must agree are made of; null where that stays open.</summary>
/// <param name="Species">The species.</param>
/// <param name="Batches">The batch, or the few.</param>
/// <param name="Layers">Of how many layers a part's laminated pieces are.</param>
/// <param name="IsPreference">Whether it only narrows a choice that is listed as well.</param>
internal readonly record struct WoodChoice(string? Species, IReadOnlyList<string>? Batches, int? Layers = null, bool IsPreference = false);

/// <summary>What there is to choose from for a finish group or a panel whose wood must agree.</summary>
internal sealed class GroupOptions(PlanningProblem problem)
{
    /// <summary>Of the batches that a group had better come from, so many are tried: those with most wood.</summary>
    private const int MostPreferred = 6;

    /// <summary>Of every number of batches above one, so many sets are tried where a single group asks for the fewest: the larger the number, the fewer.</summary>
    private static readonly int[] MostSets = [4, 3, 2, 1];

    /// <summary>A batch that nothing is of, for a group that must be of one where no wood has any.</summary>
    private const string NoBatch = "none";

    private readonly MissingReasons reasons = new(problem);
    private readonly Dictionary<string, FinishGroup> groups = problem.Design.Groups.ToDictionary(group => group.Name, StringComparer.Ordinal);

    public static string OfGroup(string name) => "group " + name;

    public static string OfPanel(string name) => "panel " + name;

    public static string OfPart(string name) => "part " + name;

    public static string OfLayers(string name) => "layers " + name;

    /// <summary>Everything for which something is to be chosen.</summary>
    public List<string> Keys() => [.. problem.Design.Parts.Select(part => part.Group).Concat(problem.Design.Panels.Select(panel => panel.Group))
        .OfType<string>().Where(group => IsOfOneSpecies(group) || groups[group].Batch == BatchChoice.Fewest).Select(OfGroup)
        .Concat(problem.Design.Panels.Where(panel => panel.Group is null || !IsOfOneSpecies(panel.Group)).Select(panel => OfPanel(panel.Name)))
        .Concat(problem.Design.Parts.Where(part => part is { Layers: > 1, Species.Count: > 1 } && (part.Group is null || !IsOfOneSpecies(part.Group)))
            .Select(part => OfPart(part.Name)))
        .Concat(problem.Design.Parts.Where(part => part.Layers > 2).Select(part => OfLayers(part.Name)))
        .Distinct()];

    /// <summary>The choices that give most of what the key stands for, the ones with most wood in stock first.</summary>
    public List<WoodChoice> Of(string key)
    {
        if (problem.Design.Parts.FirstOrDefault(part => part.Layers > 2 && OfLayers(part.Name) == key) is { } layered)
        {
            return LayerCounts(layered);
        }

        var group = groups.Values.FirstOrDefault(group => OfGroup(group.Name) == key);
        List<Part> parts = [.. problem.Design.Parts.Where(part => group is null ? OfPart(part.Name) == key : part.Group == group.Name)];
        List<Panel> panels = [.. problem.Design.Panels.Where(panel => group is null ? OfPanel(panel.Name) == key : panel.Group == group.Name)];
        var accepted = parts.SelectMany(part => part.Species).Concat(panels.SelectMany(panel => panel.Species)).Distinct().ToList();
        if (group?.Batch == BatchChoice.One)
        {
            return Best(Batches(accepted).DefaultIfEmpty(new WoodChoice(accepted.FirstOrDefault(), [NoBatch])), parts, panels);
        }

        var open = group is { OneSpecies: false } ? [default] : Best(accepted.Select(species => new WoodChoice(species, null)), parts, panels);
        if (group?.Batch != BatchChoice.Fewest)
        {
            return open;
        }

        // Fewer batches are only better if they give as much of the group as all do.
        var most = open.Select(choice => Served(choice, parts, panels)).DefaultIfEmpty(0).Max();
        var useful = Batches(accepted).Where(choice => Served(choice, parts, panels) > 0)
            .OrderByDescending(InStock).ThenBy(choice => choice.Batches![0], StringComparer.Ordinal).ToList();
        var sets = groups.Values.Count(other => other.Batch == BatchChoice.Fewest) > 1 ? []
            : useful.GroupBy(choice => group.OneSpecies ? choice.Species : null).SelectMany(Sets);
        return [.. open, .. useful.Where(GivesAll).Take(MostPreferred).Concat(sets.Where(GivesAll)).Select(choice => choice with { IsPreference = true })];

        bool GivesAll(WoodChoice choice) => Served(choice, parts, panels) == most;
    }

    /// <summary>Sets of two, three and so on of the batches with most wood.</summary>
    private static IEnumerable<WoodChoice> Sets(IGrouping<string?, WoodChoice> useful) => MostSets.Index()
        .SelectMany(sets => Sets([.. useful.Take(MostPreferred)], sets.Index + 2).Take(sets.Item)).Select(set => new WoodChoice(useful.Key, set));

    /// <summary>Sets of so many of the batches, those of the first ones first.</summary>
    private static IEnumerable<List<string>> Sets(List<WoodChoice> batches, int count)
    {
        if (count == 0)
        {
            yield return [];
        }

        for (var last = count - 1; count > 0 && last < batches.Count; last++)
        {
            foreach (var others in Sets(batches[..last], count - 1))
            {
                yield return [.. others, .. batches[last].Batches!];
            }
        }
    }

    /// <summary>The numbers of layers for which some board or offer gives a layer; at least one.</summary>
    private List<WoodChoice> LayerCounts(Part part)
    {
        var useful = Enumerable.Range(2, part.Layers - 1).Where(count => reasons.GivesLayer(part, count)).ToList();
        return [.. useful.DefaultIfEmpty(2).Select(count => new WoodChoice(null, null, count))];
    }

    private bool IsOfOneSpecies(string group) => groups[group].OneSpecies || groups[group].Batch == BatchChoice.One;

    /// <summary>Every batch of an accepted species, those of the offers too.</summary>
    private IEnumerable<WoodChoice> Batches(List<string> accepted) => problem.Stock.Select(BoardClass.Of)
        .Concat(problem.Offers.Where(offer => offer.Available != 0).Select(BoardClass.Of))
        .Where(cls => cls.Batch is not null && accepted.Contains(cls.Species))
        .Select(cls => (cls.Species, cls.Batch)).Distinct().Select(each => new WoodChoice(each.Species, [each.Batch!]));

    private List<WoodChoice> Best(IEnumerable<WoodChoice> choices, List<Part> parts, List<Panel> panels)
    {
        var served = choices.Select(choice => (Choice: choice, Count: Served(choice, parts, panels))).ToList();
        var most = served.Select(option => option.Count).DefaultIfEmpty(0).Max();
        var best = served.Where(option => option.Count == most).Select(option => option.Choice).ToList();
        return most == 0 ? [.. best.Take(1)]
            : [.. best.OrderByDescending(InStock).ThenBy(choice => choice.Species, StringComparer.Ordinal).ThenBy(choice => choice.Batches?[0], StringComparer.Ordinal)];
    }

    /// <summary>How many of the parts and panels can be had.</summary>
    private int Served(WoodChoice choice, List<Part> parts, List<Panel> panels) =>
        parts.Count(part => Chosen(choice, part.Species) is { } species && reasons.OfPart(part, 1, species, choice.Batches) is null)
        + panels.Count(panel => Chosen(choice, panel.Species) is { } species && reasons.OfPanel(panel, 1, species, choice.Batches) is null);

    private static IReadOnlyList<string>? Chosen(WoodChoice choice, IReadOnlyList<string> accepted) =>
        choice.Species is not { } species ? accepted : accepted.Contains(species) ? [species] : null;

    private decimal InStock(WoodChoice choice) => problem.Stock
        .Where(board => board.Species == choice.Species && (choice.Batches is null || choice.Batches.Contains(BoardClass.Of(board).Batch)))
        .Sum(board => BoardMeasure.BoardFeet(board.Size) * board.Quantity);
}
