using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Planning.Sensitivity;

/// <summary>Boards that might save some of what a plan buys: of the same wood, as large as one of the blanks that are cut from bought boards, as two of them, and as the bought boards themselves.</summary>
internal static class Candidates
{
    private static readonly Length QuarterInch = Length.FromInches(0, 1, 4);
    private static readonly Length FiveMillimetres = Length.FromMillimetres(5);

    /// <summary>The boards, each of another size.</summary>
    public static IReadOnlyList<Board> Of(PlanningProblem problem, Plan plan)
    {
        var step = problem.Shop.Unit == DisplayUnit.Inch ? QuarterInch : FiveMillimetres;
        var found = new List<Board>();
        foreach (var board in plan.Boards.Where(board => board.OfferId is not null))
        {
            var offer = problem.Offers.First(each => each.Id == board.OfferId);
            foreach (var (length, width) in Faces(board, problem.Shop.Kerf))
            {
                var size = new Dimensions(
                    board.Size.Thickness, Length.Min(Up(width, step), board.Size.Width), Length.Min(Up(length, step), board.Size.Length));
                if (!found.Exists(each => (each.Kind, each.Species, each.Surface, each.Appearance, each.Size) == (offer.Kind, offer.Species, offer.Surface, offer.Appearance, size)))
                {
                    found.Add(new Board
                    {
                        Id = FreeId(problem, found.Count + 1),
                        Kind = offer.Kind,
                        Species = offer.Species,
                        Size = size,
                        Surface = offer.Surface,
                        Appearance = offer.Appearance,
                        Ends = Ends.BothSound,
                        LoggedAt = new DateTimeOffset(problem.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
                    });
                }
            }
        }

        return found;
    }

    private static IEnumerable<(Length Length, Length Width)> Faces(BoardCut board, Length kerf)
    {
        yield return (board.Size.Length, board.Size.Width);
        foreach (var piece in board.Pieces.Where(piece => piece is StripPiece or PartPiece { Use: PieceUse.Asked }))
        {
            yield return (piece.At.Length, piece.At.Width);
            yield return ((piece.At.Length * 2) + kerf, piece.At.Width);
            yield return (piece.At.Length, (piece.At.Width * 2) + kerf);
        }
    }

    private static Length Up(Length length, Length step) => Length.FromTicks((length.Ticks + step.Ticks - 1) / step.Ticks * step.Ticks);

    private static string FreeId(PlanningProblem problem, int number)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"worth having {number}");
        return problem.Stock.Any(board => board.Id == id) ? FreeId(problem, number + 1000) : id;
    }
}
