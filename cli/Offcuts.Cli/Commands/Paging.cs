namespace Offcuts.Cli.Commands;

/// <summary>Lists that come in pages.</summary>
internal static class Paging
{
    /// <summary>Entries asked for at once; the most that the API gives.</summary>
    public const int Largest = 500;

    /// <summary>All entries, page after page.</summary>
    /// <param name="fetch">Fetches the page at a cursor; null for the first.</param>
    public static async Task<List<T>> AllAsync<T>(Func<string?, Task<(IReadOnlyList<T> Items, string? Next)>> fetch)
    {
        var all = new List<T>();
        string? cursor = null;
        do
        {
            (var items, cursor) = await fetch(cursor);
            all.AddRange(items);
        }
        while (cursor is not null);
        return all;
    }
}
