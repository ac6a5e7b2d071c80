namespace Offcuts.Domain;

/// <summary>How a blank becomes its pieces, in words.</summary>
public static class RecipeText
{
    /// <summary>The steps after the blank is sawn out, with sizes in the shop's unit; null where one blank is simply milled to one piece.</summary>
    /// <param name="piece">The blank.</param>
    /// <param name="part">Its part.</param>
    /// <param name="shop">The shop.</param>
    public static string? Of(PartPiece piece, Part part, Shop shop)
    {
        var recipe = piece.Recipe;
        var finished = piece.Finished ?? part.Finished;
        var thickness = recipe.PieceThickness(finished.Thickness);
        var steps = new List<string>();
        if (recipe.Slices > 1)
        {
            steps.Add(FormattableString.Invariant($"resaw into {recipe.Slices}, each {Text(thickness + shop.ResawCleanup)} thick"));
        }

        if (recipe.InRow > 1 || recipe.Carried)
        {
            // What a slice gives, unless one blank gives all.
            var count = recipe.Slices > 1 ? recipe.InRow : piece.Copies.Count;
            var each = recipe.Slices > 1 ? "each " : "";
            var length = Text(piece.Turned ? finished.Width : finished.Length);
            // "3 x 4" would read as a size.
            steps.Add(count == 1
                ? $"mill {each}at this length, then cut to {length}"
                : FormattableString.Invariant($"mill {each}as one, then cut into {count} of {length}"));
        }

        if (recipe.Layers > 1)
        {
            steps.Add(FormattableString.Invariant($"glue up {recipe.Layers} layers of {Text(thickness)}"));
        }

        return steps.Count == 0 ? null : string.Join("; ", steps);

        string Text(Length length) => LengthText.Format(length, shop.Unit);
    }

    /// <summary>Which copies of its part a blank gives, such as <c>#1</c>, <c>#1..#3</c> or <c>#2 layer 1</c>.</summary>
    public static string Copies(PartPiece piece) => Copies(piece.Copies, piece.Recipe.Layers > 1);

    /// <inheritdoc cref="Copies(PartPiece)"/>
    public static string Copies(IReadOnlyList<PartCopy> copies, bool layered) => string.Join(", ", layered
        ? copies.GroupBy(copy => copy.Copy).Select(one => FormattableString.Invariant(
            $"#{one.Key} layer{(one.Count() > 1 ? "s" : "")} {string.Join("+", one.Select(copy => copy.Layer.ToString(System.Globalization.CultureInfo.InvariantCulture)))}"))
        : Runs([.. copies.Select(copy => copy.Copy).Order()]));

    // With a hyphen a number could end up on a line of its own.
    private static IEnumerable<string> Runs(List<int> numbers)
    {
        for (var at = 0; at < numbers.Count;)
        {
            var end = at;
            while (end + 1 < numbers.Count && numbers[end + 1] == numbers[end] + 1)
            {
                end++;
            }

            yield return end == at
                ? FormattableString.Invariant($"#{numbers[at]}")
                : FormattableString.Invariant($"#{numbers[at]}..#{numbers[end]}");
            at = end + 1;
        }
    }
}
