using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class BoardTableEndpointTests : OwnService
{
    private const string Table = "species,quantity,thickness,width,length,place\nwalnut,2,1,6.75,~74,rack A\nash,1,0.75,5.5,36,\n";

    [Fact]
    public async Task The_same_table_makes_no_board_twice_however_it_was_saved_unless_it_is_asked_for()
    {
        var first = await Service.ReadAsync(await ImportAsync(Table), HttpStatusCode.Created);
        Assert.Equal(2, first.GetProperty("items").GetArrayLength());

        var second = await Service.ReadAsync(await ImportAsync("\uFEFF" + Table.Replace(',', ';').Replace("6.75", "6,75", StringComparison.Ordinal).ReplaceLineEndings("\r\n")), HttpStatusCode.OK);
        Assert.Equal(0, second.GetProperty("items").GetArrayLength());
        Assert.NotEqual(JsonValueKind.Null, second.GetProperty("importedBefore").ValueKind);
        Assert.Equal(2, await CountAsync());

        await Service.ReadAsync(await ImportAsync(Table, "?again=true"), HttpStatusCode.Created);
        Assert.Equal(4, await CountAsync());
        await Service.ReadAsync(await ImportAsync(Table + "ash,1,0.75,5.5,37,\n"), HttpStatusCode.Created);
        Assert.Equal(7, await CountAsync());
    }

    [Fact]
    public async Task What_was_exported_comes_back_unchanged_and_a_changed_cell_changes_its_board()
    {
        await ImportAsync(Table);
        var exported = await Service.Client.GetStringAsync("/v1/board-exports?separator=semicolon");
        Assert.Contains(";6,75;~74;in;", exported, StringComparison.Ordinal);

        var same = await Service.ReadAsync(await ImportAsync(exported), HttpStatusCode.OK);
        Assert.Equal(2, same.GetProperty("unchanged").GetInt32());
        var lines = (await Service.GetAsync("/v1/journal")).GetProperty("items").GetArrayLength();

        var changed = await Service.ReadAsync(await ImportAsync(exported.Replace("rack A", "rack B", StringComparison.Ordinal)), HttpStatusCode.OK);
        Assert.Equal("rack B", changed.GetProperty("changed")[0].GetProperty("place").GetString());
        Assert.Equal(2, await CountAsync());
        // One line in the journal for the change, none for what changed nothing.
        Assert.Equal(lines + 1, (await Service.GetAsync("/v1/journal")).GetProperty("items").GetArrayLength());
        Assert.Equal(0, (await Service.GetAsync("/v1/journal/check")).GetProperty("differences").GetArrayLength());
    }

    [Fact]
    public async Task One_bad_row_keeps_all_from_being_imported()
    {
        var answer = await ImportAsync(Table + "ash,1,0.75,5.5,,\n");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var fault = (await Service.ProblemAsync(answer)).GetProperty("errors")[0];
        Assert.Equal(("#/length", 4), (fault.GetProperty("pointer").GetString(), fault.GetProperty("line").GetInt32()));
        Assert.Equal(0, await CountAsync());
    }

    [Theory]
    [InlineData("GET", "/v1/board-exports?separator=tab", "?separator")]
    [InlineData("GET", "/v1/board-exports?place=wall", "?place")]
    [InlineData("POST", "/v1/board-imports?again=perhaps", "?again")]
    public async Task Wrong_parameters_are_told(string method, string path, string pointer) =>
        Assert.Equal(pointer, await Service.PointerAsync(await Service.SendAsync(method, path, method == "POST" ? Table : null, "text/csv")));

    private Task<HttpResponseMessage> ImportAsync(string table, string query = "") => Service.SendAsync("POST", "/v1/board-imports" + query, table, "text/csv");

    private async Task<int> CountAsync() => (await Service.GetAsync("/v1/boards")).GetProperty("items").GetArrayLength();
}
