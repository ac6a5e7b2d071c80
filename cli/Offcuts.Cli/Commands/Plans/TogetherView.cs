using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What each build has of a plan for several, what planning them together saves, and what is set up once for several parts.</summary>
internal sealed class TogetherView(Terminal terminal, DisplayUnit unit, PlanResult plan)
{
    /// <summary>Writes it; nothing for a plan of one design.</summary>
    public void Write()
    {
        if (plan.Together is not { } together)
        {
            return;
        }

        Heading("Builds");
        foreach (var build in together.Builds)
        {
            var boards = build.Boards.Count == 0 ? "no board" : $"boards {string.Join(", ", build.Boards.Select(number => number.ToString(CultureInfo.InvariantCulture)))}";
            var missing = build.Missing > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {build.Missing} missing") : "";
            Line(string.Create(
                CultureInfo.InvariantCulture,
                $"{build.Name}: {build.Pieces} {(build.Pieces == 1 ? "piece" : "pieces")} from {boards}; its share of the wood {Money(build.WoodCost)}, items {Money(build.ItemCost)}{missing}"));
        }

        Heading("One after another");
        foreach (var order in together.OneAfterAnother)
        {
            var missing = order.MissingPieces > 0 ? string.Create(CultureInfo.InvariantCulture, $", {order.MissingPieces} missing") : "";
            Line($"{string.Join(", then ", order.Builds)}: {Money(order.TotalCost)}{missing}");
        }

        Line(together.Saves > 0
            ? $"Together they cost {Money(plan.TotalCost)}: that saves at least {Money(together.Saves)}{(plan.StopCost > 0 ? ", further stops counted" : "")}."
            : $"Together they cost {Money(plan.TotalCost)}.");
        if (together.Setups.Count > 0)
        {
            Heading("Set up once for");
            foreach (var setup in together.Setups)
            {
                Line($"{(setup.Kind == "plane" ? "planing to" : "ripping to")} {LengthText.Format(Length.FromMillimetres(setup.SettingMm), unit)}: {string.Join("; ", setup.Parts)}");
            }
        }
    }

    private void Heading(string text)
    {
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(terminal.Bold(text));
    }

    private void Line(string text) => terminal.Out.WriteLine(SafeText.Of($"  {text}"));

    private string Money(decimal amount) => Price.Of(amount, plan.Currency);
}
