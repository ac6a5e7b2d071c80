using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>A place for a blank or strip in free wood; of a strip, with the net width that it counts for.</summary>
internal readonly record struct Place(FreeWood Wood, Length Along, Length Across, bool Turned, Length Net)
{
    /// <summary>All places for a job in some wood of a source; of a sub-panel so much width is still needed.</summary>
    public static IEnumerable<Place> Of(Shop shop, Source source, FreeWood wood, Job job, Length needed)
    {
        if (job is PartJob part)
        {
            foreach (var (along, across, turned) in Milling.Blanks(shop, source, part))
            {
                if (along <= wood.At.Length && across <= wood.At.Width)
                {
                    yield return new Place(wood, along, across, turned, Length.Zero);
                }
            }
        }
        else if (job is StripJob strip && Milling.Widest(shop, source, job) is { } widest)
        {
            var allowances = Milling.Allowances(shop, source);
            var along = strip.Finished.Length + allowances.Length;
            var room = Length.Min(strip.Widest, Length.Min(widest, wood.At.Width) - allowances.Width);
            var net = NetWidth(strip, room, needed);
            if (along <= wood.At.Length && net <= room)
            {
                yield return new Place(wood, along, net + allowances.Width, false, net);
            }
        }
    }

    /// <summary>How well the wood suits; less is better.</summary>
    public (double, double) Waste(Fit fit)
    {
        var x = (double)(Wood.At.Length - Along).Ticks;
        var y = (double)(Wood.At.Width - Across).Ticks;
        var area = (Wood.At.Area - (Along * Across)).SquareTicks;
        return fit switch
        {
            Fit.Area => (area, Math.Min(x, y)),
            Fit.ShortSide => (Math.Min(x, y), area),
            Fit.LongSide => (Math.Max(x, y), area),
        };
    }

    /// <summary>As wide as there is room and need, but leaving no rest that is too narrow for a strip of its own.</summary>
    private static Length NetWidth(StripJob strip, Length room, Length needed)
    {
        var net = Length.Larger(strip.Narrowest, Length.Min(room, needed));
        var rest = needed - net;
        var shorter = needed - strip.Narrowest;
        return rest > Length.Zero && rest < strip.Narrowest && shorter >= strip.Narrowest ? shorter : net;
    }
}
