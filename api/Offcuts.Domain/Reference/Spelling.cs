namespace Offcuts.Domain;

/// <summary>Finds the word that was probably meant.</summary>
public static class Spelling
{
    private const int LongestWord = 64;

    /// <summary>
    /// The candidate with the fewest insertions, deletions and replacements from the word (Levenshtein's distance), the first of
    /// several; null if more than a third of the word would have to change.
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
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replace = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replace, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
