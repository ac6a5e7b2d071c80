using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What <c>offcuts plan</c> gives once the run has ended.</summary>
internal static class PlanAnswer
{
    /// <summary>Writes the plan and its cut sheet and returns the exit code.</summary>
    /// <param name="run">The run of the command.</param>
    /// <param name="api">The API.</param>
    /// <param name="record">The planning run when it ended.</param>
    /// <param name="sheet">Where to write the cut sheet; null for a name of its own.</param>
    public static async Task<int> GiveAsync(Run run, IOffcutsApi api, PlanRecord record, string? sheet)
    {
        var plan = PlanOf(run, record);
        if (run.Json)
        {
            run.WriteJson(record, ClientJson.Default.PlanRecord);
        }
        else
        {
            new PlanView(run.Terminal, await run.UnitAsync(), plan).Write(record);
        }

        if (sheet is not null || !run.Json)
        {
            var path = sheet ?? $"{record.Design.Reference ?? "plan"}-{record.Id}.html";
            await WriteSheetAsync(run, api, record, path);
        }

        return run.Cancellation.IsCancellationRequested ? run.ExitCodeOfSignal
            : plan.Missing.Count > 0 ? ExitCode.Incomplete
            : ExitCode.Ok;
    }

    /// <summary>The plan of a run that has ended.</summary>
    /// <exception cref="CliException">There is none, and why.</exception>
    public static PlanResult PlanOf(Run run, PlanRecord record)
    {
        if (record.Failure is { } failure)
        {
            throw new CliException(failure.Code, failure.Detail);
        }

        return record.Plan ?? throw (record.State == "cancelled"
            ? new CliException(CodeOfSignal(run), "Stopped before there was a first plan.")
            : new CliException("failed", $"The run {record.Id} was {record.State} and has no plan. Ask again."));
    }

    private static string CodeOfSignal(Run run) => run.ExitCodeOfSignal == ExitCode.Terminated ? "terminated" : "interrupted";

    private static async Task WriteSheetAsync(Run run, IOffcutsApi api, PlanRecord record, string path)
    {
        var page = await api.GetCutSheetAsync(record.Id, CancellationToken.None);
        try
        {
            await Files.WriteAsync(path, page, CancellationToken.None);
        }
        catch (CliException fault)
        {
            throw new CliException(fault.Code, $"{fault.Message} The plan itself is stored: get its cut sheet with 'offcuts plans sheet {record.Id} -o FILE'.");
        }

        run.Say($"Cut sheet: {Path.GetFullPath(path)}");
    }
}
