using System.Globalization;
using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Http;

/// <summary>Collects what is wrong with a request, so that all of it is told at once.</summary>
internal sealed class Faults
{
    private readonly List<InputFault> found = [];

    public void Add(string pointer, string detail) => found.Add(new(pointer, detail));

    public bool Any => found.Count > 0;

    /// <summary>What was found wrong so far.</summary>
    public IReadOnlyList<InputFault> Found => found;

    public void ThrowIfAny()
    {
        if (found.Count > 0)
        {
            throw new OffcutsException(ErrorCode.Invalid, "The request cannot be right: see errors.", found);
        }
    }

    /// <summary>A length from wire millimetres: exact to a tick and within limits.</summary>
    public Length Millimetres(string pointer, decimal value, bool zeroAllowed = false)
    {
        if (value < 0 || (value == 0 && !zeroAllowed) || value > Length.Max.Millimetres)
        {
            Add(pointer, string.Create(CultureInfo.InvariantCulture, $"{value} mm: give {(zeroAllowed ? "0 or more" : "more than 0")} and at most {Length.Max.Millimetres} mm."));
            return Length.Zero;
        }

        if (!Length.TryFromMillimetres(value, out var length))
        {
            var below = Length.FromTicks((long)decimal.Floor(value * Length.TicksPerMillimetre));
            var above = below + Length.FromTicks(1);
            Add(pointer, string.Create(CultureInfo.InvariantCulture, $"{value} mm is not a multiple of 0.003125 mm: give {below} or {above}."));
        }

        return length;
    }

    /// <summary>An enum value from its word.</summary>
    public T Word<T>(string pointer, string word)
        where T : struct, Enum
    {
        if (!Words.TryRead<T>(word, out var value))
        {
            Add(pointer, $"'{word}' is not known: give {string.Join(", ", Words.All<T>())}.");
        }

        return value;
    }

    /// <summary>A text no longer than allowed.</summary>
    public void Text(string pointer, string? text, int longest, bool required = false)
    {
        if (required && string.IsNullOrWhiteSpace(text))
        {
            Add(pointer, "It is empty: give a value.");
        }
        else if (text?.Length > longest)
        {
            Add(pointer, string.Create(CultureInfo.InvariantCulture, $"It has {text.Length} characters: give at most {longest}."));
        }
    }

    /// <summary>An amount of the shop's currency.</summary>
    public Money Money(string pointer, decimal amount, string currency)
    {
        if (!MoneyText.TryFromDecimal(amount, currency, out var money, out var error))
        {
            Add(pointer, error);
        }

        return money;
    }

    /// <summary>A whole number within limits.</summary>
    public int Count(string pointer, int value, int least, int most)
    {
        if (value < least || value > most)
        {
            Add(pointer, string.Create(CultureInfo.InvariantCulture, $"{value}: give {least} to {most}."));
        }

        return value;
    }

    /// <summary>The entries of a list; tells if there are too many or if one is null, which the serialiser does not check.</summary>
    public IEnumerable<(int Index, T Entry)> Entries<T>(string pointer, IReadOnlyList<T>? list, int most, int least = 0)
        where T : class
    {
        var count = list?.Count ?? 0;
        if (count < least || count > most)
        {
            Add(pointer, string.Create(CultureInfo.InvariantCulture, $"There are {count} entries: give {least} to {most}."));
            yield break;
        }

        foreach (var (index, entry) in (list ?? []).Index())
        {
            if (entry is null)
            {
                Add($"{pointer}/{index}", "It is null: give a value or leave it out.");
                continue;
            }

            yield return (index, entry);
        }
    }

    /// <summary>The id of a species from its id, name or alias.</summary>
    public string Species(string pointer, string word, SpeciesCatalogue catalogue)
    {
        if (catalogue.Find(word) is { } species)
        {
            return species.Id;
        }

        var meant = catalogue.Suggest(word) is { } near ? $" Did you mean {near}?" : "";
        Add(pointer, $"There is no species '{word}'.{meant} List the species, or add your own.");
        return word;
    }

    /// <summary>The ids of species, each from its id, name or alias; a class of species stays as it is.</summary>
    public IReadOnlyList<string> SpeciesOrClasses(string pointer, IReadOnlyList<string>? words, SpeciesCatalogue catalogue) =>
        [.. Entries(pointer, words, 100).Select(word =>
            catalogue.IsClass(word.Entry) ? word.Entry : Species($"{pointer}/{word.Index}", word.Entry, catalogue)).Distinct()];

    /// <summary>
    /// Faults that the rules of the domain find, told by the wire's names. Left out while there are others: they may follow from those.
    /// </summary>
    /// <param name="at">Pointer of what was checked.</param>
    /// <param name="check">The rules.</param>
    /// <param name="renames">Ends of pointers that the wire calls otherwise.</param>
    public void AddRules(string at, Func<IReadOnlyList<InputFault>> check, params IReadOnlyList<(string Rule, string Wire)> renames)
    {
        if (found.Count > 0)
        {
            return;
        }

        foreach (var fault in check())
        {
            var pointer = renames.Aggregate(fault.Pointer, (path, rename) => path.Replace(rename.Rule, rename.Wire, StringComparison.Ordinal));
            Add(at + pointer[1..], fault.Detail);
        }
    }
}
