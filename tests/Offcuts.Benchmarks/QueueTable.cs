using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Three random designs planned together from one random shop, beside the same one after another in every order.</summary>
internal static class QueueTable
{
    /// <summary>Plans so many shops, every third with enough stock, every second with terms of its suppliers.</summary>
    public static void Print(int shops, TimeSpan budget, TextWriter output)
    {
        output.WriteLine("seed      all s    together  least one after another  most  missing  status      faults");
        var (complete, dearer, saving, faults, saved) = (0, 0, 0, 0, 0m);
        foreach (var seed in Enumerable.Range(1, shops))
        {
            var problem = RandomQueues.Create(seed, seed % 2 == 0 ? ShopScale.Tiny : ShopScale.Workshop, 3, mustBuy: seed % 3 > 0);
            problem = seed % 2 == 0 ? RandomTerms.Add(problem, seed) : problem;
            var plan = Planner.Solve(problem, new PlanLimits(budget));
            var missing = plan.MissingCount;
            var orders = plan.OneAfterAnother.Where(order => order.MissingPieces <= missing).Select(order => order.Outlay.MinorUnits).DefaultIfEmpty(plan.Outlay.MinorUnits).ToList();
            var found = Auditor.Audit(problem, plan).Count;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{seed,4} {plan.Run.Elapsed.TotalSeconds,10:0.00} {plan.Outlay.MinorUnits,11} {orders.Min(),24} {orders.Max(),5} {missing,8}  {plan.Status,-10} {found,7}"));
            faults += found;
            if (missing > 0)
            {
                // What is missing is chosen by priority, so the money of an order that lacks other pieces says nothing.
                continue;
            }

            complete++;
            dearer += plan.Outlay.MinorUnits > orders.Min() ? 1 : 0;
            saving += plan.Outlay.MinorUnits < orders.Min() ? 1 : 0;
            saved += orders.Min() == 0 ? 0 : (decimal)(orders.Min() - plan.Outlay.MinorUnits) / orders.Min();
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"all: dearer {dearer}, cheaper {saving} of {complete} that have everything, saving {100 * saved / Math.Max(1, complete):0.0} % of the least in the mean; {faults} faults"));
    }
}
