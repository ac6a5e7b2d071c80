namespace Offcuts.Domain;

/// <summary>The keep rule and its rulings in words, with sizes in the shop's unit.</summary>
/// <param name="unit">The shop's unit.</param>
/// <param name="nameOf">The name of a species or class as people say it.</param>
public sealed class KeepText(DisplayUnit unit, Func<string, string> nameOf)
{
    /// <summary>Why a piece is kept or let go: <c>rule 4 keeps black cherry only from 12" long and 2" wide; it is 10" long</c>.</summary>
    /// <param name="ruling">The ruling.</param>
    /// <param name="piece">The size of the piece.</param>
    public string Of(KeepRuling ruling, Dimensions piece)
    {
        var rule = FormattableString.Invariant($"rule {ruling.Number}");
        return (ruling.Entry, ruling.IsKept) switch
        {
            (null, true) => $"the shop keeps what is at least {Least(ruling.Size!.Value)}",
            (null, false) => $"the shop keeps only what is at least {Least(ruling.Size!.Value)}; it is {Is(ruling.Missed, piece)}",
            ({ Word: KeepWord.Never } entry, _) when ruling.Size is null => $"{rule} lets {Species(entry)} go, whatever its size",
            ({ Word: KeepWord.Never } entry, _) => $"{rule} lets {Species(entry)} go that is {Under(entry.Sizes)}; it is {Is(ruling.Missed, piece)}",
            ({ Word: KeepWord.Always } entry, _) => $"{rule} always keeps {Species(entry)}{From(entry.Sizes)}",
            ({ } entry, true) => $"{rule} keeps {Species(entry)}{From(entry.Sizes)}",
            ({ } entry, false) => $"{rule} keeps {Species(entry)} only{From(entry.Sizes)}; it is {Is(ruling.Missed, piece)}",
        };
    }

    /// <summary>The same of a piece with defects, of which the rule was asked by what they leave clear.</summary>
    /// <param name="ruling">The ruling.</param>
    /// <param name="clear">The size of what they leave clear.</param>
    /// <param name="piece">The size of the piece.</param>
    public string Of(KeepRuling ruling, Dimensions clear, Dimensions piece) =>
        clear == piece ? Of(ruling, piece) : $"{Of(ruling, clear)}, counting what its defects leave clear";

    /// <summary>An entry as a sentence without its end: <c>Never keep eastern white pine</c>.</summary>
    public string Of(KeepEntry entry) => entry.Word switch
    {
        KeepWord.Never => $"Never keep {Species(entry)}{(entry.Sizes.Count == 0 ? "" : $" that is {Under(entry.Sizes)}")}",
        KeepWord.Always => $"Always keep {Species(entry)}{From(entry.Sizes)}",
        KeepWord.Keep => $"Keep {Species(entry)}{From(entry.Sizes)}, and nothing smaller",
    };

    private string Species(KeepEntry entry) => entry.Species is { } species ? string.Join(", ", species.Select(nameOf)) : "wood of any kind";

    private string From(IReadOnlyList<KeepSize> sizes) => sizes.Count == 0 ? "" : $" from {string.Join(" or from ", sizes.Select(Least))}";

    private string Least(KeepSize size) => And(
    [
        size.Length is { } length ? $"{Text(length)} long" : null,
        size.Width is { } width ? $"{Text(width)} wide" : null,
        size.Thickness is { } thickness ? $"{Text(thickness)} thick" : null,
        size.Section is { } section ? $"{SectionText.Format(section, unit)} in section" : null,
    ]);

    private string Under(IReadOnlyList<KeepSize> sizes) => string.Join(" or ", sizes.SelectMany(size => new[]
    {
        size.Length is { } length ? $"shorter than {Text(length)}" : null,
        size.Width is { } width ? $"narrower than {Text(width)}" : null,
        size.Thickness is { } thickness ? $"thinner than {Text(thickness)}" : null,
        size.Section is { } section ? $"under {SectionText.Format(section, unit)} in section" : null,
    }).OfType<string>());

    private string Is(IReadOnlyList<KeepSide> missed, Dimensions piece) => And([.. missed.Distinct().Select(side => side switch
    {
        KeepSide.Length => $"{Text(piece.Length)} long",
        KeepSide.Width => $"{Text(piece.Width)} wide",
        KeepSide.Thickness => $"{Text(piece.Thickness)} thick",
        KeepSide.Section => $"{SectionText.Format(piece.Thickness * piece.Width, unit)} in section",
    })]);

    private static string And(IReadOnlyList<string?> words)
    {
        List<string> said = [.. words.OfType<string>()];
        return said is [.. var first, var last] && first.Count > 0 ? $"{string.Join(", ", first)} and {last}" : string.Concat(said);
    }

    private string Text(Length length) => LengthText.Format(length, unit);
}
