using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>A part's blank as it lies on a shelf: its extent across the shelves, and the one along the shelf.</summary>
internal sealed record ShelfItem(int Part, Length Along, Length Across, bool Turned, long Height, long Run);

/// <summary>One piece of a source with the first direction of cut in which the model may use it, and what fits on its shelves.</summary>
internal sealed class ShelfBoard
{
    private const int MostShelves = 6;

    public ShelfBoard(Shop shop, Source source, int copy, FirstCut first, IReadOnlyList<Part> parts, IReadOnlyList<IReadOnlyList<string>> species)
    {
        Source = source;
        Copy = copy;
        First = first;
        var ripped = first == FirstCut.Rip;
        Depth = (ripped ? source.Clear.Width : source.Clear.Length).Ticks;
        Length = (ripped ? source.Clear.Length : source.Clear.Width).Ticks;
        Items = [.. from part in Enumerable.Range(0, parts.Count)
                    let each = parts[part]
                    let job = new PartJob(each.Name, 1, species[part], each.Appearance, each.Finished, each.Grain == Grain.Free)
                    from blank in Milling.Blanks(shop, source, job)
                    where blank.Along <= source.Clear.Length && blank.Across <= source.Clear.Width
                    select new ShelfItem(
                        part, blank.Along, blank.Across, blank.Turned, (ripped ? blank.Across : blank.Along).Ticks, (ripped ? blank.Along : blank.Across).Ticks)];
        Shelves = Items.Count == 0 ? 0
            : (int)Math.Min(MostShelves, (Depth + shop.Kerf.Ticks) / (Items.Min(item => item.Height) + shop.Kerf.Ticks));
    }

    public Source Source { get; }

    public int Copy { get; }

    public FirstCut First { get; }

    /// <summary>Room for all shelves, in ticks.</summary>
    public long Depth { get; }

    /// <summary>Length of a shelf, in ticks.</summary>
    public long Length { get; }

    public IReadOnlyList<ShelfItem> Items { get; }

    public int Shelves { get; }

    /// <summary>All pieces that the model may use, each in both directions: every board in stock, and of every offer as many as are given.</summary>
    public static List<ShelfBoard> Of(PlanningProblem problem, IReadOnlyList<Source> sources, Func<Source, long> copies)
    {
        var parts = problem.Design.Parts;
        return [.. from source in sources
                   from copy in Enumerable.Range(1, (int)Math.Min(source.Most, copies(source)))
                   from first in Enum.GetValues<FirstCut>()
                   let board = new ShelfBoard(problem.Shop, source, copy, first, parts, [.. parts.Select(part => part.Species)])
                   where board.Shelves > 0
                   select board];
    }

    /// <summary>Cuts it by shelves; the first item of a shelf is its highest.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="shelves">The items of each shelf.</param>
    /// <param name="create">Makes the piece of an item.</param>
    public SawnBoard Saw(Shop shop, IEnumerable<IReadOnlyList<ShelfItem>> shelves, Func<ShelfItem, Rect, Piece> create)
    {
        var board = new SawnBoard(shop, Source, First);
        foreach (var shelf in shelves)
        {
            foreach (var (index, item) in shelf.Index())
            {
                var wood = board.Free.Last(free => free.Stage == (index == 0 ? 0 : 1));
                board.Cut(wood, item.Along, item.Across, at => create(item, at));
            }
        }

        return board;
    }
}
