namespace Offcuts.Domain;

/// <summary>What a maker can do about a part or panel that is missing, as far as the problem tells.</summary>
internal static class MissingText
{
    private const int ThickestQuarters = 16;
    private const int MostSpecies = 3;

    /// <summary>What to get or to change, to follow the reason; empty if nothing can be said.</summary>
    public static string Remedy(MissingPart missing, PlanningProblem problem)
    {
        var part = problem.Design.Parts.FirstOrDefault(part => part.Name == missing.Name);
        var panel = problem.Design.Panels.FirstOrDefault(panel => panel.Name == missing.Name);
        return (missing.Reason, part, panel) switch
        {
            (MissingReason.TooFew, _, _) when OneBatch(part?.Group ?? panel?.Group, problem) is { } group =>
                BatchText.NoneIsEnough(group, part?.Species ?? panel!.Species, problem),
            (MissingReason.TooFew, { } known, _) => $": it takes about {Blanks(known, missing.Quantity, problem)}",
            (MissingReason.TooFew, _, { } known) => $": it takes strips for about {Panels(known, missing.Quantity, problem)}",
            (MissingReason.TooWideForMachines or MissingReason.TooNarrow, { } known, _) when !IsSheet(known, problem) =>
                "; if it may be glued up from strips, make it a panel in the design",
            (MissingReason.TooShort, { } known, _) when IsForMachines(known, missing.Needed, problem.Shop) =>
                "; the shop refuses blanks that are too short for its machines, and this is the shortest that it takes",
            _ => "",
        };
    }

    private static FinishGroup? OneBatch(string? name, PlanningProblem problem) =>
        problem.Design.Groups.FirstOrDefault(group => group.Name == name && group.Batch == BatchChoice.One);

    // The part itself would need less.
    private static bool IsForMachines(Part part, Length? needed, Shop shop) => shop.ShortBlanks == ShortBlanks.Refuse && needed is { } length
        && (length == shop.ShortestAtPlaner || length == shop.ShortestAtJointer) && length > part.Finished.Length + shop.Rough.Length;

    private static string Blanks(Part part, int count, PlanningProblem problem)
    {
        var isSheet = IsSheet(part, problem);
        var allowances = isSheet ? problem.Shop.Sheet : problem.Shop.Rough;
        var face = SizeText.FormatFace(part.Finished.Width + allowances.Width, part.Finished.Length + allowances.Length, problem.Shop.Unit);
        var thickness = isSheet ? LengthText.Format(part.Finished.Thickness, problem.Shop.Unit) : Rough(part.Finished.Thickness, problem.Shop);
        var blanks = count == 1 ? "1 more blank" : FormattableString.Invariant($"{count} more blanks");
        return $"{blanks} of {face} from {Wood(thickness, part.Species)}";
    }

    private static string Panels(Panel panel, int count, PlanningProblem problem)
    {
        var width = LengthText.Format(panel.Finished.Width + problem.Shop.PanelOversize, problem.Shop.Unit);
        var length = LengthText.Format(panel.Finished.Length + problem.Shop.Rough.Length, problem.Shop.Unit);
        var panels = count == 1 ? "1 more panel" : FormattableString.Invariant($"{count} more panels");
        return $"{panels}, {length} long and together {width} wide when jointed, from {Wood(Rough(panel.Finished.Thickness, problem.Shop), panel.Species)}";
    }

    // In quarters as the yard sells it where the shop thinks in inches.
    private static string Rough(Length finished, Shop shop)
    {
        var needed = finished + shop.Rough.Thickness;
        var quarters = Enumerable.Range(4, ThickestQuarters - 3).Select(count => Length.FromInches(0, count, 4)).Where(thick => thick >= needed).ToList();
        return shop.Unit == DisplayUnit.Inch && quarters.Count > 0
            ? YardText.Thickness(BoardKind.Solid, Surface.Rough, quarters[0], shop.Unit)
            : $"{LengthText.Format(needed, shop.Unit)} or thicker rough";
    }

    private static string Wood(string thickness, IReadOnlyList<string> species) => species.Count is > 0 and <= MostSpecies
        ? $"{thickness} {string.Join(" or ", species.Select(SpeciesCatalogue.Default.NameOf))}"
        : $"{thickness} wood that it accepts";

    private static bool IsSheet(Part part, PlanningProblem problem) =>
        problem.Stock.Any(board => board.Kind == BoardKind.Sheet && part.Species.Contains(board.Species))
        || problem.Offers.Any(offer => offer.Kind == BoardKind.Sheet && part.Species.Contains(offer.Species));
}
