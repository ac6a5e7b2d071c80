using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>Takes what a component could not cover out of what is wanted and lists it as missing.</summary>
internal static class Shortage
{
    public static Scenario TakeOut(Scenario scenario, ComponentSearch component)
    {
        var missing = scenario.Missing.ToList();
        var rows = component.Model.Rows;
        var shortage = component.Best!.Short;
        var parts = scenario.Wanted.Parts.Select(want =>
        {
            var lacking = (int)rows.OfType<PartRow>().Where(row => row.Name == want.Part.Name).Sum(row => (Math.Max(0, shortage[row.Index]) + row.Units - 1) / row.Units);
            Miss(want.Part.Name, lacking);
            return want with { Quantity = want.Quantity - lacking };
        }).Where(want => want.Quantity > 0).ToList();
        var panels = scenario.Wanted.Panels.Select(want =>
        {
            var copies = rows.OfType<StripRow>().Where(row => row.Name == want.Panel.Name && shortage[row.Index] > 0)
                .Select(row => row.Copy).Distinct().Count();
            Miss(want.Panel.Name, copies);
            return want with { Copies = [.. want.Copies.Take(want.Copies.Count - copies)] };
        }).Where(want => want.Copies.Count > 0).ToList();
        return scenario with { Wanted = new Wanted(parts, panels), Missing = missing };

        void Miss(string name, int count)
        {
            if (count > 0)
            {
                var known = missing.Where(part => part.Name == name).Sum(part => part.Quantity);
                missing.RemoveAll(part => part.Name == name);
                missing.Add(new MissingPart(name, known + count, MissingReason.TooFew));
            }
        }
    }
}
