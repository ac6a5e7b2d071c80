namespace Offcuts.Planning.Modelling;

/// <summary>
/// Splits what is wanted into components that share no board: parts of plywood and parts of walnut are planned apart. The costs
/// and the bounds of the components add up, and each bound can be rounded up on its own.
/// </summary>
internal static class Components
{
    public static List<Wanted> Split(Wanted wanted, PlanningModel model)
    {
        var parent = Enumerable.Range(0, model.Rows.Count).ToArray();
        foreach (var profile in model.Boards.Select(board => board.Profile).Distinct())
        {
            Join([.. profile.Blanks.Select(blank => blank.Row), .. profile.Families.SelectMany(family => family.Rows)]);
        }

        foreach (var panel in model.Rows.OfType<StripRow>().GroupBy(row => row.Name))
        {
            Join([.. panel.Select(row => row.Index)]);
        }

        var nameRoots = model.Rows.GroupBy(row => row.Name).ToDictionary(rows => rows.Key, rows => Root(rows.First().Index), StringComparer.Ordinal);
        return [.. nameRoots.Values.Distinct().Order().Select(root => new Wanted(
            [.. wanted.Parts.Where(want => nameRoots.TryGetValue(want.Part.Name, out var own) && own == root)],
            [.. wanted.Panels.Where(want => nameRoots.TryGetValue(want.Panel.Name, out var own) && own == root)]))];

        int Root(int row)
        {
            while (parent[row] != row)
            {
                row = parent[row];
            }

            return row;
        }

        void Join(List<int> rows)
        {
            foreach (var row in rows.Skip(1))
            {
                parent[Root(row)] = Root(rows[0]);
            }
        }
    }
}
