using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>Reads a JSON body and says where it is wrong.</summary>
internal static class RequestBody
{
    public static async Task<T> ReadAsync<T>(HttpRequest request, JsonTypeInfo<T> type, CancellationToken cancellationToken)
        where T : class
    {
        if (!request.HasJsonContentType())
        {
            throw new RefusedException(StatusCodes.Status415UnsupportedMediaType, "Send the body as application/json.");
        }

        try
        {
            return await JsonSerializer.DeserializeAsync(request.Body, type, cancellationToken)
                ?? throw Invalid("#", "The body is null; send an object.", null);
        }
        catch (JsonException bad)
        {
            throw Invalid(PointerOf(bad.Path), WithoutPath(bad.Message), bad.LineNumber is { } line ? (int)line + 1 : null);
        }
    }

    /// <summary>A JSON pointer as a URI fragment (RFC 6901, section 6) for the path that System.Text.Json reports, as <c>$.items[2].species</c>.</summary>
    internal static string PointerOf(string? path) =>
        "#" + (path ?? "$")[1..].Replace("['", "/", StringComparison.Ordinal).Replace("']", "", StringComparison.Ordinal)
            .Replace('.', '/').Replace('[', '/').Replace("]", "", StringComparison.Ordinal);

    private static string WithoutPath(string message) => message.Split(" Path: ")[0];

    private static OffcutsException Invalid(string pointer, string detail, int? line) =>
        new(ErrorCode.Invalid, "The body cannot be read as asked: see errors.", new InputFault(pointer, detail, line));
}
