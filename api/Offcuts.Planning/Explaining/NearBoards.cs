using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Explaining;

/// <summary>Says of boards that do not give a part all that stops them. Those that lack the smallest share of what it takes come nearest.</summary>
internal sealed class NearBoards(PlanningProblem problem)
{
    private readonly Milling milling = new(problem.Shop);

    /// <summary>The boards of the part's species that come nearest to giving one piece of it, the nearest first.</summary>
    /// <param name="part">The part, of one layer.</param>
    /// <param name="most">The most boards to tell.</param>
    public IReadOnlyList<NearBoard> To(Part part, int most)
    {
        var trims = new Trims(problem.Shop);
        var reasons = new MissingReasons(problem);
        return
        [
            .. problem.Stock.Where(board => part.Species.Contains(board.Species)).Select(board => SourceOfWood.Of(board, trims))
                .Select(source => new NearBoard(source.Id, Lacks(part, source) is { Count: > 0 } lacks ? lacks : [.. reasons.WhyNot(part, source)]))
                .Where(near => near.Lacks.Count > 0)
                .OrderBy(near => near.Lacks.Sum(lack => lack.Share)).ThenBy(near => near.BoardId, StringComparer.Ordinal).Take(most),
        ];
    }

    // What can be told without the board's warp, which takes something off every size.
    private List<BoardLack> Lacks(Part part, SourceOfWood source)
    {
        var thickness = part.Finished.Thickness;
        var allowances = milling.Allowances(source.Class);
        var lacks = new List<BoardLack>();
        if (source.Class.Appearance > part.Appearance)
        {
            lacks.Add(new(MissingReason.NotGoodEnough));
        }

        if (!milling.SuitsThickness(source.Class, thickness, part.MostThickness, out var widest))
        {
            lacks.Add(new(
                MissingReason.WrongThickness, source.Class.Kind == BoardKind.Sheet ? thickness : thickness + allowances.Thickness, source.Class.Thickness));
        }

        var (along, across) = (part.Finished.Length + allowances.Length, part.Finished.Width + allowances.Width);
        if (across > widest)
        {
            lacks.Add(new(MissingReason.TooWideForMachines, across, widest));
        }

        // A short piece may be planned as a longer blank, but not turned.
        var safe = problem.Shop.ShortBlanks == ShortBlanks.Refuse ? milling.SafeLength(source.Class, thickness, part.MostThickness) : Length.Zero;
        var upright = Room(Length.Larger(along, safe), across, source);
        var turned = part.Grain == Grain.Free && across >= safe ? Room(across, along, source) : upright;
        lacks.AddRange(turned.Sum(lack => lack.Share) < upright.Sum(lack => lack.Share) ? turned : upright);
        return lacks;
    }

    private static List<BoardLack> Room(Length along, Length across, SourceOfWood source)
    {
        var lacks = new List<BoardLack>();
        if (!source.HasPlaceFor(along, across, []))
        {
            lacks.AddRange(along > source.Along ? [new BoardLack(MissingReason.TooShort, along, source.Along)] : []);
            lacks.AddRange(across > source.Across ? [new BoardLack(MissingReason.TooNarrow, across, source.Across)] : []);
        }

        return lacks;
    }
}
