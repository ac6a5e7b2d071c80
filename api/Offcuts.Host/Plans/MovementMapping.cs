using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Host.Plans;

/// <summary>The expected movement of a plan's panels on the wire.</summary>
internal static class MovementMapping
{
    public static IReadOnlyList<MovementRecord> Of(Plan plan, PlanningProblem problem, SpeciesCatalogue catalogue) =>
        [.. SeasonalMovement.Of(plan, problem, catalogue).Select(movement => ToRecord(movement, problem.Shop, catalogue))];

    private static MovementRecord ToRecord(PanelMovement movement, Shop shop, SpeciesCatalogue catalogue) => new(
        movement.Name, movement.Species, movement.Width.Millimetres, Rounded(movement.Dry), Rounded(movement.Damp), Rounded(movement.Built), movement.IsMeasured,
        movement.Change?.Shrinks.Millimetres, movement.Change?.Grows.Millimetres, movement.Change?.EachEdge.Millimetres,
        MovementText.Of(movement, shop.Climate, catalogue.NameOf(movement.Species), shop.Unit));

    private static decimal Rounded(decimal percent) => decimal.Round(percent, 1);
}
