using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>How much solid panels and wide parts are expected to move over the year, and the room that their fastening must leave.</summary>
internal static class MovementSection
{
    public static XElement? Of(PlanDocument document)
    {
        var movements = SeasonalMovement.Of(document.Plan, document.Problem, document.Species());
        return movements.Count == 0 ? null : Markup.Html(
            "section", "movement", Markup.Html("h2", null, "Movement across the grain"),
            Markup.Html("ul", null, movements.Select(movement => Markup.Html(
                "li", null, MovementText.Of(movement, document.Problem.Shop.Climate, document.Species(movement.Species), document.Unit)))),
            Markup.Html("p", "aside", MovementText.Caution));
    }
}
