using System.Net;

namespace Offcuts.Host.Tests;

public sealed class DesignEndpointsTests(Service service) : IClassFixture<Service>
{
    private const string Stool = """
        {"name":"Step Stool","parts":[{"name":"leg","thicknessMm":20,"widthMm":60,"lengthMm":300,"quantity":4,"species":["white ash"]}],
         "panels":[{"name":"top","thicknessMm":20,"widthMm":300,"lengthMm":400,"species":["hardwood"]}],
         "items":[{"name":"screws","unitPrice":3.5,"quantity":2}]}
        """;

    [Fact]
    public async Task A_design_is_versioned_by_its_content()
    {
        var first = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Stool), HttpStatusCode.Created);
        Assert.Equal("step-stool", first.GetProperty("reference").GetString());
        Assert.Equal("white-ash", first.GetProperty("design").GetProperty("parts")[0].GetProperty("species")[0].GetString());
        var again = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Stool), HttpStatusCode.OK);
        Assert.Equal(first.GetRawText(), again.GetRawText());

        var changed = Stool.Replace("\"quantity\":4", "\"quantity\":3", StringComparison.Ordinal);
        var second = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", changed), HttpStatusCode.Created);
        Assert.NotEqual(first.GetProperty("version").GetString(), second.GetProperty("version").GetString());
        Assert.Equal(second.GetRawText(), (await service.GetAsync("/v1/designs/step-stool")).GetRawText());
        var old = await service.GetAsync($"/v1/designs/{first.GetProperty("version").GetString()}");
        Assert.False(old.GetProperty("current").GetBoolean());
        Assert.Equal(first.GetProperty("design").GetRawText(), old.GetProperty("design").GetRawText());

        var versions = (await service.GetAsync("/v1/designs/step-stool/versions")).GetProperty("items");
        Assert.Equal([3, 4], versions.EnumerateArray().Select(version => version.GetProperty("parts").GetInt32()));
        var listed = (await service.GetAsync("/v1/designs")).GetProperty("items").EnumerateArray();
        Assert.Equal(3, Assert.Single(listed, item => item.GetProperty("reference").GetString() == "step-stool").GetProperty("parts").GetInt32());

        // The old content once more makes the old version the current one.
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Stool), HttpStatusCode.OK);
        Assert.Equal(first.GetProperty("version").GetString(), (await service.GetAsync("/v1/designs/step-stool")).GetProperty("version").GetString());

        Assert.Equal(HttpStatusCode.NoContent, (await service.SendAsync("DELETE", "/v1/designs/step-stool")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", "/v1/designs/step-stool")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", "/v1/designs/step-stool/versions")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("DELETE", "/v1/designs/step-stool")).StatusCode);
    }

    [Fact]
    public async Task What_a_part_tolerates_comes_back_and_is_left_out_where_it_is_nothing()
    {
        var bare = Stool.Replace("Step Stool", "Bare stool", StringComparison.Ordinal);
        var none = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", bare), HttpStatusCode.Created);
        Assert.DoesNotContain("tolerates", none.GetRawText(), StringComparison.Ordinal);
        var some = bare.Replace("\"quantity\":4", "\"quantity\":4,\"tolerates\":[\"knot\",\"nail hole\"]", StringComparison.Ordinal);
        var stored = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", some), HttpStatusCode.Created);
        Assert.Equal("""["knot","nail hole"]""", stored.GetProperty("design").GetProperty("parts")[0].GetProperty("tolerates").GetRawText());
    }

    [Fact]
    public async Task Tolerances_are_kept_and_leave_the_version_of_a_design_without_them_alone()
    {
        var plain = Stool.Replace("Step Stool", "Plain Stool", StringComparison.Ordinal);
        var exact = plain.Replace("\"widthMm\":60", "\"widthMm\":60,\"mostWidthMm\":60", StringComparison.Ordinal);
        var wider = plain.Replace("\"widthMm\":60", "\"widthMm\":60,\"mostWidthMm\":75", StringComparison.Ordinal);
        var first = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", plain), HttpStatusCode.Created);
        Assert.False(first.GetProperty("design").GetProperty("parts")[0].TryGetProperty("mostWidthMm", out _));
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", exact), HttpStatusCode.OK);
        var second = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", wider), HttpStatusCode.Created);
        Assert.Equal(75, second.GetProperty("design").GetProperty("parts")[0].GetProperty("mostWidthMm").GetInt32());
    }

    [Fact]
    public async Task Tags_and_hours_come_back_and_leave_the_version_of_a_design_without_them_alone()
    {
        var plain = Stool.Replace("Step Stool", "Tagged stool", StringComparison.Ordinal);
        var none = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", plain), HttpStatusCode.Created);
        Assert.False(none.GetProperty("design").TryGetProperty("tags", out _));
        Assert.False(none.GetProperty("design").TryGetProperty("hours", out _));
        var tagged = plain.Replace("\"items\":", "\"tags\":[\"kitchen\"],\"hours\":6.50,\"items\":", StringComparison.Ordinal);
        var some = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", tagged), HttpStatusCode.Created);
        Assert.Equal("kitchen", some.GetProperty("design").GetProperty("tags")[0].GetString());
        Assert.Equal("6.5", some.GetProperty("design").GetProperty("hours").GetRawText());
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", tagged.Replace("6.50", "6.5", StringComparison.Ordinal)), HttpStatusCode.OK);
        var listed = Assert.Single((await service.GetAsync("/v1/designs")).GetProperty("items").EnumerateArray(), item => item.GetProperty("reference").GetString() == "tagged-stool");
        Assert.Equal("kitchen", listed.GetProperty("tags")[0].GetString());
    }

    [Theory]
    [InlineData("\"items\":", "\"tags\":[\"a\",\"A\"],\"items\":", "#/tags/1")]
    [InlineData("\"items\":", "\"hours\":0,\"items\":", "#/hours")]
    [InlineData("\"quantity\":4", "\"tolerates\":[\"nail\"]", "#/parts/0/tolerates/0")]
    [InlineData("\"white ash\"", "\"wite ash\"", "#/parts/0/species/0")]
    [InlineData("\"widthMm\":60", "\"widthMm\":0", "#/parts/0/widthMm")]
    [InlineData("\"items\":", "\"groups\":[{\"name\":\"legs\",\"batch\":\"few\"}],\"items\":", "#/groups/0/batch")]
    [InlineData("\"quantity\":4", "\"quantity\":4,\"mostQuantity\":3", "#/parts/0/quantity")]
    [InlineData("\"quantity\":4", "\"quantity\":4,\"spares\":101", "#/parts/0/spares")]
    [InlineData("\"quantity\":4", "\"quantity\":4,\"extras\":\"offcuts\"", "#/parts/0/extras")]
    [InlineData("\"quantity\":4", "\"quantity\":4,\"spacing\":{\"spanMm\":0}", "#/parts/0/spacing/spanMm")]
    [InlineData("\"widthMm\":60", "\"widthMm\":60,\"mostWidthMm\":59", "#/parts/0/mostWidthMm")]
    [InlineData("\"widthMm\":60", "\"widthMm\":60,\"mostLengthMm\":-1", "#/parts/0/mostLengthMm")]
    [InlineData("\"quantity\":4", "\"quantity\":0", "#/parts/0/quantity")]
    [InlineData("\"name\":\"top\"", "\"name\":\"leg\"", "#/panels/0/name")]
    [InlineData("\"quantity\":4", "\"group\":\"show\"", "#/parts/0/group")]
    [InlineData("3.5", "3.555", "#/items/0/unitPrice")]
    [InlineData("Step Stool", "---", "#/name")]
    [InlineData("\"lengthMm\":400", "\"lengthMm\":400,\"narrowestStripMm\":90,\"widestStripMm\":80", "#/panels/0/narrowestStripMm")]
    public async Task A_wrong_design_is_refused_with_the_place_named(string right, string wrong, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/designs", Stool.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }
}
