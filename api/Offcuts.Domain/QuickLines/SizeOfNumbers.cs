using System.Globalization;

namespace Offcuts.Domain;

/// <summary>The size that the numbers of a line make: thickness before width before length where nothing says otherwise.</summary>
internal static class SizeOfNumbers
{
    private static readonly Side[] InOrder = [Side.Thickness, Side.Width, Side.Length];

    /// <summary>The numbers by their sides; null, with a fault, if they make no size.</summary>
    public static SizeNumber[]? BySide(LineDraft draft, int end)
    {
        var sides = new SizeNumber?[InOrder.Length];
        foreach (var number in draft.Numbers.Where(number => number.Side is not null))
        {
            if (sides[(int)number.Side!] is not null)
            {
                draft.Fault(number.At, $"This is a second {Name(number.Side.Value)}: give each side once.");
                return null;
            }

            sides[(int)number.Side] = number;
        }

        var unnamed = draft.Numbers.Where(number => number.Side is null).ToList();
        // 4/4 is a thickness wherever it stands.
        if (sides[0] is null && unnamed.FindAll(number => LengthReading.IsQuarters(number.Text)) is [var quarters])
        {
            sides[0] = quarters;
            unnamed.Remove(quarters);
        }

        TakeCount(draft, sides, unnamed);
        foreach (var side in InOrder.Where(side => sides[(int)side] is null))
        {
            if (unnamed.Count == 0)
            {
                draft.Fault(end, $"The {Name(side)} is missing: a size is thickness x width x length, for instance 3/4 x 5 1/2 x 36.");
                return null;
            }

            sides[(int)side] = unnamed[0];
            unnamed.RemoveAt(0);
        }

        if (unnamed.Count > 0)
        {
            draft.Fault(unnamed[0].At, "This is one number too many: a size is thickness x width x length, and a count stands before an @: 3 @ 3/4 x 5 1/2 x 36.");
            return null;
        }

        return sides!;
    }

    /// <summary>The size of the numbers; of softwood also by its nominal name. All zero, with a fault, if one of them is no length.</summary>
    public static (Dimensions Size, string? Nominal) Read(SizeNumber[] sides, Species? species, DisplayUnit bareUnit, LineDraft draft)
    {
        string? nominal = null;
        var text = $"{sides[0].Text}{(IsTight(sides) ? "x" : " x ")}{sides[1].Text} x {sides[2].Text}";
        if (species is { IsSoftwood: true }
            ? SizeText.TryParseSoftwood(text, bareUnit, out var size, out nominal, out var error)
            : SizeText.TryParse(text, bareUnit, out size, out error))
        {
            return (size, nominal);
        }

        var wrong = sides.FirstOrDefault(side => !LengthText.TryParse(side.Text, bareUnit, out _, out _)
            && !LengthText.TryParse(side.Text, DisplayUnit.Inch, out _, out _)) ?? sides.MinBy(side => side.At)!;
        draft.Fault(wrong.At, error);
        return default;
    }

    /// <summary>
    /// Whether the thickness stands behind numbers that nothing tells apart: whoever says it last may say the length first, and no order can be relied on.
    /// </summary>
    public static bool IsOtherwiseOrdered(SizeNumber[] sides) => sides[1].Side is null && sides[2].Side is null && sides[0].At > sides[1].At;

    /// <summary>Which sides were estimated.</summary>
    public static Estimates Estimates(SizeNumber[] sides, bool all) =>
        new(all || sides[0].IsEstimate, all || sides[1].IsEstimate, all || sides[2].IsEstimate);

    // 2 ash boards 4/4 x 6 x 40: one number too many, and the first is whole and stands by itself.
    private static void TakeCount(LineDraft draft, SizeNumber?[] sides, List<SizeNumber> unnamed)
    {
        if (draft.Quantity is null && unnamed.Count == sides.Count(side => side is null) + 1 && unnamed[0] is var first && first == draft.Numbers[0]
            && draft.Numbers is [_, { IsAfterTimes: false }, ..] && !first.IsEstimate
            && int.TryParse(first.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= Limits.MaxQuantity)
        {
            draft.Quantity = count;
            unnamed.RemoveAt(0);
        }
    }

    // A nominal size is written without spaces; nobody estimates one.
    private static bool IsTight(SizeNumber[] sides) =>
        sides[1] is { IsTight: true, Side: null } && sides[0].Side is null && sides[0].At < sides[1].At && !sides[0].IsEstimate && !sides[1].IsEstimate;

    private static string Name(Side side) => side switch
    {
        Side.Thickness => "thickness",
        Side.Width => "width",
        Side.Length => "length",
    };
}
