using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>One board: its diagram, its cuts in order, its pieces to tick off.</summary>
internal static class BoardSection
{
    public static XElement Of(PlanDocument document, BoardCut board)
    {
        var pieces = KeyedPiece.Of(document, board);
        return Markup.Html(
            "section", "board",
            Markup.Html("h3", "spoken", FormattableString.Invariant($"Board {board.Number}: {Words.Name(document, board)}")),
            Markup.Html("div", "picture", Diagram.Element(document, board, withKey: false)),
            Markup.Html("div", "tables", Cuts(document, board, pieces), Pieces(document, board, pieces)));
    }

    private static XElement? Cuts(PlanDocument document, BoardCut board, IReadOnlyList<KeyedPiece> pieces)
    {
        var last = new Dictionary<FirstCut, Length>();
        var rows = new List<object?[]>();
        foreach (var step in SawStep.Of(board))
        {
            var setting = step.Setting(pieces);
            var direction = step.Cut.Direction;
            var same = last.TryGetValue(direction, out var before) && before == setting ? " (still set)" : "";
            last[direction] = setting;
            rows.Add([
                Table.Tick(FormattableString.Invariant($"cut {step.Cut.Order}")),
                Markup.Html("strong", null, FormattableString.Invariant($"{step.Cut.Order}")),
                new object?[]
                {
                    direction == FirstCut.Rip ? "rip, fence " : "crosscut, stop ",
                    Markup.Html("strong", "set", LengthText.Format(setting, document.Unit)), same,
                },
                Markup.Html("span", "set", From(direction, step.MeasuresHigh(pieces))),
                Gives(pieces, step),
            ]);
        }

        return rows.Count == 0 ? null : Table.Of(["", "Cut", "Set to", "From", "Parts into"], rows);
    }

    private static string From(FirstCut direction, bool high) => (direction, high) switch
    {
        (FirstCut.Crosscut, false) => "left end",
        (FirstCut.Crosscut, true) => "right end",
        (FirstCut.Rip, false) => "lower edge",
        (FirstCut.Rip, true) => "upper edge",
    };

    private static string Gives(IReadOnlyList<KeyedPiece> pieces, SawStep step) => string.Join(
        " | ", new[] { step.Low, step.High }.Select(side => SawStep.Within(pieces, side)).Where(side => side.Count > 0).Select(Letters));

    private static string Letters(IReadOnlyList<KeyedPiece> pieces)
    {
        var letters = string.Join(" ", pieces.Select(piece => piece.Key).Where(key => key.Length > 0));
        return letters.Length > 0 ? letters : "waste";
    }

    private static XElement Pieces(PlanDocument document, BoardCut board, IReadOnlyList<KeyedPiece> pieces) => Table.Of(
        ["", "Piece", "Becomes", "Cut to", "Then"],
        pieces.Where(piece => piece.Piece is not WastePiece).Select(piece => new object?[]
        {
            Table.Tick($"piece {piece.Key}"), Markup.Html("strong", null, piece.Key),
            piece.Piece is LeftoverPiece ? "leftover" : piece.Name,
            Markup.Html("span", "set", piece.Cut),
            Then(document, board, piece),
        }));

    private static string Then(PlanDocument document, BoardCut board, KeyedPiece piece)
    {
        if (piece.Piece is LeftoverPiece leftover)
        {
            return $"log it, back to the rack; ends: {EndsText.Format(leftover.Ends)}";
        }

        var warp = document.Problem.Stock.FirstOrDefault(stock => stock.Id == board.BoardId)?.Warp;
        // In the order in which it is done: what is not flat is not resawn.
        return string.Join("; ", new[]
        {
            LossText.Of(piece.Piece.Loss, document.Unit, warp), piece.Steps ?? "", piece.Finished ?? "",
            StayingText.Of(piece.Piece.At, board.Defects.Where(piece.Holds), document.Unit),
        }.Where(said => said.Length > 0));
    }
}
