namespace Offcuts.Domain;

/// <summary>Parts for which a machine is set once.</summary>
/// <param name="Kind">What is set.</param>
/// <param name="Setting">To what it is set.</param>
/// <param name="Parts">Names of the parts and panels, at least two.</param>
public sealed record Setup(SetupKind Kind, Length Setting, IReadOnlyList<string> Parts)
{
    /// <summary>
    /// The set-ups that several parts of a plan share, planing before ripping, the largest setting first: parts of one finished thickness that are milled
    /// to it, and blanks of one width.
    /// </summary>
    public static IReadOnlyList<Setup> Of(PlanningProblem problem, Plan plan)
    {
        var finished = problem.Design.Parts.Select(part => (part.Name, part.Finished.Thickness))
            .Concat(problem.Design.Panels.Select(panel => (panel.Name, panel.Finished.Thickness))).ToDictionary(part => part.Name, part => part.Thickness, StringComparer.Ordinal);
        var cut = plan.Boards.SelectMany(board => board.Pieces.Select(piece => (Board: board, Piece: piece, Name: NameOf(piece)))).Where(each => each.Name is not null).ToList();
        var planed = cut.Where(each => each.Board.Kind == BoardKind.Solid && each.Board.Size.Thickness > Thickness(each.Piece, finished[each.Name!]))
            .Select(each => (Setting: Thickness(each.Piece, finished[each.Name!]), Name: each.Name!));
        var ripped = cut.Where(each => each.Piece is PartPiece { Turned: false } && each.Board.Kind == BoardKind.Solid)
            .Select(each => (Setting: each.Piece.At.Width, Name: each.Name!));
        return [.. Shared(SetupKind.Plane, planed), .. Shared(SetupKind.Rip, ripped)];
    }

    private static IEnumerable<Setup> Shared(SetupKind kind, IEnumerable<(Length Setting, string Name)> parts) => parts.GroupBy(part => part.Setting)
        .Select(alike => new Setup(kind, alike.Key, [.. alike.Select(part => part.Name).Distinct().Order(StringComparer.Ordinal)]))
        .Where(setup => setup.Parts.Count > 1).OrderByDescending(setup => setup.Setting.Ticks);

    private static Length Thickness(Piece piece, Length finished) =>
        piece is PartPiece part ? part.Finished?.Thickness ?? part.Recipe.PieceThickness(finished) : finished;

    private static string? NameOf(Piece piece) => piece switch
    {
        PartPiece part => part.Part,
        StripPiece strip => strip.Panel,
        _ => null,
    };
}

/// <summary>What is set once for several parts.</summary>
public enum SetupKind
{
    /// <summary>The planer, to a thickness.</summary>
    Plane,

    /// <summary>The fence, to a blank's width.</summary>
    Rip,
}
