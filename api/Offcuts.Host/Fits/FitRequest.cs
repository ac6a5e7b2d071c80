using Offcuts.Domain;
using Offcuts.Host.Http;

namespace Offcuts.Host.Fits;

/// <summary>What a ranking was asked for.</summary>
/// <param name="Question">Which designs, in which order.</param>
/// <param name="Budget">Time to rank.</param>
internal sealed record FitRequest(FitQuestion Question, TimeSpan Budget)
{
    private const int LongestMs = 300_000;
    private const int UsualMs = 30_000;
    private const int UsualPlaces = 10;

    /// <summary>Reads the query.</summary>
    /// <exception cref="OffcutsException">It cannot be right.</exception>
    public static FitRequest Read(IQueryCollection query, SpeciesCatalogue catalogue, string currency)
    {
        var reader = new FieldReader(query, ["order", "species", "place", "batch", "tags", "maxHours", "maxCost", "limit", "budgetMs"]);
        var (species, place, batch) = (reader.Species("species", catalogue), reader.Text("place"), reader.Text("batch"));
        var focus = (species, place, batch) is (null, null, null) ? null : new FitFocus(species, place, batch);
        var order = reader.Word<FitOrder>("order") ?? (focus is null ? FitOrder.Cheapest : FitOrder.Pile);
        if (focus is not null && order != FitOrder.Pile)
        {
            reader.Faults.Add("?order", "A species, place or batch names the pile that is to be eaten: leave it out, or ask for the order pile.");
        }

        var question = new FitQuestion
        {
            Order = order,
            Focus = focus,
            Tags = reader.Text("tags")?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [],
            MostHours = reader.Number("maxHours", IsAmount, "a number of hours, for instance 6.5"),
            MostMoney = reader.Number("maxCost", IsAmount, "an amount of money, for instance 40.00") is { } most ? reader.Faults.Money("?maxCost", most, currency) : null,
            Limit = reader.Whole("limit", 1, Limits.MaxEntries) ?? UsualPlaces,
        };
        var budget = reader.Whole("budgetMs", 100, LongestMs) ?? UsualMs;
        reader.Faults.ThrowIfAny();
        return new FitRequest(question, TimeSpan.FromMilliseconds(budget));
    }

    private static bool IsAmount(decimal number) => number <= MoneyText.MaxMinorUnits;
}
