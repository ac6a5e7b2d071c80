using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>What the plan does otherwise than the one that it started from.</summary>
internal static class ChangesSection
{
    /// <summary>The changes; null for a plan that started from none.</summary>
    public static XElement? Of(PlanDocument document) => document is { EarlierId: { } id, Problem.Earlier: { } earlier } ? Markup.Html(
        "section", "changes", Markup.Html("h2", null, ChangeText.Heading(id)),
        Markup.Html("ul", null, Lines(document, earlier).Select(line => Markup.Html("li", null, line)))) : null;

    private static IEnumerable<string> Lines(PlanDocument document, EarlierPlan earlier)
    {
        var (plan, problem) = (document.Plan, document.Problem);
        var changes = PlanComparison.Of(earlier, problem, plan);
        var text = new ChangeText(earlier.Problem, problem);
        yield return ChangeText.Cost(MoneyText.Format(earlier.Plan.TotalCost, changes.EarlierCurrency), MoneyText.Format(plan.TotalCost, problem.Shop.Currency));
        yield return ChangeText.Kept([.. changes.Boards.Where(board => board.Kind == BoardChangeKind.Kept).Select(board => board.Board.Number)], plan.Boards.Count);
        foreach (var board in changes.Boards.Where(board => board.Kind != BoardChangeKind.Kept))
        {
            yield return ChangeText.Numbered(board.Kind == BoardChangeKind.Dropped ? null : board.Board.Number, text.Of(board));
        }

        foreach (var part in changes.Parts)
        {
            yield return text.Of(part);
        }

        foreach (var wood in changes.Purchases)
        {
            yield return ChangeText.Bought(wood.Now, wood.Earlier, text.NameOf(wood.Offer.Offer.Id), SizeText.Format(wood.Offer.Size, document.Unit));
        }
    }
}
