using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Works out what the boards in stock offer to cut: a whole face, a clear rectangle, or divisions into areas.</summary>
/// <param name="problem">The problem.</param>
/// <param name="trims">What comes off first.</param>
/// <param name="profileOf">What can be cut from boards of a class where they hold defects of such kinds.</param>
internal sealed class BoardDivider(PlanningProblem problem, Trims trims, Func<BoardClass, IReadOnlyList<string>, Profile> profileOf)
{
    private readonly DividingEffort effort = DividingEffort.For(problem.Stock.Count(board => board.Defects.Count > 0));
    private readonly Dictionary<(BoardClass, Dimensions, string), CuttableShape?> known = [];

    /// <summary>What can be cut from a board; null for nothing.</summary>
    public CuttableShape? ShapeOf(Board board)
    {
        var cls = BoardClass.Of(board);
        var profile = profileOf(cls, []);
        if (profile.IsEmpty || trims.Usable(board) is not { } usable)
        {
            return null;
        }

        if (!board.Defects.Any(defect => defect.Area.Overlaps(usable)))
        {
            return new CuttableShape(profile, usable, "", []);
        }

        var defects = $"{usable};" + string.Join(';', board.Defects.Select(defect => $"{defect.Kind} {defect.Area}").Order(StringComparer.Ordinal));
        if (!known.TryGetValue((cls, board.Size, defects), out var shape))
        {
            known.Add((cls, board.Size, defects), shape = Divided(board, cls, profile, usable, defects));
        }

        return shape;
    }

    /// <summary>The divisions of a board of that shape, with one pseudo-board for each area that any of them has.</summary>
    public IReadOnlyList<Division> Divisions(CuttableShape shape, BoardType board)
    {
        var areas = new Dictionary<(Rect, string), BoardType>();
        var kept = problem.Shop.KeptOf(board.Class.Species);
        return [.. shape.Ways.Select(way => new Division(
            way.Tree, [.. way.Areas.Where(area => IsUseful(board.Class, area)).Select(AreaOf)], Cuts(way.Tree),
            way.Areas.Where(area => !IsUseful(board.Class, area)).Sum(area =>
                (double)Worth.Of(SizeOf(board.Class, area.At), problem.Rates.Of(board.Class.Species), kept).MinorUnits)))];

        BoardType AreaOf(AreaRegion area)
        {
            var key = (area.At, string.Join('|', area.Kinds));
            if (!areas.TryGetValue(key, out var known))
            {
                areas.Add(key, known = new BoardType
                {
                    Index = board.Index,
                    Profile = profileOf(board.Class, area.Kinds),
                    Supply = board.Supply,
                    Clear = area.At,
                    Whole = board,
                    Class = board.Class,
                    Size = board.Size,
                    Price = 0,
                    WorthConsumed = 0,
                    Boards = [],
                });
            }

            return known;
        }
    }

    private CuttableShape? Divided(Board board, BoardClass cls, Profile profile, Rect usable, string defects)
    {
        var face = new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width);
        var boxes = DefectBox.Around(board.Defects.Where(defect => defect.Area.Overlaps(usable)), effort.MostBoxes);
        var ways = new Dividing(problem.Shop.Kerf, boxes, effort, area => WorthOf(cls, area)).Run(face, usable, trims.Clear(board))
            .FindAll(way => way.Areas.Any(area => IsUseful(cls, area)));
        return ways switch
        {
            [] => null,
            [{ Areas: [{ Kinds.Count: 0 } only] }] => new CuttableShape(profile, only.At, "", []),
            _ => new CuttableShape(profile, face, defects, ways),
        };
    }

    private double WorthOf(BoardClass cls, AreaRegion area)
    {
        var size = SearchWorth.Of(area.At.Length.Ticks, area.At.Width.Ticks, 1);
        return IsUseful(cls, area) ? (area.Kinds.Count > 0 ? 0.9 * size : size)
            : area.Kinds.Count == 0 && profileOf(cls, []).Kept.Include(area.At) ? 0.3 * size
            : 0;
    }

    private bool IsUseful(BoardClass cls, AreaRegion area) => profileOf(cls, area.Kinds).FitsOn(area.At);

    private static Dimensions SizeOf(BoardClass cls, Rect at) => new(cls.Thickness, at.Width, at.Length);

    private static int Cuts(Region? tree) => tree is SawnRegion sawn ? 1 + Cuts(sawn.Front) + Cuts(sawn.Behind) : 0;
}

/// <summary>What boards of one class and size offer to cut.</summary>
/// <param name="Profile">What can be cut from where they are clear.</param>
/// <param name="Clear">The rectangle that is cut; the whole face where there are several ways.</param>
/// <param name="Defects">What tells boards with several ways apart.</param>
/// <param name="Ways">Ways to saw it down to areas; none where one rectangle is all there is.</param>
internal sealed record CuttableShape(Profile Profile, Rect Clear, string Defects, IReadOnlyList<Way> Ways)
{
    /// <summary>Boards of one class and size with the same key offer the same.</summary>
    public (Rect Clear, string Defects) Key => (Clear, Defects);
}
