using Offcuts.Domain;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// The least worth that a tiny case uses up for so much money, by trying everything: each set of pieces on each board in every order and direction, with what is left of
/// the board, and each way to share the pieces among the boards. Worth is that of <see cref="Worth"/>; otherwise it shares no code with the planner. Boards have no
/// defects. Sets of pieces are bits of an integer.
/// </summary>
/// <param name="tiny">The case.</param>
/// <param name="problem">The case as a problem: for rates, what is kept, and the age of boards.</param>
internal sealed class TryEveryLeftover(TinyCase tiny, PlanningProblem problem)
{
    private TinyCase Tiny => tiny;

    private PlanningProblem Problem => problem;

    /// <summary>The least worth used up, in minor units; null if no plan makes everything for so much money.</summary>
    public long? LeastWorth(long mostMoney)
    {
        var choices = tiny.Pieces.Any(piece => piece.InGroup) ? tiny.GroupSpecies : [""];
        return choices.Min(choice => LeastWorth(choice, mostMoney));
    }

    private long? LeastWorth(string groupSpecies, long mostMoney)
    {
        // least[set]: by the money spent, the least worth used up for the pieces of the set by the boards so far.
        var all = (1 << tiny.Pieces.Count) - 1;
        var least = Enumerable.Range(0, all + 1).Select(_ => new Dictionary<long, long>()).ToArray();
        least[0].Add(0, 0);
        var stock = problem.Stock.GetEnumerator();
        foreach (var board in tiny.Boards)
        {
            var consumed = board.Sizes[0].Price > 0 || !stock.MoveNext() ? 0
                : Worth.OfBoard(stock.Current, problem.Rates.Of(board.Species), problem.Shop.KeptOf(board.Species), problem.Today).MinorUnits;
            var uses = Enumerable.Range(0, all + 1).Select(set => Uses(board, set, groupSpecies).ToList()).ToArray();
            for (var copy = 0; copy < Math.Min(board.Available, tiny.Pieces.Count); copy++)
            {
                for (var set = all; set > 0; set--)
                {
                    for (var part = set; part > 0; part = (part - 1) & set)
                    {
                        foreach (var (price, returned) in uses[part])
                        {
                            foreach (var (money, worth) in least[set ^ part].Where(known => known.Key + price <= mostMoney).ToList())
                            {
                                var (sum, used) = (money + price, worth + consumed - returned);
                                least[set][sum] = least[set].TryGetValue(sum, out var known) ? Math.Min(known, used) : used;
                            }
                        }
                    }
                }
            }
        }

        return least[all].Count == 0 ? null : least[all].Values.Min();
    }

    /// <summary>The sizes of a board of which all pieces of the set can be cut, with the most that they can leave.</summary>
    private IEnumerable<(int Price, long Returned)> Uses(TinyBoard board, int set, string groupSpecies)
    {
        if (!Pieces(set).All(piece => MayGive(board.Species, piece, groupSpecies)))
        {
            yield break;
        }

        foreach (var (length, width, price) in board.Sizes)
        {
            var left = new[] { true, false }.Max(crosscutFirst => Most(new Cutting(this, board.Species, groupSpecies, crosscutFirst, crosscutFirst ? length : width, crosscutFirst ? width : length), set));
            if (left is { } returned)
            {
                yield return (price, returned);
            }
        }
    }

    private static long? Most(Cutting cutting, int set)
    {
        var sections = Enumerable.Range(0, set + 1).Select(part => part > 0 && (part & set) == part ? cutting.Sections(part).ToList() : []).ToArray();
        return Best(set, 0);

        // The section with the lowest piece first; the order of sections changes nothing.
        long? Best(int left, int used)
        {
            if (left == 0)
            {
                return cutting.Left(cutting.First - used, cutting.Second);
            }

            long? best = null;
            for (var part = left; part > 0; part = (part - 1) & left)
            {
                foreach (var (extent, returned) in (part & left & -left) != 0 ? sections[part] : [])
                {
                    if (used + extent <= cutting.First && Best(left ^ part, used + extent + cutting.Kerf) + returned is { } with)
                    {
                        best = best is null ? with : Math.Max(best.Value, with);
                    }
                }
            }

            return best;
        }
    }

    private static bool MayGive(string species, TinyPiece piece, string groupSpecies) => piece.Species.Contains(species) && (!piece.InGroup || species == groupSpecies);

    private IEnumerable<TinyPiece> Pieces(int set) => tiny.Pieces.Index().Where(entry => (set >> entry.Index & 1) == 1).Select(entry => entry.Item);

    /// <summary>A board of one size cut with one direction first.</summary>
    private sealed record Cutting(TryEveryLeftover Case, string Species, string GroupSpecies, bool CrosscutFirst, int First, int Second)
    {
        private readonly KeepSizes kept = Case.Problem.Shop.KeptOf(Species);

        public int Kerf => Case.Tiny.Kerf;

        private IEnumerable<int> Extents => Case.Tiny.Pieces.Where(piece => MayGive(Species, piece, GroupSpecies))
            .SelectMany(piece => piece.MayTurn ? [piece.Length, piece.Width] : new[] { CrosscutFirst ? piece.Length : piece.Width }).Distinct();

        /// <summary>Worth of a leftover with such extents.</summary>
        public long Left(int first, int second) => first <= 0 || second <= 0 ? 0 : Worth.Of(
            new Dimensions(Length.FromMillimetres(18), Length.FromMillimetres(CrosscutFirst ? second : first), Length.FromMillimetres(CrosscutFirst ? first : second)),
            Case.Problem.Rates.Of(Species), kept).MinorUnits;

        /// <summary>
        /// Every way to cut the set as one section, with what it leaves. A section is as long as its longest piece, or as any piece that the board can give: what led it may have
        /// been more than was needed, and left out.
        /// </summary>
        public HashSet<(int Extent, long Returned)> Sections(int set)
        {
            var pieces = Case.Pieces(set).ToList();
            var found = new HashSet<(int Extent, long Returned)>();
            for (var turned = 0; turned < 1 << pieces.Count; turned++)
            {
                if (pieces.Index().All(entry => (turned >> entry.Index & 1) == 0 || entry.Item.MayTurn))
                {
                    var laid = pieces.Select((piece, at) => (turned >> at & 1) == 1 != CrosscutFirst ? (piece.Length, piece.Width) : (piece.Width, piece.Length)).ToList();
                    Share(laid, 0, [], found);
                }
            }

            return found;
        }

        private void Share(List<(int First, int Second)> laid, int piece, List<List<(int First, int Second)>> bands, HashSet<(int Extent, long Returned)> found)
        {
            if (piece == laid.Count)
            {
                var longest = laid.Max(each => each.First);
                Section(longest, bands, found);
                foreach (var extent in Extents.Where(extent => extent > longest))
                {
                    Section(extent, bands, found);
                }

                return;
            }

            foreach (var band in Case.Tiny.Recut ? bands.ToList() : [])
            {
                band.Add(laid[piece]);
                Share(laid, piece + 1, bands, found);
                band.RemoveAt(band.Count - 1);
            }

            bands.Add([laid[piece]]);
            Share(laid, piece + 1, bands, found);
            bands.RemoveAt(bands.Count - 1);
        }

        private void Section(int longest, List<List<(int First, int Second)>> bands, HashSet<(int Extent, long Returned)> found)
        {
            var rest = Second - bands.Sum(band => band.Max(piece => piece.Second) + Kerf);
            if (rest < -Kerf || bands.Any(band => band.Sum(piece => piece.First + Kerf) > longest + Kerf))
            {
                return;
            }

            found.Add((longest, Left(longest, rest) + bands.Sum(band =>
            {
                var widest = band.Max(piece => piece.Second);
                return Left(longest - band.Sum(piece => piece.First + Kerf), widest) + band.Sum(piece => Left(piece.First, widest - piece.Second - Kerf));
            })));
        }
    }
}
