namespace Offcuts.Domain;

/// <summary>What a board's warp must keep.</summary>
public static class WarpRules
{
    // Beyond a quarter an arc is no longer shallow, and the wood no board.
    private const int Shallow = 4;

    /// <summary>What is wrong with each member (<c>bow</c>, <c>crook</c>, <c>cup</c>, <c>twist</c>) and how to mend it; empty if nothing is.</summary>
    public static IReadOnlyList<(string Member, string Detail)> Faults(BoardKind kind, Dimensions size, Warp warp)
    {
        (string Member, Length Value, Length Of, string Side)[] measured =
        [
            ("bow", warp.Bow, size.Length, "length"), ("crook", warp.Crook, size.Length, "length"),
            ("cup", warp.Cup, size.Width, "width"), ("twist", warp.Twist, size.Width, "width"),
        ];
        return [.. measured.Where(each => each.Value != Length.Zero).Select(each => (each.Member, Fault(kind, each.Value, each.Of, each.Side)))
            .Where(fault => fault.Item2 is not null).Select(fault => (fault.Member, fault.Item2!))];
    }

    private static string? Fault(BoardKind kind, Length value, Length of, string side) =>
        kind == BoardKind.Sheet ? "A sheet is never planed, so its warp changes nothing: leave it out, or note it."
        : value < Length.Zero ? $"{LengthText.FormatExact(value)}: give zero or more, whichever way the board bends."
        : value.Ticks > of.Ticks / Shallow
            ? $"{LengthText.FormatExact(value)} is more than a quarter of the board's {side}: measure how far it lies off a straightedge, and check the unit."
        : null;
}
