using Offcuts.Auditing.Boards;
using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>What the rules look at: the problem, the plan, and where each board of the plan comes from.</summary>
internal sealed class AuditScope
{
    public AuditScope(PlanningProblem problem, Plan plan, Findings findings)
    {
        Problem = problem = problem with { Stock = Estimated.Sure(problem) };
        Plan = plan;
        Findings = findings;
        Parts = ByName(problem.Design.Parts, part => part.Name);
        Panels = ByName(problem.Design.Panels, panel => panel.Name);
        Stock = ByName(problem.Stock, board => board.Id);
        Offers = ByName(problem.Offers, offer => offer.Id);
        Cuts = [.. plan.Boards.Select(cut => new SourcedCut(cut, StockOf(cut), OfferOf(cut)))];
        Prices = new Whole.Prices(Cuts);
    }

    public PlanningProblem Problem { get; }

    public Plan Plan { get; }

    public Findings Findings { get; }

    public IReadOnlyDictionary<string, Part> Parts { get; }

    public IReadOnlyDictionary<string, Panel> Panels { get; }

    public IReadOnlyDictionary<string, Board> Stock { get; }

    public IReadOnlyDictionary<string, Offer> Offers { get; }

    public IReadOnlyList<SourcedCut> Cuts { get; }

    /// <summary>What the bought boards cost.</summary>
    public Whole.Prices Prices { get; }

    private Board? StockOf(BoardCut cut) => cut.BoardId is { } id ? Stock.GetValueOrDefault(id) : null;

    private OfferSize? OfferOf(BoardCut cut) => cut.OfferId is { } id && Offers.TryGetValue(id, out var offer)
        ? OfferSize.Of(offer).FirstOrDefault(size => size.Size == cut.Size)
        : null;

    private static Dictionary<string, T> ByName<T>(IEnumerable<T> all, Func<T, string> name)
    {
        var found = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var each in all)
        {
            found.TryAdd(name(each), each);
        }

        return found;
    }
}

/// <summary>A board of the plan with where it comes from, as far as that exists.</summary>
/// <param name="Board">The board as the plan has it.</param>
/// <param name="Stock">The board in stock that it names; null if there is none.</param>
/// <param name="Offer">The size of the offer that it names; null if there is none.</param>
internal sealed record SourcedCut(BoardCut Board, Board? Stock, OfferSize? Offer)
{
    /// <summary>How good it looks; null if it comes from nowhere.</summary>
    public Appearance? Appearance => Stock?.Appearance ?? Offer?.Offer.Appearance;

    /// <summary>What is on the board in stock and what the plan says is on it.</summary>
    public IEnumerable<Defect> Defects => Board.Defects.Concat(Stock?.Defects ?? []).Distinct();

    /// <summary>Where the defects are.</summary>
    public IEnumerable<Rect> DefectAreas => Defects.Select(defect => defect.Area).Distinct();

    /// <summary>The whole face.</summary>
    public Rect Face => new(Length.Zero, Length.Zero, Board.Size.Length, Board.Size.Width);
}
