using System.CommandLine;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands;

/// <summary>Lengths and sizes on the command line, as makers write them.</summary>
internal static class Lengths
{
    /// <summary>The value of an option in the wire's millimetres; null if it is not given.</summary>
    /// <exception cref="CliException">It is no length.</exception>
    public static decimal? Millimetres(Run run, Option<string> option, DisplayUnit unit, bool zeroAllowed = false)
    {
        if (run.Get(option) is not { } text)
        {
            return null;
        }

        if (zeroAllowed && text.TrimStart().StartsWith('-'))
        {
            throw CliException.Invalid($"{option.Name}: '{text}' is negative: give zero or more.");
        }

        return LengthText.TryParse(text, unit, zeroAllowed, out var length, out var error)
            ? length.Millimetres
            : throw CliException.Invalid($"{option.Name}: {error}");
    }

    /// <summary>A size of the wire in the shop's unit.</summary>
    public static string Text(SizeRecord size, DisplayUnit unit) => SizeText.Format(Size(size.ThicknessMm, size.WidthMm, size.LengthMm), unit);

    /// <summary>A size from the wire's millimetres.</summary>
    public static Dimensions Size(decimal thickness, decimal width, decimal length) =>
        new(Length.FromMillimetres(thickness), Length.FromMillimetres(width), Length.FromMillimetres(length));

    /// <summary>A board's size; of softwood also by its nominal name, which stands in the answer then.</summary>
    /// <exception cref="CliException">It is no size.</exception>
    public static (Dimensions Size, string? Nominal) BoardSize(string name, IEnumerable<string> words, DisplayUnit unit, bool isSoftwood)
    {
        string? nominal = null;
        var text = string.Join(' ', words);
        return (isSoftwood
            ? SizeText.TryParseSoftwood(text, unit, out var size, out nominal, out var error)
            : SizeText.TryParse(text, unit, out size, out error))
            ? (size, nominal)
            : throw CliException.Invalid($"{name}: {error}");
    }

    /// <summary>A size of thickness x width x length; the words may come unquoted.</summary>
    /// <exception cref="CliException">It is no size.</exception>
    public static Dimensions Size(string name, IEnumerable<string> words, DisplayUnit unit) =>
        SizeText.TryParse(string.Join(' ', words), unit, out var size, out var error)
            ? size
            : throw CliException.Invalid($"{name}: {error}");
}
