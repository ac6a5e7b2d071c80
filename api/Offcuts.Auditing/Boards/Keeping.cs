using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// Rule 7: what the shop keeps. The entries of its rule are asked in their order until one decides; where none does, the keep size. A side that an
/// entry leaves out must be no shaving.
/// </summary>
internal static class Keeping
{
    /// <summary>Whether a piece of a board is kept.</summary>
    public static bool IsKept(AuditScope scope, BoardCut board, Rect at) => IsKept(scope.Problem.Shop, board.Species, new(board.Size.Thickness, at.Width, at.Length));

    /// <summary>Whether a piece of a species is kept.</summary>
    public static bool IsKept(Shop shop, string species, Dimensions piece)
    {
        foreach (var entry in shop.KeepRule.Entries)
        {
            if (entry.Species is { } about && !about.Contains(species))
            {
                continue;
            }

            var reached = entry.Sizes.Any(size => Reaches(piece, size) && NoShaving(piece, size));
            switch (entry.Word)
            {
                case KeepWord.Never when entry.Sizes.Count == 0 || entry.Sizes.Any(size => !Reaches(piece, size)):
                    return false;
                case KeepWord.Always when reached || (entry.Sizes.Count == 0 && NoShaving(piece, default)):
                    return true;
                case KeepWord.Keep:
                    return reached;
                default:
                    break;
            }
        }

        return piece.Thickness >= shop.Keep.Thickness && piece.Width >= shop.Keep.Width && piece.Length >= shop.Keep.Length;
    }

    private static bool Reaches(Dimensions piece, KeepSize size) =>
        piece.Length.Ticks >= (size.Length?.Ticks ?? 0) && piece.Width.Ticks >= (size.Width?.Ticks ?? 0) && piece.Thickness.Ticks >= (size.Thickness?.Ticks ?? 0)
        && (Int128)piece.Thickness.Ticks * piece.Width.Ticks >= (size.Section?.SquareTicks ?? 0);

    private static bool NoShaving(Dimensions piece, KeepSize size) =>
        (size.Length is not null || piece.Length >= KeepRule.Smallest.Length) && (size.Width is not null || piece.Width >= KeepRule.Smallest.Width)
        && (size.Thickness is not null || piece.Thickness >= KeepRule.Smallest.Thickness);
}
