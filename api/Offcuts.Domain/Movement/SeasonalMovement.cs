namespace Offcuts.Domain;

/// <summary>The expected movement of all solid panels and wide parts of a plan.</summary>
public static class SeasonalMovement
{
    /// <summary>Narrower parts rarely need a calculation (a trade magazine; common practice).</summary>
    public static Length Matters { get; } = Length.FromInches(5);

    /// <summary>
    /// One for each panel or part and species, in the order of the design, panels first. Taken to be flatsawn: how a board was sawn is not on record, and
    /// flatsawn wood moves more.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="problem">What it was made from.</param>
    /// <param name="catalogue">The species, with their coefficients.</param>
    public static IReadOnlyList<PanelMovement> Of(Plan plan, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var stock = problem.Stock.ToLookup(board => board.Id, StringComparer.Ordinal);
        var panels = from panel in problem.Design.Panels
                     from strips in Alike(plan, piece => piece is StripPiece strip && strip.Panel == panel.Name ? panel.Finished.Width : null)
                     select (panel.Name, strips.Species, strips.Width, strips.Boards);
        var parts = from part in problem.Design.Parts
                    from blanks in Alike(plan, piece => piece is PartPiece blank && blank.Part == part.Name ? AcrossGrain(part, blank) : null)
                    where blanks.Width >= Matters
                    select (part.Name, blanks.Species, blanks.Width, blanks.Boards);
        return [.. panels.Concat(parts).Select(each => Of(each.Name, each.Species, each.Width, [.. each.Boards.Select(Reading)]))];

        PanelMovement Of(string name, string species, Length width, List<decimal?> readings)
        {
            var (dry, damp) = (problem.Shop.Climate.DryMoisture, problem.Shop.Climate.DampMoisture);
            var isMeasured = readings.TrueForAll(reading => reading is not null);
            var built = isMeasured ? readings.Average()!.Value : (dry + damp) / 2;
            return new(name, species, width, dry, damp, built, isMeasured, Change(catalogue.Find(species), width, dry, damp, built));
        }

        decimal? Reading(BoardCut board) => board.BoardId is { } id && stock[id].FirstOrDefault()?.Moisture is { } reading
            && reading.Age(problem.Today) <= problem.Shop.ReadingDays
                ? reading.Percent
                : null;
    }

    /// <summary>By how much a width changes over the year; null if nothing is known of the species.</summary>
    /// <param name="species">The species; null if it is not known.</param>
    /// <param name="width">Finished width.</param>
    /// <param name="dry">Moisture content in the dry season, in per cent.</param>
    /// <param name="damp">Moisture content in the damp season, in per cent.</param>
    /// <param name="built">Moisture content when it is built, in per cent; wood that is wetter than in the damp season shrinks at once.</param>
    public static WidthChange? Change(Species? species, Length width, decimal dry, decimal damp, decimal built) =>
        species is not null
            && WoodMovement.TangentialTicks(species, width, built, Math.Min(dry, built)) is { } shrinks
            && WoodMovement.TangentialTicks(species, width, built, Math.Max(damp, built)) is { } grows
                ? new(Up(-shrinks), Up(grows))
                : null;

    private static Length Up(decimal ticks) => Length.FromTicks((long)decimal.Ceiling(ticks));

    private static IEnumerable<(string Species, Length Width, List<BoardCut> Boards)> Alike(Plan plan, Func<Piece, Length?> width) =>
        from board in plan.Boards
        where board.Kind == BoardKind.Solid
        from piece in board.Pieces
        let across = width(piece)
        where across is not null
        group (Board: board, Width: across.Value) by board.Species into alike
        select (alike.Key, alike.Max(each => each.Width), alike.Select(each => each.Board).Distinct().ToList());

    // A part that lies across the board has its length across the grain.
    private static Length AcrossGrain(Part part, PartPiece blank)
    {
        var finished = blank.Finished ?? part.Finished;
        return blank.Turned ? finished.Length : finished.Width;
    }
}
