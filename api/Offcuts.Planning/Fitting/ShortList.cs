using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Fitting;

/// <summary>
/// The few boards from which a design can probably be built for nothing: enough of them by area, the smallest first. A plan that they suffice for is as
/// cheap as any from the whole rack, and found in a fraction of the time; where they do not, nothing is lost but that.
/// </summary>
/// <param name="design">The design.</param>
/// <param name="rows">Its rows.</param>
/// <param name="sources">What can be cut from what.</param>
/// <param name="boards">The boards that it can touch.</param>
internal sealed class ShortList(Design design, List<DemandRow> rows, RowSources sources, IReadOnlyList<FitPiece> boards)
{
    /// <summary>So much of a board's area is counted on for pieces; the rest goes into kerfs, ends and what does not fit.</summary>
    private const double Filled = 0.6;

    /// <summary>So many boards more for each row, so that a first plan has some choice.</summary>
    private const int Spare = 2;

    private readonly FitPiece[] bySize = [.. boards.OrderBy(piece => piece.Area).ThenBy(piece => piece.Board!.Id, StringComparer.Ordinal)];

    /// <summary>The boards; null if the rack will not do by area, or where wood must agree in more than its species.</summary>
    public List<Board>? Pick()
    {
        if (design.Groups.Any(group => group.Batch != BatchChoice.Any))
        {
            return null;
        }

        var left = bySize.Select(piece => piece.Area * piece.Quantity * Filled).ToArray();
        var chosen = new bool[bySize.Length];
        var species = Agreed();
        foreach (var row in rows.OrderByDescending(row => row is PartRow part ? part.Length.Ticks : ((StripRow)row).Length.Ticks).ThenBy(row => row.Index))
        {
            if (!Take(row, species.GetValueOrDefault(KeyOf(row)), left, chosen))
            {
                return null;
            }
        }

        return [.. bySize.Where((_, at) => chosen[at]).Select(piece => piece.Board!)];
    }

    private bool Take(DemandRow row, string? species, double[] left, bool[] chosen)
    {
        var (needed, spare) = ((double)row.Needed, Spare);
        for (var at = 0; at < bySize.Length && spare > 0; at++)
        {
            var piece = bySize[at];
            if ((species is not null && piece.Class.Species != species) || sources.LeastArea(row.Index, piece) is not { } each)
            {
                continue;
            }

            if (needed <= 0)
            {
                spare -= chosen[at] ? 0 : 1;
                chosen[at] = true;
                continue;
            }

            // One piece may take nearly all of a board.
            var count = Math.Min(needed, chosen[at] ? Math.Floor(left[at] / each) : Math.Max(1, Math.Floor(left[at] / each)));
            if (count > 0)
            {
                (chosen[at], left[at], needed) = (true, left[at] - (count * each), needed - count);
            }
        }

        return needed <= 0;
    }

    /// <summary>What must agree in its species: a group that asks for it, else the rows of a panel, or of a part that may be laminated.</summary>
    private string KeyOf(DemandRow row)
    {
        var group = design.Parts.FirstOrDefault(part => part.Name == row.Name)?.Group ?? design.Panels.FirstOrDefault(panel => panel.Name == row.Name)?.Group;
        return group is not null && design.Groups.First(known => known.Name == group).OneSpecies ? $"group {group}"
            : row is StripRow or PartRow { LayerCounts.Count: > 0 } ? $"member {row.Name}"
            : "";
    }

    /// <summary>For each of these the species of which there is most for all its rows.</summary>
    private Dictionary<string, string> Agreed() => rows.Where(row => KeyOf(row).Length > 0).GroupBy(KeyOf).ToDictionary(
        agreed => agreed.Key,
        agreed => agreed.First().Species.Where(species => agreed.All(row => row.Species.Contains(species))).DefaultIfEmpty("")
            .MaxBy(species => agreed.Min(row => bySize.Where(piece => piece.Class.Species == species && sources.LeastArea(row.Index, piece) is not null)
                .Sum(piece => piece.Area * piece.Quantity)))!,
        StringComparer.Ordinal);
}
