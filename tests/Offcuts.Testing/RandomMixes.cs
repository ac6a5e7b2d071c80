using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Tiny racks and designs in one dimension, and the best mix of them by trying every one: parts and boards are sheets of one width.</summary>
public static class RandomMixes
{
    /// <summary>Up to three designs of one or two part types each, and up to four boards.</summary>
    public static (PlanningProblem Shop, IReadOnlyList<Design> Designs) Create(int seed)
    {
        var dice = new Dice(seed, metric: true);
        var shop = PublishedProblems.Empty(dice.From(0, 4)) with
        {
            Stock = [.. Enumerable.Range(1, dice.From(1, 4)).Select(number => new Board
            {
                Id = BoardIds.FromNumber(number), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced,
                Size = PublishedProblems.Size(dice.From(30, 95), 100), LoggedAt = DateTimeOffset.UnixEpoch,
            })],
        };
        return (shop, [.. Enumerable.Range(1, dice.From(2, 3)).Select(number => new Design
        {
            Name = FormattableString.Invariant($"design {number}"),
            Parts = [.. Enumerable.Range(1, dice.From(1, 2)).Select(part => PublishedProblems.CreatePart(FormattableString.Invariant($"part {part}"), dice.From(9, 50), 100, dice.From(1, 2)))],
        })]);
    }

    /// <summary>All mixes that fit on the boards, none of them empty.</summary>
    public static IEnumerable<int[]> Fitting(PlanningProblem shop, IReadOnlyList<Design> designs)
    {
        // With its own kerf behind each part, a board has room for one kerf more.
        var kerf = shop.Shop.Kerf.Ticks;
        var rooms = shop.Stock.Select(board => board.Size.Length.Ticks + kerf).ToList();
        var each = designs.Select(design => design.Parts.SelectMany(part => Enumerable.Repeat(part.Finished.Length.Ticks + kerf, part.Quantity)).ToList()).ToList();
        return Mixes(0, [.. designs.Select(_ => 0)]).Where(counts => counts.Any(count => count > 0));

        IEnumerable<int[]> Mixes(int at, int[] counts)
        {
            if (at == counts.Length)
            {
                yield return counts;
                yield break;
            }

            // What does not fit does not fit with more either.
            for (int[] more = [.. counts]; Fits(more); more = [.. more[..at], more[at] + 1, .. more[(at + 1)..]])
            {
                foreach (var mix in Mixes(at + 1, more))
                {
                    yield return mix;
                }
            }
        }

        bool Fits(int[] counts)
        {
            var pieces = counts.Index().SelectMany(mixed => Enumerable.Repeat(each[mixed.Index], mixed.Item).SelectMany(pieces => pieces)).OrderDescending().ToList();
            return pieces.Sum() <= rooms.Sum() && Put(pieces, 0, [.. rooms]);
        }

        static bool Put(List<long> pieces, int next, List<long> left)
        {
            if (next == pieces.Count)
            {
                return true;
            }

            foreach (var room in left.Distinct().Where(room => room >= pieces[next]).ToList())
            {
                List<long> after = [.. left];
                after[after.IndexOf(room)] -= pieces[next];
                if (Put(pieces, next + 1, after))
                {
                    return true;
                }
            }

            return false;
        }
    }
}
