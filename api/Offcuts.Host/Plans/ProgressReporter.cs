using System.Diagnostics;
using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Stores how far a search is, no more often than a person could follow.</summary>
/// <param name="id">Id of the run.</param>
/// <param name="store">Where it goes.</param>
/// <param name="currency">The shop's currency.</param>
/// <param name="audited">Audits a plan and gives it as JSON.</param>
internal sealed class ProgressReporter(string id, PlanStore store, string currency, Func<Plan, string> audited)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    private long? last;
    private Plan? better;

    public void Report(PlanProgress progress)
    {
        better = progress.Improved ?? better;
        if (last is { } before && Stopwatch.GetElapsedTime(before) < Pause)
        {
            return;
        }

        store.Advance(
            id,
            Write(progress.Elapsed, progress.Cost, progress.Bound, currency),
            better is null ? null : audited(better));
        better = null;

        // The first plan is told at once, so the pause begins with it.
        last = progress.Cost is null ? null : Stopwatch.GetTimestamp();
    }

    /// <summary>Where the search ended.</summary>
    public static string Last(Plan plan, string currency) => Write(plan.Run.Elapsed, plan.Outlay, plan.WoodBound, currency);

    private static string Write(TimeSpan elapsed, Money? cost, Money bound, string currency) => JsonSerializer.Serialize(
        new PlanProgressRecord(
            ResultMapping.Milliseconds(elapsed),
            cost is { } money ? MoneyText.ToDecimal(money, currency) : null,
            MoneyText.ToDecimal(bound, currency),
            cost is { } known ? Gap(known, bound) : null),
        WireJson.Default.PlanProgressRecord);

    private static decimal Gap(Money cost, Money bound) =>
        cost.MinorUnits == 0 ? 0m : decimal.Round((decimal)(cost - bound).MinorUnits / cost.MinorUnits, 6);
}
