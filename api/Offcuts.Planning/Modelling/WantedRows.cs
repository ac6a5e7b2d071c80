using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Turns what is wanted into rows to cover.</summary>
internal sealed class WantedRows(Shop shop)
{
    private readonly Milling milling = new(shop);

    /// <summary>One row for the pieces of each part, one for each sub-panel of each copy of a panel; none for a panel that the machines cannot take.</summary>
    public List<DemandRow> Of(Wanted wanted)
    {
        var rows = new List<DemandRow>();
        foreach (var want in wanted.Parts.Where(want => want.Quantity > 0))
        {
            rows.Add(new PartRow(
                rows.Count, want.Part.Name, want.Part.Appearance, want.Part.Finished.Thickness, want.Species,
                want.Quantity, want.Part.Finished.Width, want.Part.Finished.Length, want.Part.Grain == Grain.Free, want.LayerCounts)
            {
                Tolerates = want.Part.Tolerates,
                Batches = want.Batches,
                Most = want.Part.Most ?? want.Part.Finished,
            });
        }

        var family = 0;
        foreach (var want in wanted.Panels.Where(want => want.Copies.Count > 0))
        {
            var (count, width) = milling.SubPanels(want.Panel);
            foreach (var copy in want.Copies)
            {
                for (var number = 1; number <= count; number++)
                {
                    // Equal shares to start from; what does not divide evenly goes to the first of them.
                    var share = Length.FromTicks((width.Ticks + count - number) / count);
                    rows.Add(new StripRow(
                        rows.Count, want.Panel.Name, want.Panel.Appearance, want.Panel.Finished.Thickness, want.Species,
                        family, copy, number, share, count == 1 ? share : shop.PlanerWidth, want.Panel.Finished.Length,
                        want.Panel.NarrowestStrip ?? shop.NarrowestStrip, want.Panel.WidestStrip ?? shop.WidestStrip)
                    {
                        Tolerates = want.Panel.Tolerates,
                        Batches = want.Batches,
                    });
                }
            }

            family++;
        }

        return rows;
    }
}
