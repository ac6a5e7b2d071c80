using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>Starts a planning run and waits for its end, showing how far it is.</summary>
internal static class PlanRunner
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan PatienceAfterCancel = TimeSpan.FromSeconds(2);

    /// <summary>The run when it ended; after Ctrl-C it is cancelled and keeps its best plan so far.</summary>
    public static async Task<PlanRecord> RunAsync(Run run, IOffcutsApi api, PlanRequest request)
    {
        var shop = await run.ShopAsync();
        using var progress = new ProgressLine(run.Terminal, run.Get(Commands.Globals.Quiet));
        progress.Show("Planning ...");
        // Answered at once: a run that was begun must be known, so that Ctrl-C can end it.
        var record = await api.CreatePlanAsync(request, cancellationToken: CancellationToken.None);
        try
        {
            while (IsRunning(record))
            {
                await Task.Delay(BetweenLooks, run.Cancellation);
                record = await api.GetPlanAsync(record.Id, run.Cancellation);
                progress.Show(record.Progress, shop.Currency);
            }

            return record;
        }
        catch (OperationCanceledException) when (run.Cancellation.IsCancellationRequested)
        {
            progress.Show("Stopping; the best plan so far is kept ...");
            return await CancelAsync(api, record);
        }
    }

    private static async Task<PlanRecord> CancelAsync(IOffcutsApi api, PlanRecord record)
    {
        using var patience = new CancellationTokenSource(PatienceAfterCancel);
        record = await api.CancelPlanAsync(record.Id, patience.Token);
        while (IsRunning(record))
        {
            await Task.Delay(BetweenLooks, patience.Token);
            record = await api.GetPlanAsync(record.Id, patience.Token);
        }

        return record;
    }

    private static bool IsRunning(PlanRecord record) => record.State is "queued" or "planning";
}
