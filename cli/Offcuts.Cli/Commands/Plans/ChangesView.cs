using System.Globalization;
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
        terminal.Out.WriteLine(terminal.Bold($"Changed since plan {SafeText.Of(from ?? "")}"));
        Line(Cost(changes));
        var kept = changes.Boards.Where(board => board.Change == "kept").Select(board => board.Number ?? 0).ToList();
        Line(kept.Count == 0 ? "No board is cut as before."
            : kept.Count == plan.Boards.Count ? "All its boards are cut as before."
            : $"Cut as before: {string.Join(", ", kept.Select(number => number.ToString(CultureInfo.InvariantCulture)))}.");
        foreach (var board in changes.Boards.Where(board => board.Change != "kept"))
        {
            Line($"{(board.Number is { } number ? string.Create(CultureInfo.InvariantCulture, $"{number}. ") : "")}{board.Text}");
        }

        foreach (var part in changes.Parts)
        {
            Line(part.Text);
        }

        foreach (var wood in changes.Purchases)
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"Buy {wood.Count} instead of {wood.EarlierCount} of {wood.Name}, {Lengths.Text(wood.Size, unit)}."));
        }
    }

    private string Cost(ChangesRecord changes) => (changes.EarlierTotalCost, changes.EarlierCurrency) == (plan.TotalCost, plan.Currency)
        ? "It costs as much as before."
        : $"It costs {Price.Of(plan.TotalCost, plan.Currency)} instead of {Price.Of(changes.EarlierTotalCost, changes.EarlierCurrency)}.";

    private void Line(string text) => terminal.Out.WriteLine(SafeText.Of($"  {text}"));
}
