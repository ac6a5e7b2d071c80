using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Net.Http.Headers;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>Reads a JSON body and says where it is wrong.</summary>
internal static class RequestBody
{
    /// <summary>Whether the body is a document as people write it, YAML (RFC 9512).</summary>
    public static bool IsDocument(HttpRequest request) => IsOf(request, "application/yaml");

    /// <summary>Whether the body is a table as spreadsheets write it (RFC 7111).</summary>
    public static bool IsTable(HttpRequest request) => IsOf(request, "text/csv");

    public static async Task<string> ReadTextAsync(HttpRequest request, CancellationToken cancellationToken)
    {
        using var reader = new StreamReader(request.Body, new UTF8Encoding(false, throwOnInvalidBytes: true));
        try
        {
            return await reader.ReadToEndAsync(cancellationToken);
        }
        catch (DecoderFallbackException)
        {
            throw Invalid("#", "The text is not UTF-8: save it as UTF-8.", null);
        }
    }

    public static async Task<T> ReadAsync<T>(HttpRequest request, JsonTypeInfo<T> type, CancellationToken cancellationToken)
        where T : class
    {
        if (!request.HasJsonContentType())
        {
            throw new RefusedException(StatusCodes.Status415UnsupportedMediaType, "Send the body as application/json, or as application/yaml where the path takes documents.");
        }

        try
        {
            return await JsonSerializer.DeserializeAsync(request.Body, type, cancellationToken)
                ?? throw Invalid("#", "The body is null; send an object.", null);
        }
        catch (JsonException bad)
        {
            throw Invalid(PointerOf(bad.Path), JsonFaults.Explain(bad, type), bad.LineNumber is { } line ? (int)line + 1 : null);
        }
    }

    /// <summary>A JSON pointer as a URI fragment (RFC 6901, section 6) for the path that System.Text.Json reports, as <c>$.items[2].species</c>.</summary>
    internal static string PointerOf(string? path) =>
        "#" + (path ?? "$")[1..].Replace("['", "/", StringComparison.Ordinal).Replace("']", "", StringComparison.Ordinal)
            .Replace('.', '/').Replace('[', '/').Replace("]", "", StringComparison.Ordinal);

    private static bool IsOf(HttpRequest request, string mediaType) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type) && type.MediaType.Equals(mediaType, StringComparison.OrdinalIgnoreCase);

    private static OffcutsException Invalid(string pointer, string detail, int? line) =>
        new(ErrorCode.Invalid, "The body cannot be read as asked: see errors.", new InputFault(pointer, detail, line));
}
