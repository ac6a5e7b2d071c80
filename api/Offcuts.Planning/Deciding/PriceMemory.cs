using System.Collections.Concurrent;
using Offcuts.Planning.Bounds;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Deciding;

/// <summary>
/// What things were worth in problems before. A bound may be taken at any prices (<see cref="SafeBound"/>), so those of a problem with other sizes
/// often prove at once what would take a linear program. May be used by several threads.
/// </summary>
internal sealed class PriceMemory
{
    /// <summary>Older prices are of problems further away.</summary>
    private const int MostLists = 4;

    private readonly ConcurrentDictionary<string, IReadOnlyList<IReadOnlyDictionary<string, double>>> known = new(StringComparer.Ordinal);

    /// <summary>Keeps the prices of a component: duals for whole rows.</summary>
    public void Keep(Wanted component, PlanningModel model, IEnumerable<double[]> duals)
    {
        foreach (var list in duals.Where(list => list.Length == model.Rows.Count))
        {
            var prices = model.Rows.GroupBy(NameOf).ToDictionary(rows => rows.Key, rows => rows.Average(row => PerUnit(row, list[row.Index])), StringComparer.Ordinal);
            known.AddOrUpdate(KeyOf(component), [prices], (_, before) => [prices, .. before.Take(MostLists - 1)]);
        }
    }

    /// <summary>The best bound on the money of a component that the prices known for it give; 0 if none are.</summary>
    /// <param name="component">What is wanted of it.</param>
    /// <param name="model">Its model.</param>
    /// <param name="enough">A bound above this is as good as any.</param>
    public double Bound(Wanted component, PlanningModel model, double enough)
    {
        if (!known.TryGetValue(KeyOf(component), out var lists))
        {
            return 0;
        }

        var (best, pricer, need) = (0.0, new PatternPricer(model), model.Rows.Select(row => row.Needed).ToArray());
        foreach (var prices in lists)
        {
            double[] duals = [.. model.Rows.Select(row => prices.GetValueOrDefault(NameOf(row)) * Units(row))];
            best = Math.Max(best, SafeBound.Of(model, pricer, PriceList.FromDuals(model.Rows, duals, need, 0)));
            if (best > enough)
            {
                break;
            }
        }

        return best;
    }

    // Prices serve for any number of pieces.
    private static string KeyOf(Wanted component) => string.Join('\n', [
        .. component.Parts.Select(want => $"{want.Part.Name}: {string.Join(' ', want.Species)} in {string.Join(',', want.LayerCounts)}"),
        .. component.Panels.Select(want => $"panel {want.Panel.Name}: {string.Join(' ', want.Species)}")]);

    // The sub-panels of a panel have one price: their number may change with the panel's width.
    private static string NameOf(DemandRow row) => row.Name;

    private static double PerUnit(DemandRow row, double dual) => dual / Units(row);

    // The dual of a part's row is of one piece, that of a strip's row of all its width.
    private static double Units(DemandRow row) => row is StripRow ? row.Needed : 1;
}
