using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>What is built, what it costs and how good the plan is known to be.</summary>
internal static class SummarySection
{
    public static XElement Of(PlanDocument document)
    {
        var (plan, design) = (document.Plan, document.Problem.Design);
        return Markup.Html(
            "header", null,
            Markup.Html("h1", null, design.Name),
            Markup.Html("p", "origin", FormattableString.Invariant(
                $"Cut sheet of plan {document.PlanId}, design version {document.DesignVersion}, made {document.MadeAt:yyyy-MM-dd HH:mm}")),
            design.Description is { } description ? Markup.Html("p", null, description) : null,
            document.MadeWith is { } made ? Markup.Html("p", null, $"Made with {made}.") : null,
            Markup.Html("p", "verdict", Verdict(document)),
            WorthText.Of(plan, document.Problem.Shop.Currency) is { } worth ? Markup.Html("p", null, worth) : null,
            Markup.Html("dl", "facts", Facts(document, plan).Select(fact => Markup.Html(
                "div", null, Markup.Html("dt", null, fact.Name), Markup.Html("dd", null, fact.Value)))));
    }

    private static IEnumerable<(string Name, string Value)> Facts(PlanDocument document, Plan plan)
    {
        yield return ("To spend", Money(plan.TotalCost, document));
        yield return ("of it wood", Money(plan.WoodCost, document));
        yield return ("of it bought-in items", Money(plan.ItemCost, document));
        if (plan.ChargeCost > Domain.Money.Zero)
        {
            yield return ("of it delivery and minimum orders", Money(plan.ChargeCost, document));
        }

        yield return (plan.Outlay == plan.WoodCost ? "Wood costs at least" : "Wood, charges and further stops count at least", Money(plan.WoodBound, document));
        yield return ("Boards to cut", FormattableString.Invariant(
            $"{plan.Boards.Count(board => board.BoardId is not null)} from the rack, {plan.Boards.Count(board => board.BoardId is null)} bought"));
        if (ShareFromStock(plan) is { } share)
        {
            yield return ("Wood of the parts from the rack", FormattableString.Invariant($"{Math.Floor(share * 100):0} %"));
        }

        yield return ("Back to the rack", Leftovers(document, plan));
        yield return ("Worth of rack boards cut up", Money(plan.WorthConsumed, document));
    }

    private static string Verdict(PlanDocument document) => document.Plan.Status switch
    {
        PlanStatus.Proved => $"Proved: no plan for these parts under the same cutting rules spends less on {Bounded(document.Plan)}.",
        PlanStatus.Feasible => $"Complete. Another plan may spend less on {Bounded(document.Plan)}, but by no more than {Gap(document)}.",
        PlanStatus.Incomplete => $"Incomplete: {Words.Count(document.Plan.MissingCount, "piece is", "pieces are")} missing, see below. "
            + (document.Plan.Outlay == document.Plan.WoodBound
                ? $"Proved for the parts that can be had: no plan for them spends less on {Bounded(document.Plan)}."
                : $"For the others another plan may spend less on {Bounded(document.Plan)}, but by no more than {Gap(document)}."),
    };

    private static string Gap(PlanDocument document) => FormattableString.Invariant(
        $"{Money(document.Plan.Outlay - document.Plan.WoodBound, document)} ({Math.Ceiling(document.Plan.Gap * 1000) / 10:0.#} % of {(document.Plan.Outlay == document.Plan.WoodCost ? "the wood's cost" : "all that")})");

    // What the bound speaks of.
    private static string Bounded(Plan plan) => plan.Outlay == plan.WoodCost ? "wood" : "wood, charges and further stops";

    /// <summary>Share by volume of all blanks and strips that comes from boards the shop had; null if nothing is cut.</summary>
    private static decimal? ShareFromStock(Plan plan)
    {
        var all = plan.Boards.Sum(UsefulVolume);
        return all == 0 ? null : plan.Boards.Where(board => board.BoardId is not null).Sum(UsefulVolume) / all;
    }

    private static decimal UsefulVolume(BoardCut board) =>
        board.Pieces.Where(piece => piece is PartPiece or StripPiece).Sum(piece => Volume(board, piece));

    private static decimal Volume(BoardCut board, Piece piece) =>
        BoardMeasure.BoardFeet(new(board.Size.Thickness, piece.At.Width, piece.At.Length));

    private static string Leftovers(PlanDocument document, Plan plan)
    {
        var leftovers = plan.Boards.SelectMany(board => board.Pieces.OfType<LeftoverPiece>().Select(piece => Volume(board, piece))).ToList();
        return leftovers.Count == 0 ? "nothing"
            : $"{Words.Count(leftovers.Count, "leftover", "leftovers")}, {VolumeText.Format(leftovers.Sum(), document.Unit)}, worth {Money(plan.WorthReturned, document)}";
    }

    private static string Money(Money amount, PlanDocument document) => MoneyText.Format(amount, document.Problem.Shop.Currency);
}
