using System.Net;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Host.Tests;

// Prices are numbers in the shop's currency: another currency would make them what they are not.
public sealed class CurrencyTests : OwnService
{
    private const string Prices = """
        {"supplier":"Hill Yard","terms":{"delivery":12.50},"offers":[{"species":"white-ash","thicknessMm":25.4,"byThePiece":{"widthMm":100,"lengthMm":1400,"price":9.35}}]}
        """;

    [Theory]
    [InlineData("EUR")]
    [InlineData("JPY")]
    public async Task The_shop_keeps_its_currency_as_long_as_it_has_price_lists(string other)
    {
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/price-lists", Prices), HttpStatusCode.Created);
        var refused = await Service.SendAsync("PUT", "/v1/shop", $$"""{"currency":"{{other}}"}""");
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var told = (await Service.ProblemAsync(refused)).GetProperty("detail").GetString()!;
        Assert.Contains($"cannot count in {other} while it has prices in USD", told, StringComparison.Ordinal);
        Assert.Contains("Hill Yard", told, StringComparison.Ordinal);
        Assert.Equal("USD", (await Service.GetAsync("/v1/shop")).GetProperty("currency").GetString());
        // All else can be changed.
        await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/shop", """{"kerfMm":2}"""), HttpStatusCode.OK);

        await Service.SendAsync("DELETE", "/v1/price-lists/hill-yard");
        await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/shop", $$"""{"currency":"{{other}}"}"""), HttpStatusCode.OK);
        await Service.GetAsync("/v1/boards/totals");
    }

    [Theory]
    [InlineData("'USD'", "The price list of Hill Yard is in USD, but the shop counts in JPY. Set the shop's currency to USD, or delete the list and store it in JPY.")]
    // Stored before lists kept their currency.
    [InlineData("NULL", "The price lists (Hill Yard) cannot be read in JPY, the shop's currency: 9.35 is finer than the currency")]
    public async Task Where_they_differ_all_the_same_the_list_is_named_and_what_needs_no_prices_goes_on(string stored, string told)
    {
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/price-lists", Prices), HttpStatusCode.Created);
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":700}"""), HttpStatusCode.Created);
        // Another program that shares the database, or one from before this was checked.
        using (var connection = new SqliteConnection($"Data Source={Service.DatabasePath}"))
        {
            connection.Execute($"UPDATE price_lists SET currency = {stored}; INSERT INTO shop (only_row, content) VALUES (1, json('{{\"currency\":\"JPY\"}}'))");
        }

        foreach (var path in new[] { "/v1/cull", "/v1/boards/find?text=ash+3/4+x+2+x+20", "/v1/fits", "/v1/boards/totals" })
        {
            var refused = await Service.SendAsync("GET", path);
            Assert.True(refused.StatusCode == HttpStatusCode.Conflict, $"{path}: {refused.StatusCode} {await refused.Content.ReadAsStringAsync()}");
            Assert.Contains(told, (await Service.ProblemAsync(refused)).GetProperty("detail").GetString(), StringComparison.Ordinal);
        }

        Assert.Equal(1, (await Service.GetAsync("/v1/boards")).GetProperty("items").GetArrayLength());
        Assert.Equal(JsonValueKind.Array, (await Service.GetAsync("/v1/price-lists")).GetProperty("items").ValueKind);
        await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/shop", """{"currency":"USD"}"""), HttpStatusCode.OK);
        await Service.GetAsync("/v1/cull");
    }
}
