using System.Globalization;

namespace Offcuts.Domain;

/// <summary>What is looked for, and why a board does not give it, in words.</summary>
public static class FindText
{
    /// <summary><c>2 of black walnut, 3/4 x 5 x 36 in finished, sound knots will do</c>.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="species">Its species as people say it.</param>
    /// <param name="unit">The unit of sizes.</param>
    public static string Of(PieceWanted piece, string species, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(piece);
        string?[] parts =
        [
            piece.Quantity == 1 ? species : string.Create(CultureInfo.InvariantCulture, $"{piece.Quantity} of {species}"),
            $"{SizeText.Format(piece.Finished, unit)} finished",
            piece.Appearance switch
            {
                Appearance.Clear => null,
                Appearance.SoundKnots => "sound knots will do",
                Appearance.Paint => "for paint",
            },
            piece.Grain == Grain.Free ? "grain either way" : null,
            piece.Batch is null ? null : $"of batch {piece.Batch}",
            piece.Place is null ? null : $"at {piece.Place}",
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    /// <summary>Why a board does not give the piece: <c>too short by 1/2" (takes 36 1/2", has 36")</c>.</summary>
    /// <param name="near">The board.</param>
    /// <param name="unit">The unit of sizes.</param>
    public static string WhyNot(NearBoard near, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(near);
        return string.Join("; ", near.Lacks.Select(lack => WhyNot(lack, unit)));
    }

    private static string WhyNot(BoardLack lack, DisplayUnit unit) => lack.Reason switch
    {
        MissingReason.NotGoodEnough => "does not look good enough",
        MissingReason.WrongThickness => By(lack.Needed > lack.Has ? "too thin" : "too thick", lack, unit),
        MissingReason.TooWideForMachines => $"its blank{Size(lack.Needed, unit)} is wider than the jointer or planer takes{Size(lack.Has, unit)}",
        MissingReason.TooShort => By("too short", lack, unit),
        MissingReason.TooNarrow => By("too narrow", lack, unit),
        MissingReason.TooWarped when lack.Needed is { } needed => By("too thin for its warp", lack with { Needed = LossText.Up(needed, unit) }, unit),
        MissingReason.TooWarped => "too warped",
        MissingReason.NoSuchSpecies or MissingReason.NotOfOneBatch or MissingReason.TooFew =>
            throw new ArgumentException($"{lack.Reason} says nothing of a board.", nameof(lack)),
    };

    private static string By(string what, BoardLack lack, DisplayUnit unit) => (lack.Needed, lack.Has) switch
    {
        ({ } needed, { Ticks: 0 }) => $"{what} (takes {LengthText.Format(needed, unit)}, and defects and trimmed ends leave nothing)",
        ({ } needed, { } has) =>
            $"{what} by {LengthText.Format(Length.FromTicks(Math.Abs((needed - has).Ticks)), unit)} (takes {LengthText.Format(needed, unit)}, has {LengthText.Format(has, unit)})",
        _ => what,
    };

    private static string Size(Length? size, DisplayUnit unit) => size is { } known ? $" ({LengthText.Format(known, unit)})" : "";
}
