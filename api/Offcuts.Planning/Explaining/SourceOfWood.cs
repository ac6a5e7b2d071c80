using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Explaining;

/// <summary>A board or a size of an offer, as something that a piece may come from.</summary>
/// <param name="Id">Id of the board or offer.</param>
/// <param name="Class">What it is.</param>
/// <param name="Usable">What the trims of its ends and edges leave of its face.</param>
/// <param name="Clear">The largest clear rectangle of that.</param>
/// <param name="Defects">Its defects.</param>
internal sealed record SourceOfWood(string Id, BoardClass Class, Rect Usable, Rect Clear, IReadOnlyList<Defect> Defects)
{
    public Length Along => Clear.Length;

    public Length Across => Clear.Width;

    public static SourceOfWood Of(Board board, Trims trims) =>
        new(board.Id, BoardClass.Of(board), trims.Usable(board) ?? default, trims.Clear(board) ?? default, board.Defects);

    public static SourceOfWood Of(OfferSize size, Trims trims)
    {
        var usable = trims.Usable(size) ?? default;
        return new SourceOfWood(size.Offer.Id, BoardClass.Of(size.Offer), usable, usable, []);
    }

    /// <summary>
    /// Whether a piece of that size has a place clear of what it does not tolerate: if it has one, it still has one when it is pushed left and
    /// down until it meets an edge or a defect, so only those places are tried.
    /// </summary>
    public bool HasPlaceFor(Length along, Length across, IReadOnlyList<string> tolerates)
    {
        var obstacles = Defects.Where(defect => !DefectKinds.Tolerates(tolerates, defect.Kind)).Select(defect => defect.Area).ToList();
        var lows = obstacles.Select(obstacle => obstacle.Top).Append(Usable.Y).Distinct().ToList();
        return obstacles.Select(obstacle => obstacle.Right).Append(Usable.X).Distinct().Any(x => lows.Exists(y =>
        {
            var place = new Rect(x, y, along, across);
            return x >= Usable.X && y >= Usable.Y && place.Right <= Usable.Right && place.Top <= Usable.Top && !obstacles.Exists(place.Overlaps);
        }));
    }
}
