using System.Globalization;
using Google.OrTools.Sat;
using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>The integer program of <see cref="TextbookAssignment"/>: the least money such that every part lies on a shelf.</summary>
internal sealed class ShelfModel
{
    private sealed record Shelf(BoolVar[] Opens, IntVar[] More);

    private sealed record Bin(ShelfBoard Board, BoolVar Used, List<Shelf> Shelves);

    private readonly PlanningProblem problem;
    private readonly CpModel model = new();
    private readonly List<Bin> bins = [];
    private readonly Dictionary<(string Group, string Species), BoolVar> groups = [];
    private readonly long unit;

    public ShelfModel(PlanningProblem problem, IReadOnlyList<ShelfBoard> boards)
    {
        this.problem = problem;
        // The largest unit in which all sizes are whole keeps the coefficients small.
        unit = boards.SelectMany(board => board.Items.SelectMany(item => new[] { item.Height, item.Run })
            .Append(board.Depth).Append(board.Length)).Aggregate(problem.Shop.Kerf.Ticks, Divisor);
        bins.AddRange(boards.Select(AddBin));
        OrderCopies();
        LimitSupplies();
        MeetDemand();
        MatchGroups();
        model.Minimize(LinearExpr.WeightedSum(bins.Select(bin => bin.Used), bins.Select(bin => bin.Board.Source.Price)));
    }

    /// <summary>Starts the solver from a two-stage assignment.</summary>
    public void Hint(IReadOnlyList<SawnBoard> start)
    {
        var values = new Dictionary<int, (IntVar Variable, long Value)>();
        foreach (var variable in bins.SelectMany(bin => bin.Shelves.SelectMany(shelf => shelf.Opens.Concat(shelf.More)).Append(bin.Used)).Concat(groups.Values))
        {
            values[variable.Index] = (variable, 0);
        }

        var taken = new Dictionary<Source, int>();
        foreach (var board in start)
        {
            var copy = taken[board.Source] = taken.GetValueOrDefault(board.Source) + 1;
            if (bins.Find(bin => bin.Board.Source == board.Source && bin.Board.Copy == copy && bin.Board.First == board.First) is { } bin)
            {
                Set(bin.Used, 1);
                HintShelves(bin, board, Set);
            }
        }

        foreach (var ((group, species), chosen) in groups)
        {
            var members = problem.Design.Parts.Where(part => part.Group == group).Select(part => part.Name).ToHashSet(StringComparer.Ordinal);
            Set(chosen, start.Any(board => board.Source.Species == species && board.PartsCut.Any(piece => members.Contains(piece.Part))) ? 1 : 0);
        }

        foreach (var (variable, value) in values.Values)
        {
            model.AddHint(variable, value);
        }

        void Set(IntVar variable, long add) => values[variable.Index] = (variable, values[variable.Index].Value + add);
    }

    /// <summary>The boards of the best assignment found; null if none was.</summary>
    public List<SawnBoard>? Solve(TimeSpan limit)
    {
        var solver = new CpSolver
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{limit.TotalSeconds:0.###},num_workers:2,random_seed:1"),
        };
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return null;
        }

        var copies = new int[problem.Design.Parts.Count];
        return [.. bins.Where(bin => solver.BooleanValue(bin.Used)).Select(bin => bin.Board.Saw(
            problem.Shop, bin.Shelves.Select(shelf => Items(solver, bin.Board, shelf)).Where(items => items.Count > 0), Create))
            .Where(board => board.Used > 0)];

        Piece Create(ShelfItem item, Rect at) => new PartPiece(at, problem.Design.Parts[item.Part].Name, ++copies[item.Part], item.Turned);
    }

    private static List<ShelfItem> Items(CpSolver solver, ShelfBoard board, Shelf shelf) =>
    [
        .. board.Items.Where((_, index) => solver.BooleanValue(shelf.Opens[index])),
        .. board.Items.SelectMany((item, index) => Enumerable.Repeat(item, (int)solver.Value(shelf.More[index]))),
    ];

    private static long Divisor(long a, long b) => b == 0 ? a : Divisor(b, a % b);

    private Bin AddBin(ShelfBoard board)
    {
        var kerf = problem.Shop.Kerf.Ticks;
        var used = model.NewBoolVar("");
        var shelves = Enumerable.Range(0, board.Shelves).Select(_ => new Shelf(
            [.. board.Items.Select(_ => model.NewBoolVar(""))],
            [.. board.Items.Select(item => model.NewIntVar(0, problem.Design.Parts[item.Part].Quantity, ""))])).ToList();
        var heights = board.Items.Select(item => (item.Height + kerf) / unit).ToList();
        var runs = board.Items.Select(item => (item.Run + kerf) / unit).ToList();
        foreach (var shelf in shelves)
        {
            model.Add(LinearExpr.Sum(shelf.Opens) <= used);
            model.Add(LinearExpr.WeightedSum(shelf.Opens.Concat(shelf.More), runs.Concat(runs)) <= (board.Length + kerf) / unit);
            for (var index = 0; index < board.Items.Count; index++)
            {
                var item = board.Items[index];
                var higher = shelf.Opens.Where((_, other) => board.Items[other].Height >= item.Height);
                model.Add(shelf.More[index] <= problem.Design.Parts[item.Part].Quantity * LinearExpr.Sum(higher));
            }
        }

        model.Add(LinearExpr.WeightedSum(shelves.SelectMany(shelf => shelf.Opens), shelves.SelectMany(_ => heights)) <= (board.Depth + kerf) / unit);
        foreach (var (above, below) in shelves.Zip(shelves.Skip(1)))
        {
            model.Add(LinearExpr.WeightedSum(above.Opens, heights) >= LinearExpr.WeightedSum(below.Opens, heights));
        }

        return new Bin(board, used, shelves);
    }

    /// <summary>Each piece is cut in one direction, and the next alike only if this one is.</summary>
    private void OrderCopies()
    {
        foreach (var alike in bins.GroupBy(bin => bin.Board.Source))
        {
            var copies = alike.GroupBy(bin => bin.Board.Copy).OrderBy(copy => copy.Key).Select(copy => LinearExpr.Sum(copy.Select(bin => bin.Used))).ToList();
            copies.ForEach(copy => model.Add(copy <= 1));
            foreach (var (one, next) in copies.Zip(copies.Skip(1)))
            {
                model.Add(one >= next);
            }
        }
    }

    private void LimitSupplies()
    {
        foreach (var supply in bins.Where(bin => bin.Board.Source.Most < int.MaxValue).GroupBy(bin => bin.Board.Source.Supply))
        {
            model.Add(LinearExpr.Sum(supply.Select(bin => bin.Used)) <= supply.First().Board.Source.Most);
        }
    }

    private void MeetDemand()
    {
        for (var part = 0; part < problem.Design.Parts.Count; part++)
        {
            model.Add(LinearExpr.Sum(On(part, _ => true)) == problem.Design.Parts[part].Quantity);
        }
    }

    /// <summary>A finish group that asks for one species lies on boards of one.</summary>
    private void MatchGroups()
    {
        foreach (var group in problem.Design.Groups.Where(group => group.OneSpecies))
        {
            var members = Enumerable.Range(0, problem.Design.Parts.Count).Where(part => problem.Design.Parts[part].Group == group.Name).ToList();
            foreach (var species in members.SelectMany(part => problem.Design.Parts[part].Species).Distinct().ToList())
            {
                var chosen = groups[(group.Name, species)] = model.NewBoolVar("");
                foreach (var part in members)
                {
                    model.Add(LinearExpr.Sum(On(part, board => board.Source.Species == species)) <= problem.Design.Parts[part].Quantity * chosen);
                }
            }

            model.Add(LinearExpr.Sum(groups.Where(entry => entry.Key.Group == group.Name).Select(entry => entry.Value)) <= 1);
        }
    }

    private IEnumerable<IntVar> On(int part, Predicate<ShelfBoard> which) =>
        from bin in bins
        where which(bin.Board)
        from shelf in bin.Shelves
        from index in Enumerable.Range(0, bin.Board.Items.Count)
        where bin.Board.Items[index].Part == part
        from variable in new[] { shelf.Opens[index], shelf.More[index] }
        select variable;

    private void HintShelves(Bin bin, SawnBoard board, Action<IntVar, long> set)
    {
        var items = bin.Board.Items;
        var shelves = board.PartsCut.GroupBy(piece => bin.Board.First == FirstCut.Rip ? piece.At.Y : piece.At.X)
            .Select(shelf => shelf.Select(piece => items.Index().First(each => problem.Design.Parts[each.Item.Part].Name == piece.Part && each.Item.Turned == piece.Turned))
                .OrderByDescending(each => each.Item.Height).Select(each => each.Index).ToList())
            .OrderByDescending(shelf => items[shelf[0]].Height).ToList();
        foreach (var (indices, shelf) in shelves.Zip(bin.Shelves))
        {
            set(shelf.Opens[indices[0]], 1);
            indices.Skip(1).ToList().ForEach(index => set(shelf.More[index], 1));
        }
    }
}
