namespace Offcuts.Host.Http;

/// <summary>Reads the query of a list that comes in pages.</summary>
/// <param name="query">The query of the request.</param>
/// <param name="filters">The parameters it may have besides <c>limit</c> and <c>cursor</c>.</param>
internal sealed class QueryReader(IQueryCollection query, params string[] filters) : FieldReader(query, [.. filters, "limit", "cursor"])
{
    private const int DefaultLimit = 100;
    private const int MaxLimit = 500;

    /// <summary>Place in the list and length of the page; null for the place means its beginning. Call it last: it throws what was found wrong.</summary>
    public (long? Place, int Limit) Page()
    {
        var (place, _, limit) = Page(isSorted: false);
        return (place, limit);
    }

    /// <summary>The same of a list that may be sorted, with what its place is sorted by.</summary>
    /// <param name="isSorted">Whether it is.</param>
    public (long? Place, string? Key, int Limit) Page(bool isSorted)
    {
        var limit = Whole("limit", 1, MaxLimit) ?? DefaultLimit;
        (long? place, string? key) = (null, null);
        if (Text("cursor") is { } cursor)
        {
            if (Cursor.TryRead(cursor, out var sequence, out key) && (key is not null) == isSorted)
            {
                place = sequence;
            }
            else
            {
                Faults.Add("?cursor", "It is none of ours: give the next of a page, or leave it out to start over.");
            }
        }

        Faults.ThrowIfAny();
        return (place, key, limit);
    }

    /// <summary>Cursor of the next page, also set as the answer's Link header (RFC 8288).</summary>
    public static string? Next(HttpContext context, long? next, string? key = null)
    {
        if (next is not { } place)
        {
            return null;
        }

        var cursor = Cursor.Of(place, key);
        var others = context.Request.Query.Where(pair => pair.Key != "cursor").Select(pair => KeyValuePair.Create(pair.Key, pair.Value[0]));
        context.Response.Headers.Link = $"<{context.Request.Path}{QueryString.Create([.. others, new("cursor", cursor)])}>; rel=\"next\"";
        return cursor;
    }
}
