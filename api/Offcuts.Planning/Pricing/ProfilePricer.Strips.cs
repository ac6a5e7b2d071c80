using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <content>Strips of free width: what fills the rest of a section when crosscutting first, the rest of the board when ripping first.</content>
internal sealed partial class ProfilePricer
{
    // By how many of the families, from short to long, fit into a section.
    private readonly Dictionary<int, (StripMix Mix, StripsAndLeftovers? WithLeftovers)> mixes = [];
    private long mostFree;

    // When ripping first, of all families, with as many in a row as the open length holds.
    private StripMix? openMix;
    private StripsAndLeftovers? openRest;

    private void OpenRips(long mostFirst)
    {
        if (view.RipFirst && fills.Length > 0)
        {
            var rips = Enumerable.Range(0, fills.Length).Select(family => (Family: family, Times: PiecesInRow(family))).ToList();
            openMix = new StripMix(rips.Select(rip => (rip.Family, fills[rip.Family], rip.Times)), cutWeight, mostFirst + view.Kerf);
            openRest = all ? WithLeftovers(rips) : null;
        }
    }

    /// <summary>How many strips of a family lie end to end in a rip of the open length.</summary>
    private int PiecesInRow(int family) => (int)((openSecond + view.Kerf) / (view.Profile.Families[family].Along + view.Kerf));

    /// <summary>Strips that fit into a section of so many cells.</summary>
    private StripMix MixOf(int section) => StripsOf(section).Mix;

    private StripsAndLeftovers RestOf(int section) => StripsOf(section).WithLeftovers!;

    private (StripMix Mix, StripsAndLeftovers? WithLeftovers) StripsOf(int section)
    {
        var count = view.FamilyFirstCells.Count(cells => cells <= section);
        if (!mixes.TryGetValue(count, out var strips))
        {
            var families = Enumerable.Range(0, fills.Length).Where(family => view.FamilyFirstCells[family] <= section).Select(family => (Family: family, Times: 1)).ToList();
            strips = (new StripMix(families.Select(each => (each.Family, fills[each.Family], each.Times)), cutWeight, mostFree), all ? WithLeftovers(families) : null);
            mixes.Add(count, strips);
        }

        return strips;
    }

    private StripsAndLeftovers WithLeftovers(IEnumerable<(int Family, int Times)> families) => new(
        [.. families.Where(each => each.Times > 0 && !fills[each.Family].IsWorthless).Select(each => (view.Profile.Families[each.Family], each.Times))],
        view.Profile, model.Kerf, prices);

    /// <summary>Strips of a best mix on a free extent, within what is still needed; takes them off it.</summary>
    private List<(StripFamily Family, long Net, int[] Rows)> Lay(StripMix mix, long free, long[] need)
    {
        var laid = new List<(StripFamily, long, int[])>();
        var (left, value) = (free, 0.0);
        foreach (var (family, times, extent) in mix.Choose(free))
        {
            // A mix rounded to a grid may count on more room than there is.
            foreach (var (net, rows) in fills[family].Lay(Math.Min(extent, left), times, need, out var brought))
            {
                laid.Add((view.Profile.Families[family], net, rows));
                left -= net + view.Profile.Families[family].Edge + view.Kerf;
                value += brought - (rows.Length * cutWeight);
            }
        }

        LeftOut |= value < mix.Value(free) - Rounding;
        return laid;
    }
}
