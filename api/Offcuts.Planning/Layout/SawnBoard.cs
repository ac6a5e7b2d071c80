using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>A board as its pattern cuts it, which the freedom left by the design may still change.</summary>
internal sealed class SawnBoard(Pattern pattern, PieceNames names, BoardCutter cutter)
{
    private readonly BoardType type = pattern.Board;
    private CutNode? root;
    private bool isChanged;
    private int nextIndex = cutter.Pieces.Count;
    private int lastCut = cutter.Divisions.Count;

    /// <summary>The board in stock; null for a bought one.</summary>
    public required Board? Stock { get; init; }

    /// <summary>Which of several alike, from 1.</summary>
    public required int Copy { get; init; }

    public BoardType Type => type;

    /// <summary>What is kept of it.</summary>
    public KeepFaces Kept => cutter.Kept;

    /// <summary>Which way the first cuts go: where a board is first sawn down to areas, those.</summary>
    public FirstCut FirstCut => pattern.Division is not null && cutter.Cuts.Count > 0 ? cutter.Cuts[0].Direction
        : pattern.Areas[0].RipFirst ? FirstCut.Rip : FirstCut.Crosscut;

    public IReadOnlyList<Defect> Defects => Stock?.Defects ?? [];

    /// <summary>Defects and trimmed ends and edges: nothing but waste may lie there.</summary>
    public required IReadOnlyList<Rect> Lost { get; init; }

    /// <summary>The blanks for so many pieces of a part, none of them layers, that may be cut from it.</summary>
    public IEnumerable<BlankOption> BlanksOf(string part, int count, PartOptions options) =>
        names.RowOf(part) is { } row && Array.Exists(type.Profile.Blanks, blank => blank.Row == row.Index)
            ? options.Of(row with { Quantity = count, LayerCounts = [] }, type.Class).Select(blank => blank with { Pieces = Math.Min(blank.Pieces, count) })
            : [];

    /// <summary>An extra piece of a part.</summary>
    public CutNode Extra((long Along, long Across) size, BlankOption blank, PieceUse use) => new(size.Along, size.Across)
    {
        Piece = names.Extra(blank, type.Class, use),
        Blank = blank,
        Index = nextIndex++,
    };

    /// <summary>What is left beside an extra piece.</summary>
    public CutNode Offcut((long Along, long Across) size, bool isKept) => new(size.Along, size.Across)
    {
        Piece = isKept ? new LeftoverPiece(default) : new WastePiece(default),
        Index = nextIndex++,
    };

    /// <summary>The order of a saw cut after all others.</summary>
    public int NextCut() => ++lastCut;

    /// <summary>Puts a divided piece in the place of the whole one.</summary>
    public void Replace(CutNode whole, CutNode divided)
    {
        var holder = Root.All().First(node => node.Items.Contains(whole));
        holder.Items[holder.Items.IndexOf(whole)] = divided;
        isChanged = true;
    }

    /// <summary>The whole board as a tree of cuts.</summary>
    public CutNode Root
    {
        get => root ??= Build();
        set
        {
            root = value;
            isChanged = true;
        }
    }

    /// <summary>Pieces and saw cuts where they lie now.</summary>
    public (IReadOnlyList<Piece> Pieces, IReadOnlyList<SawCut> Cuts) Laid()
    {
        if (!isChanged)
        {
            return (cutter.Pieces, cutter.Cuts);
        }

        var pieces = new List<(int Index, Piece Piece)>();
        var cuts = new List<SawCut>();
        Lay(Root, Length.Zero, Length.Zero);
        return (
            [.. pieces.OrderBy(entry => entry.Index).Select(entry => entry.Piece)],
            [.. cuts.Where(cut => cut.Kerf.Length > Length.Zero && cut.Kerf.Width > Length.Zero).OrderBy(cut => cut.Order)
                .Select((cut, index) => cut with { Order = index + 1 })]);

        void Lay(CutNode node, Length x, Length y)
        {
            var at = new Rect(x, y, Length.FromTicks(node.Along), Length.FromTicks(node.Across));
            if (node.Piece is { } piece)
            {
                pieces.Add((node.Index, Placed(piece, node.Blank) with { At = at }));
            }

            Piece Placed(Piece each, BlankOption? blank) => each is PartPiece { Finished: { } least } part
                ? part with { Finished = Grown(least, part.Turned, node.Along - blank!.Value.Along, node.Across - blank.Value.Across) }
                : each;

            foreach (var item in node.Items)
            {
                if (item.Cut > 0)
                {
                    cuts.Add(new SawCut(item.Cut, node.Direction!.Value, new Rect(x, y, Length.FromTicks(item.Along), Length.FromTicks(item.Across))));
                }

                Lay(item, x, y);
                x += Length.FromTicks(node.Direction == FirstCut.Crosscut ? item.Along : 0);
                y += Length.FromTicks(node.Direction == FirstCut.Rip ? item.Across : 0);
            }
        }
    }

    private static Dimensions Grown(Dimensions least, bool turned, long along, long across) => least with
    {
        Length = least.Length + Length.FromTicks(turned ? across : along),
        Width = least.Width + Length.FromTicks(turned ? along : across),
    };

    /// <summary>Makes all cuts again, keeping what each divides.</summary>
    private CutNode Build()
    {
        var whole = new CutNode(type.Size.Length.Ticks, type.Size.Width.Ticks);
        var leaves = new List<(CutNode Node, CutNode? Parent, Rect At)>
        {
            (whole, null, new Rect(Length.Zero, Length.Zero, type.Size.Length, type.Size.Width)),
        };
        foreach (var cut in cutter.Divisions)
        {
            var found = leaves.FindIndex(leaf => Divides(cut, leaf.At));
            var (node, parent, at) = leaves[found];
            leaves.RemoveAt(found);
            var crosscut = cut.Direction == FirstCut.Crosscut;
            var before = crosscut ? at with { Length = cut.Kerf.X - at.X } : at with { Width = cut.Kerf.Y - at.Y };
            var behind = crosscut
                ? at with { X = cut.Kerf.Right, Length = at.Right - cut.Kerf.Right }
                : at with { Y = cut.Kerf.Top, Width = at.Top - cut.Kerf.Top };
            var holder = parent is not null && parent.Direction == cut.Direction ? parent : node;
            var halves = new[] { before, behind }.Where(half => half.Length > Length.Zero && half.Width > Length.Zero)
                .Select(half => (Node: Leaf(half), At: half)).ToList();
            var kerf = new CutNode(cut.Kerf.Length.Ticks, cut.Kerf.Width.Ticks) { Cut = cut.Order };
            var items = halves.Select(half => half.Node).ToList();
            items.Insert(before.Length > Length.Zero && before.Width > Length.Zero ? 1 : 0, kerf);
            leaves.AddRange(halves.Select(half => (half.Node, (CutNode?)holder, half.At)));
            if (holder == node)
            {
                node.Divide(cut.Direction, items);
            }
            else
            {
                var place = holder.Items.IndexOf(node);
                holder.Items.RemoveAt(place);
                holder.Items.InsertRange(place, items);
            }
        }

        return whole.Direction is null ? Leaf(leaves[0].At) : whole;

        CutNode Leaf(Rect at)
        {
            var index = cutter.IndexAt(at);
            return new CutNode(at.Length.Ticks, at.Width.Ticks)
            {
                Index = index,
                Piece = index < 0 ? null : cutter.Pieces[index],
                Blank = index < 0 ? null : cutter.BlankAt(index),
            };
        }
    }

    private static bool Divides(SawCut cut, Rect piece) => cut.Direction == FirstCut.Crosscut
        ? cut.Kerf.Y == piece.Y && cut.Kerf.Width == piece.Width && cut.Kerf.X >= piece.X && cut.Kerf.Right <= piece.Right
            && (cut.Kerf.Length == Length.Zero ? cut.Kerf.X > piece.X && cut.Kerf.X < piece.Right : cut.Kerf.Length < piece.Length)
        : cut.Kerf.X == piece.X && cut.Kerf.Length == piece.Length && cut.Kerf.Y >= piece.Y && cut.Kerf.Top <= piece.Top
            && (cut.Kerf.Width == Length.Zero ? cut.Kerf.Y > piece.Y && cut.Kerf.Y < piece.Top : cut.Kerf.Width < piece.Width);
}
