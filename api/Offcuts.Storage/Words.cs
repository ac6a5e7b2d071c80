using System.Text.Json;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>Enum values as they stand in the database and on the wire: lower-case words with hyphens.</summary>
public static class Words
{
    /// <summary>The word for a value.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>All words of an enum, in its order.</summary>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(Of)];

    /// <summary>The value for a word, if there is one.</summary>
    public static bool TryRead<T>(string word, out T value)
        where T : struct, Enum
    {
        foreach (var candidate in Enum.GetValues<T>())
        {
            if (Of(candidate) == word)
            {
                value = candidate;
                return true;
            }
        }

        value = default;
        return false;
    }

    /// <summary>The value for a stored word.</summary>
    /// <exception cref="OffcutsException">The database holds a word that this program does not know.</exception>
    internal static T Read<T>(string word)
        where T : struct, Enum =>
        TryRead<T>(word, out var value)
            ? value
            : throw new OffcutsException(ErrorCode.DataIntegrity, $"The database holds '{word}' where a {typeof(T).Name} should stand.");
}
