namespace Offcuts.Domain;

/// <summary>Finds the word that was probably meant.</summary>
public static class Spelling
{
    private const int LongestWord = 64;
    private const int MostNamed = 8;

    /// <summary>What to write instead of a name that is not known, as a sentence: the one that was probably meant, else those that there are.</summary>
    /// <param name="word">What was written.</param>
    /// <param name="known">The names that there are.</param>
    /// <param name="none">The sentence where there are none.</param>
    public static string Instead(string word, IReadOnlyCollection<string> known, string none) =>
        Nearest(word, known) is { } near ? $"Did you mean '{near}'?"
        : known.Count == 0 ? none
        : $"There {(known.Count == 1 ? "is" : "are")} {string.Join(", ", known.Take(MostNamed))}{(known.Count > MostNamed ? " and others" : "")}.";

    /// <summary>
    /// The candidate with the fewest insertions, deletions, replacements and swaps of neighbours from the word (optimal string
    /// alignment distance), the first of several; null if more than a third of the word would have to change.
    /// </summary>
    public static string? Nearest(string word, IEnumerable<string> candidates)
    {
        if (word.Length is 0 or > LongestWord)
        {
            return null;
        }

        var allowed = Math.Max(1, word.Length / 3);
        return candidates
            .Where(candidate => Math.Abs(candidate.Length - word.Length) <= allowed)
            .Select(candidate => (candidate, distance: Distance(word.ToLowerInvariant(), candidate.ToLowerInvariant())))
            .Where(found => found.distance <= allowed)
            .OrderBy(found => found.distance)
            .Select(found => found.candidate)
            .FirstOrDefault();
    }

    private static int Distance(string a, string b)
    {
        var distance = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                distance[i, j] = i == 0 || j == 0 ? i + j : Step(i, j);
            }
        }

        return distance[a.Length, b.Length];

        int Step(int i, int j)
        {
            var best = Math.Min(
                distance[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1),
                Math.Min(distance[i - 1, j], distance[i, j - 1]) + 1);
            return i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] ? Math.Min(best, distance[i - 2, j - 2] + 1) : best;
        }
    }
}
