using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>What can be cut from the boards of one class, apart from their length and width.</summary>
internal sealed class ClassOptions(Shop shop)
{
    private readonly Milling milling = new(shop);
    private readonly PartOptions partOptions = new(shop, new Milling(shop));

    /// <summary>The blanks, and the strips of panels, that rows take from boards of a class.</summary>
    public (BlankOption[] Blanks, StripFamily[] Families) Of(IReadOnlyList<DemandRow> rows, BoardClass cls)
    {
        var allowances = milling.Allowances(cls);
        var blanks = new List<BlankOption>();
        var strips = new List<(StripRow Row, long Widest)>();
        foreach (var row in rows)
        {
            if (!row.Species.Contains(cls.Species) || (row.Batches is { } batches && !batches.Contains(cls.Batch)) || cls.Appearance > row.Appearance)
            {
                continue;
            }

            if (row is PartRow part)
            {
                blanks.AddRange(partOptions.Of(part, cls));
            }
            else if (row is StripRow strip && cls.Kind == BoardKind.Solid && milling.SuitsThickness(cls, row.Thickness, row.MostThickness, out _))
            {
                var along = milling.StripLength(cls, strip.Thickness, strip.Length);
                var edge = allowances.Width + cls.Flattening.Crook(along);
                if (milling.WidestStrip(cls, strip.Thickness, along, strip.Narrowest + edge, strip.Widest + edge) is { } widest)
                {
                    strips.Add((strip, (widest - edge).Ticks));
                }
            }
        }

        var families = strips.GroupBy(entry => entry.Row.Family).Select(group => new StripFamily(
            [.. group.Select(entry => entry.Row.Index)], group.Max(entry => entry.Row.SubPanel),
            group.Min(entry => entry.Row.MostCounted - entry.Row.Needed),
            milling.StripLength(cls, group.First().Row.Thickness, group.First().Row.Length).Ticks,
            (allowances.Width + cls.Flattening.Crook(milling.StripLength(cls, group.First().Row.Thickness, group.First().Row.Length))).Ticks,
            group.First().Row.Narrowest.Ticks, group.First().Widest));
        return ([.. blanks], [.. families]);
    }
}
