using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Offcuts.Contracts;
using Scalar.AspNetCore;

namespace Offcuts.Host.Reference;

/// <summary>The OpenAPI document and the page to browse it. Left out where a client hosts the service for itself, which then starts faster.</summary>
internal static class ReferencePages
{
    public static void AddReference(this IServiceCollection services) => services.AddOpenApi("v1", options =>
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info.Title = "Offcuts";
            document.Info.Description = "Cut plans from leftovers. Lengths are decimal millimetres, money is in the shop's currency.";
            // Instead of the names of our classes, which it would list otherwise.
            document.Tags = Operations.All.Select(operation => TagOf(operation.Path)).Distinct().Select(name => new OpenApiTag { Name = name }).ToHashSet();
            return Task.CompletedTask;
        });
        options.AddOperationTransformer(DescribeAsync);
    });

    public static void MapReference(this IEndpointRouteBuilder app)
    {
        app.MapGet("/", ToReference).ExcludeFromDescription();
        app.MapOpenApi("/openapi/{documentName}.json");

        // The page's script comes with the service: it works without a network, so nothing of it may call elsewhere.
        app.MapScalarApiReference("/reference", page => page.WithTitle("Offcuts")
            .DisableDefaultFonts().DisableTelemetry().DisableAgent().DisableMcp().HideDeveloperTools().HideClientButton());
    }

    private static RedirectHttpResult ToReference() => TypedResults.Redirect("/reference");

    private static string TagOf(string path) => path.Split('/') is [_, "v1", var resource, ..] ? resource : "service";

    private static async Task DescribeAsync(
        OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellationToken)
    {
        var head = context.Description.HttpMethod == "HEAD";
        var path = "/" + context.Description.RelativePath;
        var known = Operations.All.FirstOrDefault(known =>
            known.Path == path && known.Method == (head ? "GET" : context.Description.HttpMethod))
            ?? throw new InvalidOperationException($"{context.Description.HttpMethod} {path} is not in Reference/Operations.");
        operation.OperationId = head ? known.Id + "Head" : known.Id;
        operation.Summary = known.Summary;
        operation.Tags = new HashSet<OpenApiTagReference> { new(TagOf(path), context.Document) };
        foreach (var (name, description) in known.Query)
        {
            operation.Parameters ??= [];
            operation.Parameters.Add(new OpenApiParameter
            {
                Name = name,
                In = ParameterLocation.Query,
                Description = description,
                Schema = new OpenApiSchema { Type = name.EndsWith("Mm", StringComparison.Ordinal) ? JsonSchemaType.Number : name == "limit" ? JsonSchemaType.Integer : JsonSchemaType.String },
            });
        }

        if (known.Body is not null)
        {
            operation.RequestBody = await BodyAsync(known, context, cancellationToken);
        }

        operation.Responses ??= [];
        operation.Responses["default"] = new OpenApiResponse
        {
            Description = "Problem details (RFC 9457).",
            Content = new Dictionary<string, OpenApiMediaType>
            {
                ["application/problem+json"] = new() { Schema = await context.GetOrCreateSchemaAsync(typeof(Problem), null, cancellationToken) },
            },
        };
    }

    private static async Task<OpenApiRequestBody> BodyAsync(
        Operation known, OpenApiOperationTransformerContext context, CancellationToken cancellationToken)
    {
        var content = new Dictionary<string, OpenApiMediaType>
        {
            ["application/json"] = new()
            {
                Schema = await context.GetOrCreateSchemaAsync(known.Body!, null, cancellationToken),
                Example = JsonNode.Parse(known.Example!),
            },
        };
        if (known.Document is { } document)
        {
            content["application/yaml"] = new()
            {
                Schema = new OpenApiSchema { Type = JsonSchemaType.String, Description = "The document as people write it." },
                Example = JsonValue.Create(document),
            };
        }

        if (known.Table is { } table)
        {
            content["text/csv"] = new()
            {
                Schema = new OpenApiSchema { Type = JsonSchemaType.String, Description = "The table as spreadsheets write it." },
                Example = JsonValue.Create(table),
            };
        }

        return new OpenApiRequestBody { Required = true, Content = content };
    }
}
