using System.Net;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Host.Tests;

public sealed class BoardEndpointsTests(Service service) : IClassFixture<Service>
{
    private const string Walnut = """{"species":"black-walnut","thicknessMm":25.4,"widthMm":152.4,"lengthMm":914.4}""";

    [Fact]
    public async Task A_board_is_logged_read_replaced_and_forgotten()
    {
        var created = await service.SendAsync("POST", "/v1/boards", Walnut);
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        var place = created.Headers.Location!.ToString();
        var body = await created.Content.ReadAsStringAsync();
        Assert.Equal(body, await service.Client.GetStringAsync(place));
        Assert.Contains("\"thicknessMm\":25.4,", body, StringComparison.Ordinal);

        var head = await service.SendAsync("HEAD", place);
        Assert.Equal(HttpStatusCode.OK, head.StatusCode);
        Assert.Empty(await head.Content.ReadAsByteArrayAsync());

        var replaced = await service.SendAsync("PUT", place, Walnut.Replace("914.4", "609.6", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.OK, replaced.StatusCode);
        Assert.Contains("\"lengthMm\":609.6,", await service.Client.GetStringAsync(place), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NoContent, (await service.SendAsync("DELETE", place)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", place)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("DELETE", place)).StatusCode);
    }

    [Theory]
    [InlineData("""{"species":null,"thicknessMm":1,"widthMm":1,"lengthMm":1}""", "#/species")]
    [InlineData("""{"thicknessMm":1,"widthMm":1,"lengthMm":1}""", "#")]
    [InlineData("""{"species":"white-ash","thicknessMm":"1","widthMm":1,"lengthMm":1}""", "#/thicknessMm")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":1,"colour":"red"}""", "#/colour")]
    [InlineData("""{"species":"white-ash","species":"cherry","thicknessMm":1,"widthMm":1,"lengthMm":1}""", "#/species")]
    [InlineData("""{"Species":"a","thicknessMm":1,"widthMm":1,"lengthMm":1}""", "#/Species")]
    [InlineData("""{"species":"white-ash","thicknessMm":1.0001,"widthMm":1,"lengthMm":1}""", "#/thicknessMm")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":0,"lengthMm":1}""", "#/widthMm")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":100000.1}""", "#/lengthMm")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":1,"surface":"Rough"}""", "#/surface")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":1,"quantity":0}""", "#/quantity")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":1,"defects":[null]}""", "#/defects/0")]
    [InlineData("""{"species":"white-ash","thicknessMm":1,"widthMm":1,"lengthMm":1,"defects":[{"kind":"knot","xMm":0.5,"yMm":0,"lengthMm":1,"widthMm":1}]}""", "#/defects/0")]
    [InlineData("""{"species":"walnutt","thicknessMm":1,"widthMm":1,"lengthMm":1}""", "#/species")]
    [InlineData("""{"species":"birch ply","thicknessMm":6,"widthMm":600,"lengthMm":900,"kind":"solid"}""", "#/kind")]
    [InlineData("""{"species":"white-ash","thicknessMm":6,"widthMm":600,"lengthMm":900,"kind":"sheet"}""", "#/kind")]
    [InlineData("""{"species":"white-ash","thicknessMm":914.4,"widthMm":139.7,"lengthMm":19.05}""", "#/thicknessMm")]
    [InlineData("""{"species":"white-ash","thicknessMm":25.4,"widthMm":1676.4,"lengthMm":2438.4}""", "#/widthMm")]
    [InlineData("null", "#")]
    [InlineData("{", "#")]
    public async Task A_wrong_body_is_refused_with_the_place_named(string json, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/boards", json);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    // The same faults in words: none of them names a class of this program or of its framework.
    [Theory]
    [InlineData("""{"species":"a","thicknessMm":1,"widthMm":1,"lengthMm":1,"colour":"red"}""", "There is no field 'colour' here: give species, thicknessMm, widthMm, lengthMm,")]
    [InlineData("""{"thicknessMm":1,"widthMm":1}""", "Required fields are missing: species, lengthMm.")]
    [InlineData("""{"species":"a","species":"b","thicknessMm":1,"widthMm":1,"lengthMm":1}""", "The field 'species' stands twice")]
    [InlineData("""{"species":"a","thicknessMm":"1","widthMm":1,"lengthMm":1}""", "give a number without quotes")]
    [InlineData("""{"species":7,"thicknessMm":1,"widthMm":1,"lengthMm":1}""", "give a text in quotes")]
    [InlineData("""{"species":"a","thicknessMm":1,"widthMm":1,"lengthMm":1,"quantity":1.5}""", "give a whole number")]
    [InlineData("""{"species":"a","thicknessMm":1,"widthMm":1,"lengthMm":1,"defects":{}}""", "give a list")]
    [InlineData("[]", "give an object")]
    [InlineData("", "The body is empty")]
    public async Task A_wrong_body_is_told_in_words_of_the_wire(string json, string says)
    {
        var answer = await service.SendAsync("POST", "/v1/boards", json);
        var detail = (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("detail").GetString()!;
        Assert.Contains(says, detail, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"System\.|Offcuts\.|\.NET", detail);
    }

    [Fact]
    public async Task An_id_may_be_in_small_letters()
    {
        var place = (await service.SendAsync("POST", "/v1/boards", Walnut)).Headers.Location!.ToString().ToLowerInvariant();
        Assert.Equal(HttpStatusCode.OK, (await service.SendAsync("PUT", place, Walnut)).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await service.SendAsync("DELETE", place)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", place)).StatusCode);
    }

    [Fact]
    public async Task A_list_of_one_species_takes_any_of_its_names_and_refuses_a_mistyped_one()
    {
        var created = await service.SendAsync("POST", "/v1/boards", Walnut);
        var id = created.Headers.Location!.ToString().Split('/')[^1];
        Assert.Contains(id, await service.Client.GetStringAsync("/v1/boards?species=walnut&limit=500"), StringComparison.Ordinal);
        Assert.DoesNotContain(id, await service.Client.GetStringAsync("/v1/boards?species=cherry&limit=500"), StringComparison.Ordinal);

        var answer = await service.SendAsync("GET", "/v1/boards?species=walnutt");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("?species", (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    [Theory]
    [InlineData("birch ply", "sheet", "surfaced")]
    [InlineData("white-ash", "solid", "rough")]
    public async Task The_species_says_what_a_board_is_made_as(string species, string kind, string surface)
    {
        var answer = await service.SendAsync("POST", "/v1/boards", $$"""{"species":"{{species}}","thicknessMm":6.35,"widthMm":609.6,"lengthMm":1219.2}""");
        var board = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal((kind, surface), (board.GetProperty("kind").GetString(), board.GetProperty("surface").GetString()));
    }

    [Fact]
    public async Task A_length_between_two_ticks_is_refused_with_both_named()
    {
        var answer = await service.SendAsync("POST", "/v1/boards", Walnut.Replace("25.4,", "25.401,", StringComparison.Ordinal));
        var detail = (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("detail").GetString();
        Assert.Contains("25.4 mm or 25.403125 mm", detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_import_takes_all_or_none()
    {
        var one = Walnut.Replace("}", ",\"place\":\"import\"}", StringComparison.Ordinal);
        var bad = await service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{one}},{{one.Replace("25.4", "-1", StringComparison.Ordinal)}}]}""");
        Assert.Equal("#/items/1/thicknessMm", (await Service.ProblemAsync(bad)).GetProperty("errors")[0].GetProperty("pointer").GetString());
        Assert.Equal("""{"items":[],"next":null}""", await service.Client.GetStringAsync("/v1/boards?place=import"));

        var good = await service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{one}},{{one}}]}""");
        Assert.Equal(HttpStatusCode.Created, good.StatusCode);
        Assert.Equal(2, JsonDocument.Parse(await service.Client.GetStringAsync("/v1/boards?place=import")).RootElement.GetProperty("items").GetArrayLength());
    }

    [Fact]
    public async Task Following_pages_sees_each_board_once_while_more_are_logged()
    {
        var oak = Walnut.Replace("}", ",\"place\":\"paged\"}", StringComparison.Ordinal);
        await service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{string.Join(',', Enumerable.Repeat(oak, 7))}}]}""");
        var seen = new List<string>();
        var page = "/v1/boards?place=paged&limit=2";
        for (var round = 0; page is not null && round < 30; round++)
        {
            var answer = await service.Client.GetAsync(page);
            var body = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
            seen.AddRange(body.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("id").GetString()!));
            Assert.Equal(body.GetProperty("next").ValueKind == JsonValueKind.String, answer.Headers.Contains("Link"));
            page = answer.Headers.TryGetValues("Link", out var link) ? link.Single().Split('<', '>')[1] : null;
            if (round < 3)
            {
                await service.SendAsync("POST", "/v1/boards", oak);
            }
        }

        Assert.Equal(10, seen.Count);
        Assert.Equal(10, seen.Distinct().Count());
    }

    [Theory]
    [InlineData("?colour=red", "?colour")]
    [InlineData("?limit=0", "?limit")]
    [InlineData("?limit=501", "?limit")]
    [InlineData("?cursor=abcd", "?cursor")]
    [InlineData("?status=lost", "?status")]
    [InlineData("?minLengthMm=3,2", "?minLengthMm")]
    public async Task A_wrong_query_is_refused_with_the_parameter_named(string query, string pointer)
    {
        var answer = await service.SendAsync("GET", "/v1/boards" + query);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    [Theory]
    [InlineData("GET", "/v1/nothing", null, 404)]
    [InlineData("PATCH", "/v1/boards", null, 405)]
    [InlineData("POST", "/v1/boards", "text/plain", 415)]
    public async Task Refusals_are_problem_details_whose_type_is_documented(string method, string path, string? type, int status)
    {
        var answer = await service.SendAsync(method, path, type is null ? null : "x", type ?? "application/json");
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal(status == 405, answer.Content.Headers.Allow.Count > 0);
        var problem = await Service.ProblemAsync(answer);
        Assert.Equal(status, problem.GetProperty("status").GetInt32());
        Assert.Equal(HttpStatusCode.OK, (await service.Client.GetAsync(problem.GetProperty("type").GetString())).StatusCode);
    }

    [Fact]
    public async Task A_foreign_host_name_is_refused()
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/health") { Headers = { Host = "evil.example" } };
        Assert.Equal(HttpStatusCode.BadRequest, (await service.Client.SendAsync(request)).StatusCode);
    }

    [Fact]
    public void Other_machines_are_kept_out_by_default() =>
        Assert.Equal(ErrorCode.Invalid, Assert.Throws<OffcutsException>(() =>
            OffcutsHost.Build(new HostSettings { DatabasePath = "unused.db", Urls = "http://0.0.0.0:5080" })).Code);

    [Fact]
    public void Every_table_is_strict_and_the_journal_is_a_write_ahead_log()
    {
        using var connection = new SqliteConnection($"Data Source={service.DatabasePath}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM pragma_table_list WHERE strict = 1 AND name IN ('boards', 'board_defects', 'board_sequence')";
        Assert.Equal(3L, command.ExecuteScalar());
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
    }

    [Fact]
    public void A_database_of_a_newer_program_is_refused()
    {
        var path = service.DatabasePath + ".newer";
        using (var connection = new SqliteConnection($"Data Source={path}"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA user_version = 99";
            command.ExecuteNonQuery();
        }

        Assert.Equal(ErrorCode.DataIntegrity, Assert.Throws<OffcutsException>(() => Storage.Database.Open(path)).Code);
    }
}
