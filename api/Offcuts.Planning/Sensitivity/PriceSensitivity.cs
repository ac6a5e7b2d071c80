using Offcuts.Domain;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Sensitivity;

/// <summary>
/// What one more offcut would save. The duals of the linear program over what the plan makes say what each piece costs at the margin; the best
/// pattern of a board at these prices is what the program would pay for the board. That overrates single boards, because whoever buys buys whole ones:
/// the best of them are planned for again, each as one more board in stock.
/// </summary>
internal sealed class PriceSensitivity(PlanningProblem problem, Plan plan, PlanLimits limits, Solving solve, CancellationToken cancellation)
{
    private const int MostRounds = 200;

    /// <summary>The part of the time for the linear program.</summary>
    private const double ProgramShare = 0.2;

    /// <summary>The boards that save most, those that save alike by their size, the smallest first.</summary>
    /// <param name="most">How many are planned for.</param>
    public IReadOnlyList<WorthHaving> Find(int most)
    {
        var clock = new SearchClock(limits.Budget, cancellation);
        var promising = Estimated(new SearchClock(limits.Budget * ProgramShare, cancellation))
            .Where(each => each.Estimate > Money.Zero).OrderByDescending(each => each.Estimate.MinorUnits).ThenBy(each => Area(each.Board)).Take(most).ToList();
        var found = new List<WorthHaving>();
        foreach (var (index, (board, estimate)) in promising.Index())
        {
            if (clock.IsOver)
            {
                break;
            }

            var share = clock.Left / (promising.Count - index);
            found.Add(new WorthHaving(board.Kind, board.Species, board.Surface, board.Size, estimate, Saves(board, share)));
        }

        return [.. found.OrderByDescending(each => each.Saves.MinorUnits).ThenBy(each => (each.Size.Length * each.Size.Width).SquareMillimetres)];
    }

    private static decimal Area(Board board) => (board.Size.Length * board.Size.Width).SquareMillimetres;

    private Money Saves(Board board, TimeSpan budget)
    {
        var other = solve(
            problem with { Stock = [.. problem.Stock, board], Builds = [], Earlier = new EarlierPlan(problem, plan) }, limits with { Budget = budget }, null, cancellation);
        // What is cheaper without using the board is a better plan, and nothing that the board saves.
        var counts = other.Boards.Any(cut => cut.BoardId == board.Id)
            && other.MissingCount <= plan.MissingCount && other.Outlay < plan.Outlay;
        return counts ? plan.Outlay - other.Outlay : Money.Zero;
    }

    private List<(Board Board, Money Estimate)> Estimated(SearchClock clock)
    {
        var boards = Candidates.Of(problem, plan);
        var wanted = Made();
        var counted = problem with { Stock = CountedStock.Of(problem) };
        var model = new ModelBuilder(counted).Build(wanted);
        if (boards.Count == 0 || model.Rows.Count == 0)
        {
            return [];
        }

        using var master = new MasterProblem(model, CostWeights.MoneyOnly);
        var need = new Remainder(model).Need;
        ColumnGeneration.Run(model, master, new PatternPricer(model), CostWeights.MoneyOnly, need, clock, MostRounds, _ => true);
        var prices = Pricing.PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0);

        // The rows depend on what is made alone, so the prices are those of the model with the boards as well.
        var with = new ModelBuilder(counted with { Stock = [.. counted.Stock, .. boards] }).Build(wanted);
        var values = new PatternPricer(with).BestValues(prices);
        return [.. boards.Select(board => (board, new Money((long)Math.Floor(Math.Min(
            plan.Outlay.MinorUnits, with.Boards.Where(type => type.Boards.Any(each => each.Id == board.Id)).Select(type => values[type.Index]).DefaultIfEmpty(0).Max())))))];
    }

    /// <summary>What the plan makes, of the species of which it makes it.</summary>
    private Wanted Made()
    {
        var lacking = plan.Missing.ToLookup(missing => missing.Name, missing => missing.Quantity, StringComparer.Ordinal);
        var species = plan.Boards.SelectMany(board => board.Pieces.Select(piece => (Name: piece is PartPiece part ? part.Part : (piece as StripPiece)?.Panel, board.Species)))
            .Where(each => each.Name is not null).ToLookup(each => each.Name!, each => each.Species, StringComparer.Ordinal);
        var all = Wanted.All(problem.Design);
        return new Wanted(
            [.. all.Parts.Select(want => want with { Quantity = want.Quantity - lacking[want.Part.Name].Sum(), Species = [.. species[want.Part.Name].Distinct()] }).Where(want => want.Quantity > 0)],
            [.. all.Panels.Select(want => want with
            {
                Copies = [.. want.Copies.Take(want.Copies.Count - lacking[want.Panel.Name].Sum())], Species = [.. species[want.Panel.Name].Distinct()],
            }).Where(want => want.Copies.Count > 0)]);
    }
}
