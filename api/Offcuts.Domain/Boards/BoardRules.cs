namespace Offcuts.Domain;

/// <summary>What every board must keep, wherever it comes from.</summary>
public static class BoardRules
{
    /// <summary>Everything that is wrong with the board, with pointers such as <c>#/size</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(NewBoard board)
    {
        var faults = new FaultList();
        faults.Text("#/species", board.Species, Limits.MaxName, required: true);
        faults.Size("#/size", board.Size);
        foreach (var fault in new[] { BoardShape.ThicknessFault(board.Kind, board.Size), BoardShape.WidthFault(board.Kind, board.Size) }.OfType<string>())
        {
            faults.Add("#/size", $"{fault}");
        }

        faults.Quantity("#/quantity", board.Quantity);
        faults.Text("#/batch", board.Batch, Limits.MaxName);
        foreach (var (_, detail) in WarpRules.Faults(board.Kind, board.Size, board.Warp))
        {
            faults.Add("#/warp", $"{detail}");
        }

        if (board.Moisture?.Fault() is { } wet)
        {
            faults.Add("#/moisture", $"{wet}");
        }

        faults.Text("#/place", board.Place, Limits.MaxLine);
        faults.Text("#/source", board.Source, Limits.MaxLine);
        faults.Text("#/note", board.Note, Limits.MaxNote);
        faults.Count("#/defects", board.Defects.Count, 0, Limits.MaxDefects);
        foreach (var (index, defect) in board.Defects.Index())
        {
            CheckDefect($"#/defects/{index}", defect, board.Size, faults);
        }

        return faults.Found;
    }

    private static void CheckDefect(string at, Defect defect, Dimensions board, FaultList faults)
    {
        faults.Text(at, defect.Kind, Limits.MaxName, required: true);
        faults.Size(at, "defect's extent along the board", defect.Area.Length);
        faults.Size(at, "defect's extent across the board", defect.Area.Width);
        if (defect.Area.X < Length.Zero || defect.Area.Y < Length.Zero)
        {
            faults.Add(at, $"The defect begins before the board: measure from its left end and lower edge.");
        }
        else if (defect.Area.Right > board.Length || defect.Area.Top > board.Width)
        {
            faults.Add(at, $"The defect reaches beyond the board: measure from its left end and lower edge.");
        }
    }
}
