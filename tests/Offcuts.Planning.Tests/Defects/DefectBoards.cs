using Offcuts.Domain;

namespace Offcuts.Planning.Tests.Defects;

/// <summary>Problems with one board that has defects, in millimetres: blanks are the finished parts, the kerf is 3.</summary>
internal static class DefectBoards
{
    public static PlanningProblem Problem(int length, int width, IReadOnlyList<Defect> defects, params Part[] parts) => new()
    {
        Shop = new Shop
        {
            Unit = DisplayUnit.Millimetre,
            Kerf = Mm(3),
            Sheet = new Allowances(Length.Zero, Length.Zero, Length.Zero),
            Keep = new Dimensions(Mm(6), Mm(40), Mm(100)),
        },
        Design = new Design { Name = "defects", Parts = parts },
        Stock =
        [
            new Board
            {
                Id = BoardIds.FromNumber(1), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced, Size = new Dimensions(Mm(18), Mm(width), Mm(length)),
                Defects = defects, LoggedAt = DateTimeOffset.UnixEpoch,
            },
        ],
    };

    public static Part Part(string name, int length, int width, int quantity = 1, params string[] tolerates) => new()
    {
        Name = name,
        Quantity = quantity,
        Finished = new Dimensions(Mm(18), Mm(width), Mm(length)),
        Species = ["plate"],
        Tolerates = tolerates,
    };

    public static Defect Defect(string kind, int x, int y, int length, int width) => new(kind, new Rect(Mm(x), Mm(y), Mm(length), Mm(width)));

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
