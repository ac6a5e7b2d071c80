using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>Reads the fields of a query: only known ones, each once; collects what is wrong.</summary>
internal class FieldReader
{
    private readonly IQueryCollection query;

    /// <param name="query">The query of the request.</param>
    /// <param name="known">The fields that it may have.</param>
    public FieldReader(IQueryCollection query, IReadOnlyCollection<string> known)
    {
        this.query = query;
        CheckNames(query, known, Faults);
    }

    /// <summary>What was found wrong so far.</summary>
    public Faults Faults { get; } = new();

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
        Text(name) is { } word ? Faults.Species($"?{name}", word, catalogue) : null;

    public T? Word<T>(string name)
        where T : struct, Enum => Text(name) is { } word ? Faults.Word<T>($"?{name}", word) : null;

    public Length? Size(string name)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return Faults.Millimetres($"?{name}", value);
        }

        Faults.Add($"?{name}", $"'{text}' is not a decimal number of millimetres: give for instance 25.4.");
        return null;
    }

    /// <summary>A whole number within limits.</summary>
    public int? Whole(string name, int least, int most)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
        {
            return value;
        }

        Faults.Add($"?{name}", string.Create(CultureInfo.InvariantCulture, $"'{text}': give {least} to {most}."));
        return null;
    }

    /// <summary>A decimal number of at least 0 that will do.</summary>
    /// <param name="name">The field.</param>
    /// <param name="will">Whether it will.</param>
    /// <param name="what">What to give, for instance <c>a number of hours, for instance 6.5</c>.</param>
    public decimal? Number(string name, Func<decimal, bool> will, string what)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && will(value))
        {
            return value;
        }

        Faults.Add($"?{name}", $"'{text}': give {what}.");
        return null;
    }
}
