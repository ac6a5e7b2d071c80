using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using Offcuts.Contracts;

namespace Offcuts.Host.Http;

/// <summary>What is wrong with a body, in the words of whoever sent it: the serialiser's own name classes of this program.</summary>
internal static partial class JsonFaults
{
    /// <summary>What is wrong and what to give instead.</summary>
    /// <param name="bad">The serialiser's fault.</param>
    /// <param name="body">What the whole body should be.</param>
    public static string Explain(JsonException bad, JsonTypeInfo body)
    {
        // The path, which its message repeats, is told as a pointer.
        var message = bad.Message.Split(" Path: ")[0];
        if (Unknown().Match(message) is { Success: true } unknown)
        {
            return $"There is no field '{unknown.Groups["name"].Value}' here: give {Fields(unknown.Groups["type"].Value)}.";
        }

        if (Missing().Match(message) is { Success: true } missing)
        {
            return $"Required fields are missing: {missing.Groups["names"].Value.TrimEnd('.').Replace("'", "", StringComparison.Ordinal)}.";
        }

        if (Twice().Match(message) is { Success: true } twice)
        {
            return $"The field '{twice.Groups["name"].Value}' stands twice: give it once.";
        }

        if (message.StartsWith("The JSON value could not be converted to ", StringComparison.Ordinal))
        {
            return $"It is of the wrong kind: give {KindOf(TypeAt(bad.Path, body.Type))}.";
        }

        return message.StartsWith("The input does not contain any JSON tokens", StringComparison.Ordinal)
            ? "The body is empty or ends too early: send a whole JSON object."
            : message;
    }

    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "WireJson names every class of the wire, so that none is trimmed.")]
    private static string Fields(string type) =>
        typeof(BoardEntry).Assembly.GetType(type) is { } wire && WireJson.Default.GetTypeInfo(wire) is { } info
            ? string.Join(", ", info.Properties.Select(property => property.Name))
            : "only fields that are documented";

    // The message may name the type of the object around the value, so the path decides.
    private static Type? TypeAt(string? path, Type body)
    {
        Type? type = body;
        foreach (var step in RequestBody.PointerOf(path).Split('/').Skip(1))
        {
            type = type is null || WireJson.Default.GetTypeInfo(type) is not { } info ? null
                : info.ElementType ?? info.Properties.FirstOrDefault(property => property.Name == step)?.PropertyType;
        }

        return type is null ? null : Nullable.GetUnderlyingType(type) ?? type;
    }

    private static string KindOf(Type? type) => type switch
    {
        null => "what the reference page names",
        _ when type == typeof(string) => "a text in quotes",
        _ when type == typeof(int) || type == typeof(long) => "a whole number without quotes",
        _ when type == typeof(decimal) || type == typeof(double) => "a number without quotes",
        _ when type == typeof(bool) => "true or false",
        _ when type == typeof(DateOnly) => "a date in quotes, as \"2026-03-14\"",
        _ when type == typeof(DateTimeOffset) => "a date with its time in quotes, as \"2026-03-14T09:00:00Z\"",
        _ when WireJson.Default.GetTypeInfo(type)?.Kind == JsonTypeInfoKind.Enumerable => "a list in brackets",
        _ => "an object in braces",
    };

    [GeneratedRegex("^The JSON property '(?<name>.*)' could not be mapped to any \\.NET member contained in type '(?<type>[^']+)'")]
    private static partial Regex Unknown();

    [GeneratedRegex("^JSON deserialization for type '[^']+' was missing required properties including: (?<names>.+)$")]
    private static partial Regex Missing();

    [GeneratedRegex("^Duplicate property '(?<name>.*)' encountered")]
    private static partial Regex Twice();
}
