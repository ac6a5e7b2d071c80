using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>The searches for the components of paid cores: what several choices of species have in common is searched once.</summary>
/// <param name="clock">Limits the time.</param>
/// <param name="seed">Of the dice.</param>
internal sealed class PaidCores(SearchClock clock, int seed)
{
    private readonly Dictionary<string, ComponentSearch> searches = new(StringComparer.Ordinal);

    /// <summary>The searches for what is wanted of some boards and all offers.</summary>
    /// <param name="problem">The whole problem.</param>
    /// <param name="boards">The boards, of any model of it.</param>
    /// <param name="wanted">What is wanted of them.</param>
    public List<ComponentSearch> Of(Domain.PlanningProblem problem, IEnumerable<BoardType> boards, Wanted wanted)
    {
        var owned = boards.SelectMany(board => board.Boards).Select(board => board.Id).ToHashSet(StringComparer.Ordinal);
        var ids = string.Join(' ', owned.Order(StringComparer.Ordinal));
        var builder = new ModelBuilder(problem with { Stock = [.. problem.Stock.Where(board => owned.Contains(board.Id))] });
        return [.. Components.Split(wanted, builder.Build(wanted)).Select(part =>
        {
            var key = $"{part.Key}\n{ids}";
            if (!searches.TryGetValue(key, out var search))
            {
                searches.Add(key, search = new ComponentSearch(builder.Build(part), null, null, clock, seed, () => { }));
            }

            return search;
        })];
    }
}
