namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// The least money of a tiny case by trying everything: each set of pieces on each board, cut in every order and direction, and each way to share
/// the pieces among the boards. Shares no code with the planner. Sets of pieces are bits of an integer.
/// </summary>
internal sealed class TryEverything(TinyCase tiny)
{
    private const int Never = int.MaxValue / 4;

    /// <summary>The least money; null if the boards do not suffice for all pieces.</summary>
    public int? LeastMoney()
    {
        var choices = tiny.Pieces.Any(piece => piece.InGroup) ? tiny.GroupSpecies : [""];
        var least = choices.Min(LeastMoney);
        return least >= Never ? null : least;
    }

    private int LeastMoney(string groupSpecies)
    {
        // least[set]: the least money for which the boards so far give the pieces of the set.
        var all = (1 << tiny.Pieces.Count) - 1;
        var least = Enumerable.Repeat(Never, all + 1).ToArray();
        least[0] = 0;
        foreach (var board in tiny.Boards)
        {
            var price = Enumerable.Range(0, all + 1).Select(set => PriceOf(board, set, groupSpecies)).ToArray();
            for (var copy = 0; copy < Math.Min(board.Available, tiny.Pieces.Count); copy++)
            {
                for (var set = all; set > 0; set--)
                {
                    foreach (var part in PartsOf(set))
                    {
                        least[set] = Math.Min(least[set], least[set ^ part] + price[part]);
                    }
                }
            }
        }

        return least[all];
    }

    /// <summary>The price of the cheapest size of which all pieces of the set can be cut.</summary>
    private int PriceOf(TinyBoard board, int set, string groupSpecies)
    {
        if (Pieces(set).Any(piece => !piece.Species.Contains(board.Species) || (piece.InGroup && board.Species != groupSpecies)))
        {
            return Never;
        }

        return board.Sizes
            .Where(size => board.Defects.Count == 0 ? Fits(set, size.Length, size.Width) : new TryEveryDivision(tiny, board.Defects, Fits).Gives(size.Length, size.Width, set))
            .Select(size => size.Price).DefaultIfEmpty(Never).Min();
    }

    private bool Fits(int set, int length, int width) =>
        Fits(set, length, width, crosscutFirst: true) || Fits(set, width, length, crosscutFirst: false);

    /// <summary>Whether sections that hold all pieces of the set fit one behind the other.</summary>
    private bool Fits(int set, int first, int second, bool crosscutFirst)
    {
        // With one kerf behind each section the board has room for one kerf more. An empty set takes nothing.
        var takes = new int[set + 1];
        for (var part = 1; part <= set; part++)
        {
            if ((part & set) == part)
            {
                var lowest = part & -part;
                takes[part] = PartsOf(part).Where(section => (section & lowest) != 0).Min(section =>
                    Math.Min(Never, SectionOf(section, second, crosscutFirst) + tiny.Kerf + takes[part ^ section]));
            }
        }

        return takes[set] <= first + tiny.Kerf;
    }

    /// <summary>How long a section must be at least to give the set from bands side by side within a second extent.</summary>
    private int SectionOf(int set, int second, bool crosscutFirst)
    {
        var least = Never;
        foreach (var laid in Laid([.. Pieces(set)], crosscutFirst))
        {
            least = Math.Min(least, tiny.Recut ? WithRows(laid, second) : OneEach(laid, second));
        }

        return least;
    }

    private int OneEach(IReadOnlyList<(int First, int Second)> laid, int second) =>
        laid.Sum(piece => piece.Second + tiny.Kerf) <= second + tiny.Kerf ? laid.Max(piece => piece.First) : Never;

    /// <summary>Every way to share the pieces among bands; a band is as wide as its widest piece and holds its pieces in a row.</summary>
    private int WithRows(IReadOnlyList<(int First, int Second)> laid, int second)
    {
        var (least, longest) = (Never, laid.Max(piece => piece.First));
        var bands = new List<(int Row, int Widest)>();
        Add(0);
        return least;

        void Add(int piece)
        {
            if (piece == laid.Count)
            {
                var row = bands.Max(band => band.Row) - tiny.Kerf;
                if (bands.Sum(band => band.Widest + tiny.Kerf) <= second + tiny.Kerf && row <= longest)
                {
                    least = Math.Min(least, row);
                }

                return;
            }

            var (extent, width) = (laid[piece].First + tiny.Kerf, laid[piece].Second);
            for (var at = 0; at < bands.Count; at++)
            {
                var band = bands[at];
                bands[at] = (band.Row + extent, Math.Max(band.Widest, width));
                Add(piece + 1);
                bands[at] = band;
            }

            bands.Add((extent, width));
            Add(piece + 1);
            bands.RemoveAt(bands.Count - 1);
        }
    }

    /// <summary>Every way to turn the pieces that may be turned.</summary>
    private static IEnumerable<IReadOnlyList<(int First, int Second)>> Laid(IReadOnlyList<TinyPiece> pieces, bool crosscutFirst)
    {
        for (var turned = 0; turned < 1 << pieces.Count; turned++)
        {
            if (pieces.Index().All(entry => (turned >> entry.Index & 1) == 0 || entry.Item.MayTurn))
            {
                yield return [.. pieces.Index().Select(entry => (turned >> entry.Index & 1) == 1 != crosscutFirst
                    ? (entry.Item.Length, entry.Item.Width)
                    : (entry.Item.Width, entry.Item.Length))];
            }
        }
    }

    private IEnumerable<TinyPiece> Pieces(int set) => tiny.Pieces.Index().Where(entry => (set >> entry.Index & 1) == 1).Select(entry => entry.Item);

    /// <summary>All parts of a set but the empty one.</summary>
    private static IEnumerable<int> PartsOf(int set)
    {
        for (var part = set; part > 0; part = (part - 1) & set)
        {
            yield return part;
        }
    }
}
