using System.Globalization;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>How far a build is, as a person reads it.</summary>
internal static class BuildView
{
    /// <summary>One line for the whole, one for each board.</summary>
    public static void Write(PlanRecord plan, BuildRecord build, Terminal terminal)
    {
        terminal.Out.WriteLine(terminal.Bold(SafeText.Of($"{plan.Design.Name}  (plan {plan.Id}): {Words(build)}")));
        if (build.Boards.Count == 0)
        {
            return;
        }

        var table = new Table(">NO", "BOARD", "STATE", "LEFTOVERS", "NOTE");
        foreach (var board in build.Boards)
        {
            table.Add(
                board.Number.ToString(CultureInfo.InvariantCulture), board.BoardId ?? "-", board.State == "to-buy" ? "to buy" : board.State,
                board.Leftovers is { } left ? (left.Count == 0 ? "none" : string.Join(", ", left)) : "", board.Reason);
        }

        table.Write(terminal);
    }

    /// <summary>The state in words.</summary>
    public static string Words(BuildRecord build) => build.State switch
    {
        "accepted" when build.HeldUntil is { } until => $"accepted, its boards are held until {until.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}",
        "accepted" => "accepted, its boards are held",
        "under-way" => string.Create(CultureInfo.InvariantCulture, $"under way, {build.Boards.Count(board => board.State == "cut")} of {build.Boards.Count} boards are cut"),
        "built" => "built",
        "stopped" => "stopped, what was not cut is given back",
        var other => other,
    };

    /// <summary>The leftovers that a closing logged, with what to write on their end grain.</summary>
    public static async Task WriteLeftoversAsync(Run run, IOffcutsApi api, BuildRecord? before, BuildRecord after)
    {
        var known = before?.Boards.SelectMany(board => board.Leftovers ?? []).ToHashSet(StringComparer.Ordinal) ?? [];
        var logged = new List<BoardRecord>();
        foreach (var id in after.Boards.SelectMany(board => board.Leftovers ?? []).Where(id => !known.Contains(id)))
        {
            logged.Add(await api.GetBoardAsync(id, run.Cancellation));
        }

        if (logged.Count == 0)
        {
            run.Say("There are no leftovers to put away.");
            return;
        }

        run.Terminal.Out.WriteLine();
        BoardView.WriteTable(logged, await run.UnitAsync(), run.Terminal);
        run.Say(logged.Count == 1 ? "Write its id on the leftover's end grain." : "Write each id on its leftover's end grain.");
    }
}
