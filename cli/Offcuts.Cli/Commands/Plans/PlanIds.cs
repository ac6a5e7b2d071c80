using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>Plans as people name them on the command line.</summary>
internal static class PlanIds
{
    /// <summary>The id that is meant: <c>last</c> is the newest plan that is to be built, not one that only told what would be. No id has an l or an s, so the word hides none.</summary>
    /// <exception cref="CliException">There is no plan yet.</exception>
    public static async Task<string> FindAsync(Run run, IOffcutsApi api, string given)
    {
        if (!given.Equals("last", StringComparison.OrdinalIgnoreCase))
        {
            return given;
        }

        var page = await api.ListPlansAsync(new PlanQuery { Purpose = "build", Limit = 1 }, run.Cancellation);
        return page.Items is [var newest, ..]
            ? newest.Id
            : throw new CliException("not-found", "There is no plan yet. Make one with 'offcuts plan DESIGN'.");
    }
}
