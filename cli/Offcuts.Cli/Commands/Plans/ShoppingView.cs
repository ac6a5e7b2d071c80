using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What to buy, in the words of the counter.</summary>
internal sealed class ShoppingView(Terminal terminal, DisplayUnit unit, PlanResult plan)
{
    /// <summary>Writes one list for each supplier.</summary>
    public void Write()
    {
        foreach (var list in plan.ShoppingLists)
        {
            terminal.Out.WriteLine(SafeText.Of($"  {list.SupplierName ?? list.Supplier ?? "Anywhere"}: {Money(list.Total)}"));
            foreach (var wood in list.Wood)
            {
                terminal.Out.WriteLine(SafeText.Of($"    {Count(wood.Count)} x {What(wood)}: {Money(wood.Cost)}"));
                terminal.Out.WriteLine(SafeText.Of($"        {Advice(wood)}"));
            }

            foreach (var item in list.Items)
            {
                terminal.Out.WriteLine(SafeText.Of($"    {Count(item.Quantity)} x {item.Name}: {Money(item.UnitPrice * item.Quantity)}"));
            }

            ChargeLines.Write(terminal, "    ", list.Delivery, list.TopUp, list.Total - list.Delivery, plan.Currency);
        }
    }

    private string What(PurchaseRecord wood)
    {
        var (thickness, width, length) = Sizes(wood);
        var kind = wood.Kind == "sheet" ? BoardKind.Sheet : BoardKind.Solid;
        var surface = wood.Surface == "rough" ? Surface.Rough : Surface.Surfaced;
        var milled = kind == BoardKind.Sheet ? "" : $"{wood.Surface} ";
        return $"{YardText.Thickness(kind, surface, thickness, unit)} {milled}{wood.SpeciesName ?? wood.Species}, {YardText.Face(width, length, IsRandom(wood), unit)}";
    }

    private string Advice(PurchaseRecord wood)
    {
        var listed = $"listed as {wood.Name ?? wood.OfferId}";
        if (wood.Rate is not { } rate)
        {
            return listed;
        }

        var (thickness, width, length) = Sizes(wood);
        var size = new Dimensions(thickness, width, length);
        var volume = rate.Unit switch
        {
            "board-foot" => string.Create(CultureInfo.InvariantCulture, $"{wood.Count * BoardMeasure.BoardFeet(size):0.0} board feet at "),
            "cubic-metre" => string.Create(CultureInfo.InvariantCulture, $"{wood.Count * BoardMeasure.CubicMetres(size):0.0000} cubic metres at "),
            _ => "",
        };
        return $"{listed}; {volume}{Money(rate.Price)} a {rate.Unit.Replace('-', ' ')}";
    }

    private static bool IsRandom(PurchaseRecord wood) => wood.Rate?.Unit is "board-foot" or "cubic-metre";

    private static (Length Thickness, Length Width, Length Length) Sizes(PurchaseRecord wood) => (
        Length.FromMillimetres(wood.Size.ThicknessMm), Length.FromMillimetres(wood.Size.WidthMm), Length.FromMillimetres(wood.Size.LengthMm));

    private string Money(decimal amount) => Price.Of(amount, plan.Currency);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
