using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// The strips of a pattern that lie side by side in one room, and how much net width they share: as long as they take no more than that together and each stays
/// within its panel's limits, each may be wider or narrower than it is.
/// </summary>
/// <param name="Area">Which area of the pattern.</param>
/// <param name="Strips">The strips.</param>
/// <param name="Room">All the net width that they have, in ticks.</param>
internal sealed record StripRoom(int Area, IReadOnlyList<FreeStrip> Strips, long Room)
{
    /// <summary>The rooms of a pattern: sections when crosscutting first, areas when ripping first.</summary>
    public static List<StripRoom> Of(PlanningModel model, Pattern pattern)
    {
        var rooms = new List<StripRoom>();
        foreach (var (at, area) in pattern.Areas.Index())
        {
            if (area.RipFirst)
            {
                var used = area.Sections.Sum(section => section.First + model.Kerf);
                var rips = area.Sections.Index().Where(entry => entry.Item.Bands.All(band => band.Strip is not null))
                    .Select(entry => Free(area, entry.Index, 0, [.. entry.Item.Bands.Select(band => band.Strip!.Value)]));
                Add(at, [.. rips], area.Area.Across + model.Kerf - used);
                continue;
            }

            foreach (var (index, section) in area.Sections.Index())
            {
                var used = section.Bands.Sum(band => band.Second + model.Kerf);
                var strips = section.Bands.Index().Where(entry => entry.Item.Strip is not null).Select(entry => Free(area, index, entry.Index, [entry.Item.Strip!.Value]));
                Add(at, [.. strips], area.Area.Across + model.Kerf - used);
            }
        }

        return rooms;

        void Add(int area, List<FreeStrip> strips, long spare)
        {
            if (strips.Count > 0)
            {
                rooms.Add(new StripRoom(area, strips, strips.Sum(strip => strip.Net) + Math.Max(0, spare)));
            }
        }
    }

    private static FreeStrip Free(AreaPattern area, int section, int band, IReadOnlyList<StripCut> cuts)
    {
        var family = Array.Find(area.Area.Profile.Families, family => family.Rows.Contains(cuts[0].Row))!;
        return new FreeStrip(section, band, [.. cuts.Select(cut => cut.Row)], cuts[0].Net, family.Narrowest, Math.Max(cuts[0].Net, family.Widest));
    }

    /// <summary>The pattern with other net widths of its strips, in the order of <see cref="Of"/>: the same if none differs, else one that no earlier plan has cut.</summary>
    public static Pattern With(PlanningModel model, Pattern pattern, IReadOnlyList<StripRoom> rooms, IReadOnlyList<long> nets)
    {
        if (rooms.SelectMany(room => room.Strips).Select(strip => strip.Net).SequenceEqual(nets))
        {
            return pattern;
        }

        var areas = pattern.Areas.ToArray();
        foreach (var (at, (room, strip)) in rooms.SelectMany(room => room.Strips, (room, strip) => (room, strip)).Index())
        {
            var (area, more) = (areas[room.Area], nets[at] - strip.Net);
            if (more != 0)
            {
                areas[room.Area] = area with { Sections = [.. area.Sections.Select((section, index) => index == strip.Section ? Changed(section, area.RipFirst, strip.Band, more) : section)] };
            }
        }

        return PatternFactory.Create(model, pattern.Board, pattern.Division, areas);
    }

    private static Section Changed(Section section, bool ripFirst, int at, long more) => ripFirst
        ? new Section(section.First + more, [.. section.Bands.Select(band => band with { Strip = band.Strip!.Value with { Net = band.Strip.Value.Net + more } })])
        : section with
        {
            Bands = [.. section.Bands.Select((band, index) => index != at ? band
                : band with { Second = band.Second + more, Strip = band.Strip!.Value with { Net = band.Strip.Value.Net + more } })],
        };
}

/// <summary>A strip, or the strips that lie end to end in one rip and are equally wide.</summary>
/// <param name="Section">Which section of its area.</param>
/// <param name="Band">Which band of the section; 0 for a rip.</param>
/// <param name="Rows">The rows that its pieces serve.</param>
/// <param name="Net">Its net width, in ticks.</param>
/// <param name="Narrowest">The least that it may be.</param>
/// <param name="Widest">The most.</param>
internal readonly record struct FreeStrip(int Section, int Band, IReadOnlyList<int> Rows, long Net, long Narrowest, long Widest);
