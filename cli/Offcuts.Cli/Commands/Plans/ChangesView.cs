using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What a plan does otherwise than the one that it started from.</summary>
internal sealed class ChangesView(Terminal terminal, DisplayUnit unit, PlanResult plan)
{
    /// <summary>Writes it; nothing for a plan that started from none.</summary>
    /// <param name="from">Id of the earlier plan.</param>
    public void Write(string? from)
    {
        if (plan.Changes is not { } changes)
        {
            return;
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine(terminal.Bold(ChangeText.Heading(SafeText.Of(from ?? ""))));
        Line(ChangeText.Cost(Price.Of(changes.EarlierTotalCost, changes.EarlierCurrency), Price.Of(plan.TotalCost, plan.Currency)));
        Line(ChangeText.Kept([.. changes.Boards.Where(board => board.Change == "kept").Select(board => board.Number ?? 0)], plan.Boards.Count));
        foreach (var board in changes.Boards.Where(board => board.Change != "kept"))
        {
            Line(ChangeText.Numbered(board.Number, board.Text));
        }

        foreach (var part in changes.Parts)
        {
            Line(part.Text);
        }

        foreach (var wood in changes.Purchases)
        {
            Line(ChangeText.Bought(wood.Count, wood.EarlierCount, wood.Name, Lengths.Text(wood.Size, unit)));
        }
    }

    private void Line(string text) => terminal.Out.WriteLine(SafeText.Of($"  {text}"));
}
