using System.Globalization;
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

    /// <summary>Reads the query.</summary>
    /// <exception cref="OffcutsException">It cannot be right.</exception>
    public static FitRequest Read(IQueryCollection query, SpeciesCatalogue catalogue, string currency)
    {
        var faults = new Faults();
        QueryReader.CheckNames(query, ["order", "species", "place", "batch", "tags", "maxHours", "maxCost", "limit", "budgetMs"], faults);
        var species = Text("species") is { } word ? faults.Species("?species", word, catalogue) : null;
        var focus = (species, Text("place"), Text("batch")) is (null, null, null) ? null : new FitFocus(species, Text("place"), Text("batch"));
        var order = Text("order") is { } written ? faults.Word<FitOrder>("?order", written) : focus is null ? FitOrder.Cheapest : FitOrder.Pile;
        if (focus is not null && order != FitOrder.Pile)
        {
            faults.Add("?order", "A species, place or batch names the pile that is to be eaten: leave it out, or ask for the order pile.");
        }

        var question = new FitQuestion
        {
            Order = order,
            Focus = focus,
            Tags = Text("tags")?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [],
            MostHours = Number("maxHours", "a number of hours, for instance 6.5"),
            MostMoney = Number("maxCost", "an amount of money, for instance 40.00") is { } most ? faults.Money("?maxCost", most, currency) : null,
            Limit = Whole("limit", 10, 1, Limits.MaxEntries),
        };
        var budget = Whole("budgetMs", UsualMs, 100, LongestMs);
        faults.ThrowIfAny();
        return new FitRequest(question, TimeSpan.FromMilliseconds(budget));

        string? Text(string name) => query.TryGetValue(name, out var values) ? values[0] : null;

        int Whole(string name, int otherwise, int least, int most)
        {
            if (Text(name) is not { } text)
            {
                return otherwise;
            }

            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            {
                return value;
            }

            faults.Add($"?{name}", string.Create(CultureInfo.InvariantCulture, $"'{text}': give {least} to {most}."));
            return otherwise;
        }

        decimal? Number(string name, string what)
        {
            if (Text(name) is not { } text)
            {
                return null;
            }

            if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= MoneyText.MaxMinorUnits)
            {
                return value;
            }

            faults.Add($"?{name}", $"'{text}': give {what}.");
            return null;
        }
    }
}
