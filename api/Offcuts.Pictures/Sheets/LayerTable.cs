using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>How layers become face-glued parts.</summary>
internal static class LayerTable
{
    /// <summary>The layers of every face-glued part; null if there is none.</summary>
    public static XElement? Of(PlanDocument document) => document.Plan.Laminations.Count == 0 ? null : Markup.Html(
        "div", "glue-up",
        Markup.Html("p", null, "Mill the layers to one thickness, glue them face to face in this order, then joint, plane and cut the whole to its finished size."),
        document.Plan.Laminations.GroupBy(lamination => lamination.Part).Select(part => Part(document, part.Key, [.. part])));

    private static IEnumerable<XElement> Part(PlanDocument document, string name, IReadOnlyList<Lamination> copies)
    {
        var part = document.Problem.Design.Parts.FirstOrDefault(part => part.Name == name);
        var finished = part is null ? "" : $", finished {SizeText.Format(part.Finished, document.Unit)}";
        var each = part is null ? "" : $", each layer {LengthText.Format(new Recipe(1, 1, copies[0].Layers.Count).PieceThickness(part.Finished.Thickness), document.Unit)}";
        yield return Markup.Html("h3", null, $"{name}: {document.Species(copies[0].Species)}{finished}{each}");
        yield return Table.Of(["", "Copy", "Layers in order: board and piece"], copies.Select(copy => new object?[]
        {
            Table.Tick(FormattableString.Invariant($"glued {copy.Copy}")), FormattableString.Invariant($"#{copy.Copy}"),
            string.Join(" + ", copy.Layers.OrderBy(layer => layer.Layer).Select(layer => Place(document, copy, layer))),
        }));
    }

    private static string Place(PlanDocument document, Lamination copy, LayerPlace layer)
    {
        var piece = KeyedPiece.Of(document, document.Board(layer.BoardNumber)).FirstOrDefault(piece => piece.Piece is PartPiece found
            && found.Part == copy.Part && found.Recipe.Layers > 1 && found.Copies.Contains(new PartCopy(copy.Copy, layer.Layer)));
        return FormattableString.Invariant($"{layer.BoardNumber} {piece?.Key}").TrimEnd();
    }
}
