using System.Globalization;
using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Http;

/// <summary>Collects what is wrong with a request, so that all of it is told at once.</summary>
internal sealed class Faults
{
    private readonly List<InputFault> found = [];

    public void Add(string pointer, string detail) => found.Add(new(pointer, detail));

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
}
