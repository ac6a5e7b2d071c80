using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>A shopping list to take along.</summary>
internal static class CounterView
{
    /// <summary>Writes one list for each supplier, and the total.</summary>
    public static void Write(ShoppingRecord shopping, Terminal terminal)
    {
        Line(terminal.Bold(SafeText.Of($"{shopping.Design.Name}  (plan {shopping.Plan})")));
        if (shopping.Suppliers.Count == 0)
        {
            Line("Nothing to buy.");
        }

        foreach (var list in shopping.Suppliers)
        {
            Line("");
            Line(terminal.Bold(SafeText.Of(list.SupplierName ?? list.Supplier ?? "Anywhere")));
            foreach (var wood in list.Wood)
            {
                Line(SafeText.Of($"  {wood.Text}: {wood.Quantity} at {wood.Rate} = {Money(wood.Cost)}"));
                foreach (var pieces in wood.Pieces)
                {
                    Line(SafeText.Of($"    {pieces.Text}"));
                }

                Line(SafeText.Of($"    listed as {wood.ListedAs ?? wood.OfferId}{(wood.Advice is { } advice ? $"; {advice}" : "")}"));
            }

            foreach (var item in list.Items)
            {
                Line(SafeText.Of(string.Create(CultureInfo.InvariantCulture, $"  {item.Quantity} x {item.Name}: {Money(item.UnitPrice * item.Quantity)}")));
            }

            ChargeLines.Write(terminal, "  ", list.Delivery, list.TopUp, list.Total - list.Delivery, shopping.Currency);
            Line($"  together {Money(list.Total)}");
        }

        if (shopping.Suppliers.Count > 1)
        {
            Line("");
            Line($"All suppliers together {Money(shopping.Total)}");
        }

        void Line(string text) => terminal.Out.WriteLine(text);

        string Money(decimal amount) => Price.Of(amount, shopping.Currency);
    }
}
