namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// The least money of a tiny shop that glues up one or two sub-panels: everything that boards can give to them, in whole centimetres. As all sizes are
/// whole, widths between the whole ones give nothing more (what strips share is a flow with whole limits). Shares no code with the planner.
/// </summary>
internal sealed class TryEveryStrip(TinyPanel tiny)
{
    private const int Never = int.MaxValue / 4;
    // The most that can count for each sub-panel.
    private readonly int first = tiny.Needs[0] + tiny.Slack;
    private readonly int second = tiny.Needs.Count > 1 ? tiny.Needs[1] + tiny.Slack : 0;

    /// <summary>The least money; null if the boards do not suffice. All strips are of one species.</summary>
    public int? LeastMoney()
    {
        var least = tiny.Boards.Select(board => board.Species).Distinct().Min(LeastMoney);
        return least >= Never ? null : least;
    }

    private int LeastMoney(string species)
    {
        // least[a, b]: the least money for which the boards so far give net widths a and b.
        var least = new int[first + 1, second + 1];
        for (var a = 0; a <= first; a++)
        {
            for (var b = 0; b <= second; b++)
            {
                least[a, b] = a + b == 0 ? 0 : Never;
            }
        }

        var most = tiny.Needs.Sum(need => (need + tiny.Slack + tiny.Narrowest - 1) / tiny.Narrowest);
        foreach (var board in tiny.Boards.Where(board => board.Species == species))
        {
            var gives = OfBoard(board.Sizes[0].Length, board.Sizes[0].Width);
            for (var copy = 0; copy < Math.Min(board.Available, most) && gives.Count > 0; copy++)
            {
                Add(least, gives, board.Sizes[0].Price);
            }
        }

        // Halves may be of any widths that add up.
        return tiny.Halves
            ? Enumerable.Range(0, first + 1).SelectMany(a => Enumerable.Range(0, second + 1).Where(b => a + b >= tiny.Needs.Sum()).Select(b => least[a, b])).Min()
            : least[first, second];
    }

    private void Add(int[,] least, HashSet<(int First, int Second)> gives, int price)
    {
        var before = (int[,])least.Clone();
        for (var a = 0; a <= first; a++)
        {
            for (var b = 0; b <= second; b++)
            {
                foreach (var (first1, second1) in before[a, b] < Never ? gives : [])
                {
                    var (x, y) = (Math.Min(first, a + first1), Math.Min(second, b + second1));
                    least[x, y] = Math.Min(least[x, y], before[a, b] + price);
                }
            }
        }
    }

    /// <summary>Pairs of net widths that a board gives: sections of the strips' length, each ripped to strips on its own.</summary>
    private HashSet<(int First, int Second)> OfBoard(int length, int width)
    {
        var section = OfSection(width);
        HashSet<(int First, int Second)> board = [(0, 0)];
        for (var room = length + tiny.Kerf; room >= tiny.Along + tiny.Kerf; room -= tiny.Along + tiny.Kerf)
        {
            board = [.. board.SelectMany(known => section.Append((First: 0, Second: 0)), (known, more) => (Math.Min(first, known.First + more.First), Math.Min(second, known.Second + more.Second)))];
        }

        board.Remove((0, 0));
        return board;
    }

    private List<(int First, int Second)> OfSection(int width)
    {
        var gives = new List<(int, int)>();
        for (var one = 0; one <= width; one++)
        {
            for (var other = 0; one + other <= width; other++)
            {
                // So many strips for each sub-panel; what they take besides their net widths.
                var net = width + tiny.Kerf - ((one + other) * (tiny.Edge + tiny.Kerf));
                for (var a = one * tiny.Narrowest; a <= one * tiny.Widest; a++)
                {
                    var b = Math.Min(net - a, other * tiny.Widest);
                    if (b >= other * tiny.Narrowest && one + other > 0)
                    {
                        gives.Add((Math.Min(a, first), Math.Min(b, second)));
                    }
                }
            }
        }

        return [.. gives.Distinct()];
    }
}
