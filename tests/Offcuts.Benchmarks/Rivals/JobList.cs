using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Lists what is to be made, once for each way to choose the species of finish groups and panels.</summary>
internal static class JobList
{
    private const int MostChoices = 27;

    /// <summary>The lists; none if no choice of species suits every part and panel.</summary>
    public static List<List<Job>> Of(PlanningProblem problem)
    {
        var design = problem.Design;
        var strict = design.Groups.Where(group => group.OneSpecies).Select(group => group.Name).ToHashSet(StringComparer.Ordinal);
        var members = design.Parts.Select(part => (Key: Key(part.Group), part.Species))
            .Concat(design.Panels.Select(panel => (Key: (string?)(Key(panel.Group) ?? "panel " + panel.Name), panel.Species)));
        var choices = new List<Dictionary<string, string>> { new(StringComparer.Ordinal) };
        foreach (var group in members.Where(member => member.Key is not null).GroupBy(member => member.Key!, StringComparer.Ordinal))
        {
            var common = group.Select(member => member.Species.AsEnumerable()).Aggregate((all, each) => all.Intersect(each)).ToList();
            choices = [.. choices.SelectMany(known => common.Select(species =>
                new Dictionary<string, string>(known, StringComparer.Ordinal) { [group.Key] = species })).Take(MostChoices)];
        }

        return [.. choices.Select(chosen => Jobs(problem, group => Key(group) is { } key ? [chosen[key]] : null, panel => [chosen["panel " + panel]]))];

        string? Key(string? group) => group is not null && strict.Contains(group) ? "group " + group : null;
    }

    private static List<Job> Jobs(PlanningProblem problem, Func<string?, IReadOnlyList<string>?> ofGroup, Func<string, IReadOnlyList<string>> ofPanel)
    {
        var shop = problem.Shop;
        var jobs = new List<Job>();
        foreach (var part in problem.Design.Parts)
        {
            var species = ofGroup(part.Group) ?? part.Species;
            jobs.AddRange(Enumerable.Range(1, part.Quantity).Select(copy =>
                new PartJob(part.Name, copy, species, part.Appearance, part.Finished, part.Grain == Grain.Free)));
        }

        foreach (var panel in problem.Design.Panels)
        {
            var species = ofGroup(panel.Group) ?? ofPanel(panel.Name);
            var (count, width) = Milling.SubPanels(shop, panel);
            jobs.AddRange(Enumerable.Range(1, panel.Quantity).SelectMany(copy => Enumerable.Range(1, count).Select(number => new StripJob(
                panel.Name, copy, species, panel.Appearance, panel.Finished with { Width = width }, number,
                panel.NarrowestStrip ?? shop.NarrowestStrip, panel.WidestStrip ?? shop.WidestStrip))));
        }

        return jobs;
    }
}
