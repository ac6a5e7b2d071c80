using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>A plan of several builds, as it is told for each of them.</summary>
internal static class TogetherMapping
{
    public static TogetherRecord ToRecord(Plan plan, PlanningProblem problem)
    {
        var currency = problem.Shop.Currency;
        var missing = plan.MissingCount;
        // What makes less costs less: only orders that make as much are compared.
        var least = plan.OneAfterAnother.Where(order => order.MissingPieces <= missing).Select(order => order.Outlay).DefaultIfEmpty(plan.Outlay).Min();
        return new TogetherRecord(
            [.. BuildShare.Of(problem, plan).Select(share => new BuildShareRecord(
                share.Build, share.Boards, share.Pieces, share.Missing, InCurrency(share.WoodCost), InCurrency(share.ItemCost)))],
            [.. plan.OneAfterAnother.Select(order => new BuildOrderRecord(order.Builds, order.MissingPieces, InCurrency(order.TotalCost)))],
            // An order may make as much in all, but less of the more important builds.
            InCurrency(least > plan.Outlay ? least - plan.Outlay : Money.Zero),
            [.. Setup.Of(problem, plan).Select(setup => new SetupRecord(Words.Of(setup.Kind), setup.Setting.Millimetres, setup.Parts))]);

        decimal InCurrency(Money money) => MoneyText.ToDecimal(money, currency);
    }
}
