using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>Reads the query of a list: only known parameters, each once; collects what is wrong.</summary>
internal sealed class QueryReader
{
    private const int DefaultLimit = 100;
    private const int MaxLimit = 500;

    private readonly IQueryCollection query;
    private readonly Faults faults = new();

    /// <param name="query">The query of the request.</param>
    /// <param name="filters">The parameters it may have besides <c>limit</c> and <c>cursor</c>.</param>
    public QueryReader(IQueryCollection query, params string[] filters)
    {
        this.query = query;
        string[] known = [.. filters, "limit", "cursor"];
        CheckNames(query, known, faults);
    }

    /// <summary>Reports parameters that are not known, or given more than once.</summary>
    public static void CheckNames(IQueryCollection query, IReadOnlyCollection<string> known, Faults faults)
    {
        foreach (var (name, values) in query)
        {
            if (!known.Contains(name, StringComparer.Ordinal))
            {
                faults.Add($"?{name}", $"There is no such parameter: give {string.Join(", ", known)}.");
            }
            else if (values.Count > 1)
            {
                faults.Add($"?{name}", "It is given more than once: give it once.");
            }
        }
    }

    public string? Text(string name) => query.TryGetValue(name, out var values) ? values[0] : null;

    /// <summary>The id of a species from its id, name or alias.</summary>
    public string? Species(string name, SpeciesCatalogue catalogue) =>
        Text(name) is { } word ? faults.Species($"?{name}", word, catalogue) : null;

    public T? Word<T>(string name)
        where T : struct, Enum => Text(name) is { } word ? faults.Word<T>($"?{name}", word) : null;

    public Length? Size(string name)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return faults.Millimetres($"?{name}", value);
        }

        faults.Add($"?{name}", $"'{text}' is not a decimal number of millimetres: give for instance 25.4.");
        return null;
    }

    /// <summary>Place in the list and length of the page; null for the place means its beginning. Call it last: it throws what was found wrong.</summary>
    public (long? Place, int Limit) Page()
    {
        var limit = DefaultLimit;
        if (Text("limit") is { } wanted
            && (!int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out limit) || limit is < 1 or > MaxLimit))
        {
            faults.Add("?limit", $"'{wanted}': give 1 to {MaxLimit}.");
        }

        long? place = null;
        if (Text("cursor") is { } cursor)
        {
            if (Cursor.TryRead(cursor, out var sequence))
            {
                place = sequence;
            }
            else
            {
                faults.Add("?cursor", "It is none of ours: give the next of a page, or leave it out to start over.");
            }
        }

        faults.ThrowIfAny();
        return (place, limit);
    }

    /// <summary>Cursor of the next page, also set as the answer's Link header (RFC 8288).</summary>
    public static string? Next(HttpContext context, long? next)
    {
        if (next is not { } place)
        {
            return null;
        }

        var cursor = Cursor.Of(place);
        var others = context.Request.Query.Where(pair => pair.Key != "cursor").Select(pair => KeyValuePair.Create(pair.Key, pair.Value[0]));
        context.Response.Headers.Link = $"<{context.Request.Path}{QueryString.Create([.. others, new("cursor", cursor)])}>; rel=\"next\"";
        return cursor;
    }
}
