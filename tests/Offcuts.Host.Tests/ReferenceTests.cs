using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Host.Tests;

public sealed class ReferenceTests : OwnService
{
    protected override HostSettings Change(HostSettings settings) => settings with { ServeReference = true };

    [Fact]
    public async Task The_routes_served_are_those_documented()
    {
        var served = Service.Services.GetRequiredService<IEnumerable<EndpointDataSource>>()
            .SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Select(route => (Path: "/" + route.RoutePattern.RawText!.TrimStart('/'), Methods: route.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []))
            .Where(route => route.Path != "/" && !route.Path.StartsWith("/openapi", StringComparison.Ordinal) && !route.Path.StartsWith("/reference", StringComparison.Ordinal))
            .SelectMany(route => route.Methods.Select(method => $"{method} {route.Path}"));
        Assert.Equal(served.Order(StringComparer.Ordinal), (await OperationsAsync()).Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_call_of_the_typed_client_is_documented()
    {
        var documented = await OperationsAsync();
        foreach (var method in typeof(IOffcutsApi).GetMethods())
        {
            var call = (HttpMethodAttribute)method.GetCustomAttributes(typeof(HttpMethodAttribute), inherit: true).Single();
            Assert.Contains($"{call.Method.Method} {call.Path}", documented.Keys);
        }
    }

    [Fact]
    public async Task Every_operation_has_an_id_of_its_own_a_summary_and_an_error_answer()
    {
        var operations = await OperationsAsync();
        Assert.Equal(operations.Count, operations.Values.Select(operation => operation.GetProperty("operationId").GetString()).Distinct().Count());
        Assert.All(operations.Values, operation =>
        {
            Assert.NotEmpty(operation.GetProperty("summary").GetString()!);
            Assert.True(operation.GetProperty("responses").GetProperty("default").GetProperty("content").TryGetProperty("application/problem+json", out _));
        });
    }

    [Fact]
    public async Task A_number_is_a_number_and_tags_are_resources()
    {
        var document = await Service.GetAsync("/openapi/v1.json");
        var kerf = document.GetProperty("components").GetProperty("schemas").GetProperty("ShopRecord").GetProperty("properties").GetProperty("kerfMm");
        Assert.Equal("number", kerf.GetProperty("type").GetString());
        Assert.Contains("plans", document.GetProperty("tags").EnumerateArray().Select(tag => tag.GetProperty("name").GetString()));
        Assert.DoesNotContain(document.GetProperty("tags").EnumerateArray(), tag => tag.GetProperty("name").GetString()!.Contains("Endpoints", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_example_is_accepted()
    {
        var tried = 0;
        foreach (var (call, operation) in await OperationsAsync())
        {
            if (!operation.TryGetProperty("requestBody", out var body))
            {
                continue;
            }

            foreach (var content in body.GetProperty("content").EnumerateObject())
            {
                var example = content.Value.GetProperty("example");
                var text = example.ValueKind == JsonValueKind.String ? example.GetString()! : example.GetRawText();
                var parts = call.Split(' ');
                var answer = await Service.SendAsync(parts[0], await PathAsync(parts[1]), text, content.Name);
                Assert.True(answer.IsSuccessStatusCode, $"{call} {content.Name}: {await answer.Content.ReadAsStringAsync()}");
                tried++;
            }
        }

        Assert.Equal(27, tried);
    }

    [Fact]
    public async Task The_reference_page_needs_nothing_from_elsewhere()
    {
        var page = await Service.Client.GetStringAsync("/reference/");
        Assert.Contains("openapi/v1.json", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Service.Client.GetAsync("/reference/scalar.js")).StatusCode);
    }

    [Fact]
    public async Task A_client_that_hosts_the_service_for_itself_gets_no_reference()
    {
        await Service.StopAsync();
        await Service.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("GET", "/openapi/v1.json")).StatusCode);
    }

    private async Task<Dictionary<string, JsonElement>> OperationsAsync() => (await Service.GetAsync("/openapi/v1.json"))
        .GetProperty("paths").EnumerateObject()
        .SelectMany(path => path.Value.EnumerateObject().Select(operation => (Call: $"{operation.Name.ToUpperInvariant()} {path.Name}", operation.Value)))
        .ToDictionary(operation => operation.Call, operation => operation.Value);

    private async Task<string> PathAsync(string path)
    {
        if (path == "/v1/boards/{id}")
        {
            var board = await Service.ReadAsync(
                await Service.SendAsync("POST", "/v1/boards", """{"species":"cherry","thicknessMm":20,"widthMm":100,"lengthMm":500}"""), HttpStatusCode.Created);
            return $"/v1/boards/{board.GetProperty("id").GetString()}";
        }

        if (path == "/v1/plans/{id}/closings")
        {
            await Service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}""");
            const string Rail = """{"budgetMs":2000,"inline":{"offers":[],"design":{"name":"Rail","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}}}""";
            var plan = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", Rail, prefer: "wait=15"), HttpStatusCode.Created);
            var id = plan.GetProperty("id").GetString();
            await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{id}/acceptance"), HttpStatusCode.OK);
            return $"/v1/plans/{id}/closings";
        }

        if (path.Contains("/stock-takes/{number}", StringComparison.Ordinal))
        {
            // One of its own for each path: a finished one takes no steps.
            var take = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/stock-takes", $$"""{"place":"rack {{path.Length}}","newPlace":true}"""), HttpStatusCode.Created);
            return path.Replace("{number}", take.GetProperty("number").GetRawText(), StringComparison.Ordinal);
        }

        if (path == "/v1/queue/{id}/moves")
        {
            await Service.SendAsync("POST", "/v1/designs", """{"name":"Peg","parts":[{"name":"peg","thicknessMm":12,"widthMm":12,"lengthMm":70,"species":["white-ash"]}]}""");
            var queue = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/queue", """{"design":"peg"}"""), HttpStatusCode.Created);
            return $"/v1/queue/{queue.GetProperty("items")[0].GetProperty("id").GetInt64()}/moves";
        }

        return path.Replace("{supplier}", "riverbend", StringComparison.Ordinal).Replace("{name}", "rack%20A", StringComparison.Ordinal);
    }
}
