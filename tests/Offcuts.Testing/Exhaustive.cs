using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>
/// Tiny problems in one dimension, and their least money by trying every way to put the parts on boards: parts and boards are sheets of one width.
/// </summary>
public static class Exhaustive
{
    /// <summary>Up to six parts, up to three boards in stock, two lengths on offer without limit; the longer holds every part.</summary>
    public static PlanningProblem Create(int seed)
    {
        var dice = new Dice(seed, metric: true);
        return PublishedProblems.Empty(dice.From(0, 4)) with
        {
            Design = new Design
            {
                Name = "tiny",
                Parts = [.. Enumerable.Range(1, dice.From(1, 3)).Select(number => PublishedProblems.CreatePart($"part {number}", dice.From(10, 60), 100, dice.From(1, 2)))],
            },
            Stock = [.. Enumerable.Range(1, dice.From(0, 3)).Select(number => new Board
            {
                Id = BoardIds.FromNumber(number), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced,
                Size = PublishedProblems.Size(dice.From(20, 90), 100), LoggedAt = DateTimeOffset.UnixEpoch,
            })],
            Offers = [PublishedProblems.CreateOffer("long", 100, 100, dice.From(50, 120)), PublishedProblems.CreateOffer("short", 60, 100, dice.From(30, 80))],
        };
    }

    /// <summary>The least money that a problem of <see cref="Create"/> takes.</summary>
    public static Money LeastMoney(PlanningProblem problem)
    {
        var parts = problem.Design.Parts.SelectMany(part => Enumerable.Repeat(part.Finished.Length.Ticks, part.Quantity)).ToList();
        var offers = problem.Offers.SelectMany(OfferSize.Of).Select(size => (Room: size.Size.Length.Ticks, Price: size.Price.MinorUnits)).ToList();
        // With its own kerf behind each part, a board has room for one kerf more.
        var kerf = problem.Shop.Kerf.Ticks;
        var rooms = problem.Stock.SelectMany(board => Enumerable.Repeat(board.Size.Length.Ticks + kerf, board.Quantity)).ToList();
        return new Money(Least(0, 0));

        long Least(int part, long spent)
        {
            if (part == parts.Count)
            {
                return spent;
            }

            var takes = parts[part] + kerf;
            var least = long.MaxValue;
            for (var board = 0; board < rooms.Count; board++)
            {
                if (rooms[board] >= takes)
                {
                    rooms[board] -= takes;
                    least = Math.Min(least, Least(part + 1, spent));
                    rooms[board] += takes;
                }
            }

            foreach (var (room, price) in offers.Where(offer => offer.Room + kerf >= takes))
            {
                rooms.Add(room + kerf - takes);
                least = Math.Min(least, Least(part + 1, spent + price));
                rooms.RemoveAt(rooms.Count - 1);
            }

            return least;
        }
    }
}
