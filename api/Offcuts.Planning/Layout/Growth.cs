using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// Lets pieces with tolerances grow into what would otherwise be waste: the cut beside them moves, and everything between moves with it.
/// Leftovers worth keeping are not touched.
/// </summary>
internal static class Growth
{
    /// <summary>Grows what can grow on every board.</summary>
    public static void Use(PlanningProblem problem, IReadOnlyList<SawnBoard> boards)
    {
        if (!problem.Design.Parts.Any(part => part.HasTolerance))
        {
            return;
        }

        var spans = problem.Design.Parts.Where(part => part is { Spacing: not null, HasTolerance: true }).Select(part => new SpanUse(part, boards)).ToList();
        foreach (var board in boards.Where(board => board.Root.All().Any(node => node.Blank is { } blank && blank.MoreAlong + blank.MoreAcross > 0)))
        {
            var soundness = new Soundness(board);
            Use(board, () => soundness.Holds() && spans.TrueForAll(span => span.Holds()));
        }
    }

    /// <summary>
    /// One step after another; a step that would push a piece over a defect, or pieces beyond the span that they share, is taken back and not
    /// tried again.
    /// </summary>
    private static void Use(SawnBoard board, Func<bool> isSound)
    {
        for (var refused = 0; ;)
        {
            var before = board.Root;
            var after = before.Clone();
            var skip = refused;
            if (!Step(after, board.Kept, ref skip))
            {
                return;
            }

            board.Root = after;
            if (!isSound())
            {
                board.Root = before;
                refused++;
            }
        }
    }

    /// <summary>Makes the first step that is possible, from the inside out, after so many that are skipped.</summary>
    private static bool Step(CutNode node, KeepFaces kept, ref int skip)
    {
        foreach (var item in node.Items)
        {
            if (Step(item, kept, ref skip))
            {
                return true;
            }
        }

        if (node.Direction is not { } axis)
        {
            return false;
        }

        foreach (var slack in Slacks(node, axis))
        {
            foreach (var item in node.Items.Where(item => item.Cut == 0 && !slack.Nodes.Contains(item)))
            {
                var more = slack.Usable(item.Useful(axis, kept));
                if (more > 0 && skip-- == 0)
                {
                    item.Grow(axis, more, kept);
                    slack.Take(node, axis, more);
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>What can be used up between the items of a node: the waste in it, and at its ends the saw cut before the waste.</summary>
    private static IEnumerable<Slack> Slacks(CutNode node, FirstCut axis)
    {
        var items = node.Items;
        if (items[^1].IsWaste || items[^1].Cut > 0)
        {
            yield return new Slack(axis, AtEdge: true, [.. items.AsEnumerable().Reverse().TakeWhile(item => item.IsWaste || item.Cut > 0)]);
        }

        if (items[0].IsWaste || items[0].Cut > 0)
        {
            yield return new Slack(axis, AtEdge: true, [.. items.TakeWhile(item => item.IsWaste || item.Cut > 0)]);
        }

        for (var at = 1; at + 1 < items.Count; at++)
        {
            if (items[at].IsWaste && items[at - 1].Cut > 0 && items[at + 1].Cut > 0)
            {
                yield return new Slack(axis, AtEdge: false, [items[at], items[at + 1]]);
            }
        }
    }

    /// <summary>The pieces of a part and the span in which they stand side by side.</summary>
    private sealed record SpanUse(Part Part, IReadOnlyList<SawnBoard> Boards)
    {
        public bool Holds() => Boards.SelectMany(board => board.Laid().Pieces).OfType<PartPiece>()
            .Where(piece => piece.Part == Part.Name && piece.Use != PieceUse.Spare)
            .Aggregate(Length.Zero, (sum, piece) => sum + ((piece.Finished ?? Part.Finished).Width * piece.Copies.Count)) <= Part.Spacing!.Span;
    }

    /// <summary>Neighbouring wastes and saw cuts, in the order in which they are used up.</summary>
    private sealed record Slack(FirstCut Axis, bool AtEdge, CutNode[] Nodes)
    {
        private long Total => Nodes.Sum(node => node.Extent(Axis));

        /// <summary>
        /// How much of the wanted can be had. Between two cuts either some waste stays or one of the cuts goes too: two cuts side by side make no sense.
        /// </summary>
        public long Usable(long wanted) => AtEdge ? Math.Min(wanted, Total)
            : wanted >= Total ? Total
            : wanted < Nodes[0].Extent(Axis) ? wanted
            : 0;

        public void Take(CutNode node, FirstCut axis, long more)
        {
            foreach (var each in Nodes)
            {
                var taken = Math.Min(more, each.Extent(axis));
                each.Resize(axis, -taken);
                more -= taken;
                if (each.Extent(axis) == 0 && (more > 0 || each.IsWaste || taken > 0))
                {
                    node.Items.Remove(each);
                }
            }
        }
    }
}
