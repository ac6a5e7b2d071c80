using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 15: each face-glued copy has all its layers, once each; the lists and the layers on the boards are the same, one to one; a part that
/// may be laminated is of one species, and its laminated copies have equally many layers.
/// </summary>
internal static class Layers
{
    private sealed record Entry(string Part, int Copy, int Layer, int BoardNumber);

    public static void Check(AuditScope scope)
    {
        var cut = (from board in scope.Plan.Boards
                   from piece in board.Pieces.OfType<PartPiece>()
                   where piece.Recipe.Layers > 1
                   from copy in piece.Copies
                   select (Entry: new Entry(piece.Part, copy.Copy, copy.Layer, board.Number), Of: piece.Recipe.Layers, board.Species)).ToList();
        foreach (var copy in cut.GroupBy(layer => (layer.Entry.Part, layer.Entry.Copy)))
        {
            var most = copy.Max(layer => layer.Of);
            scope.Findings.Require(
                most <= Limits.MaxLayers && copy.All(layer => layer.Of == most)
                    && copy.Select(layer => layer.Entry.Layer).Order().SequenceEqual(Enumerable.Range(1, most)),
                AuditRule.Laminations, $"{copy.Key.Part} {copy.Key.Copy} has the layers {string.Join(", ", copy.Select(layer => layer.Entry.Layer))} of {most}.");
        }

        CheckParts(scope, cut.ToLookup(layer => layer.Entry.Part, layer => layer.Of));
        CheckLists(scope, [.. cut.Select(layer => layer.Entry)]);
    }

    private static void CheckParts(AuditScope scope, ILookup<string, int> layers)
    {
        foreach (var part in scope.Problem.Design.Parts.Where(part => part.Layers > 1))
        {
            var species = scope.Plan.Boards.Where(board => board.Pieces.Any(piece => piece is PartPiece blank && blank.Part == part.Name))
                .Select(board => board.Species)
                .Concat(scope.Plan.Laminations.Where(lamination => lamination.Part == part.Name).Select(lamination => lamination.Species)).Distinct().ToList();
            scope.Findings.Require(
                species.Count <= 1, AuditRule.LaminatedPart, $"{part.Name} is of several species: {string.Join(", ", species)}.");
            scope.Findings.Require(
                layers[part.Name].Distinct().Count() <= 1, AuditRule.LaminatedPart, $"Some of {part.Name} have more layers than others.");
        }
    }

    private static void CheckLists(AuditScope scope, List<Entry> cut)
    {
        var listed = scope.Plan.Laminations.SelectMany(lamination => lamination.Layers.Select(layer =>
            new Entry(lamination.Part, lamination.Copy, layer.Layer, layer.BoardNumber))).ToList();
        scope.Findings.Require(
            listed.Order(Comparer<Entry>.Create(Compare)).SequenceEqual(cut.Order(Comparer<Entry>.Create(Compare))),
            AuditRule.Laminations, $"The layers on the boards and the lists of layers differ: {cut.Count} and {listed.Count}.");
        scope.Findings.Require(
            scope.Plan.Laminations.All(lamination => lamination.Layers.Select(layer => layer.Layer).SequenceEqual(Enumerable.Range(1, lamination.Layers.Count))),
            AuditRule.Laminations, $"The layers of a copy are not listed in their order.");
    }

    private static int Compare(Entry one, Entry other)
    {
        var names = string.CompareOrdinal(one.Part, other.Part);
        return names != 0 ? names : (one.Copy, one.Layer, one.BoardNumber).CompareTo((other.Copy, other.Layer, other.BoardNumber));
    }
}
