using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Turns a planning problem with a given choice of species into the search's model.</summary>
internal sealed class ModelBuilder(PlanningProblem problem)
{
    private readonly Trims trims = new(problem.Shop);
    private readonly WantedRows wantedRows = new(problem.Shop);
    private readonly ClassOptions options = new(problem.Shop);

    /// <summary>Builds the model for what is wanted.</summary>
    public PlanningModel Build(Wanted wanted)
    {
        var rows = wantedRows.Of(wanted);
        var profiles = new List<Profile>();
        var byKey = new Dictionary<string, Profile>(StringComparer.Ordinal);
        var byClass = new Dictionary<(BoardClass, string Kinds), Profile>();
        var boards = new List<BoardType>();
        var supplies = new List<Supply>();
        Stock();
        Offers();
        return new PlanningModel
        {
            Problem = problem,
            Rows = rows,
            Profiles = profiles,
            Boards = boards,
            Supplies = supplies,
        };

        Profile ProfileOf(BoardClass cls, params IReadOnlyList<string> kinds)
        {
            var held = string.Join('|', kinds);
            if (!byClass.TryGetValue((cls, held), out var profile))
            {
                var (blanks, families) = options.Of(kinds.Count == 0 ? rows : rows.FindAll(row => row.MayHold(kinds)), cls);
                var key = ProfileKey(cls, blanks, families) + held;
                if (!byKey.TryGetValue(key, out profile))
                {
                    profile = new Profile(
                        profiles.Count, cls.Species, cls.Thickness, blanks, families,
                        // What is left over of wood with defects is seldom kept.
                        kinds.Count > 0 ? 0 : SearchWorth.RatePerSquareTick(cls.Thickness, problem.Rates.Of(cls.Species)),
                        new KeepFaces(problem.Shop.KeptOf(cls.Species), cls.Thickness));
                    byKey.Add(key, profile);
                    profiles.Add(profile);
                }

                byClass.Add((cls, held), profile);
            }

            return profile;
        }

        void Stock()
        {
            var kept = problem.Stock.Select(board => board.Species).Distinct().ToDictionary(species => species, problem.Shop.KeptOf, StringComparer.Ordinal);
            var divider = new BoardDivider(problem, trims, ProfileOf);
            // Boards that differ in their batch alone are alike where nothing asks for one.
            var asksForBatch = rows.Exists(row => row.Batches is not null);
            var usable = problem.Stock
                .Select(board => asksForBatch ? board : board with { Batch = null })
                .Select(board => (Board: board, Shape: divider.ShapeOf(board)))
                .Where(entry => entry.Shape is not null)
                .Select(entry => (entry.Board, Shape: entry.Shape!,
                    Worth: Domain.Worth.OfBoard(entry.Board, problem.Rates.Of(entry.Board.Species), kept[entry.Board.Species], problem.Today)));
            foreach (var alike in usable.GroupBy(entry => (BoardClass.Of(entry.Board), entry.Board.Size, entry.Shape.Key, entry.Worth, problem.ReachOf(entry.Board))))
            {
                var first = alike.First();
                var supply = new Supply(supplies.Count, alike.Sum(entry => (long)entry.Board.Quantity));
                supplies.Add(supply);
                var board = new BoardType
                {
                    Index = boards.Count,
                    Profile = first.Shape.Profile,
                    Supply = supply.Index,
                    Clear = first.Shape.Clear,
                    Class = BoardClass.Of(first.Board),
                    Size = first.Board.Size,
                    Price = 0,
                    WorthConsumed = first.Worth.MinorUnits,
                    Reach = problem.ReachOf(first.Board),
                    Boards = [.. alike.Select(entry => entry.Board).OrderBy(board => board.LoggedAt).ThenBy(board => board.Id, StringComparer.Ordinal)],
                };
                boards.Add(board);
                board.Divisions = divider.Divisions(first.Shape, board);
            }
        }

        void Offers()
        {
            // Nobody needs more boards than there are pieces and strips to cut.
            var most = rows.Sum(row => row is StripRow strip
                ? (strip.Needed / Math.Max(1, strip.Narrowest.Ticks)) + 1
                : row.Needed);
            foreach (var offer in problem.Offers)
            {
                var profile = ProfileOf(BoardClass.Of(offer));
                if (profile.IsEmpty || offer.Available == 0)
                {
                    continue;
                }

                var supply = new Supply(supplies.Count, Math.Min(offer.Available ?? most, most));
                supplies.Add(supply);
                foreach (var size in OfferSize.Of(offer))
                {
                    if (trims.Usable(size) is not { } usable)
                    {
                        continue;
                    }

                    boards.Add(new BoardType
                    {
                        Index = boards.Count,
                        Profile = profile,
                        Supply = supply.Index,
                        Clear = usable,
                        Class = BoardClass.Of(offer),
                        Size = size.Size,
                        Price = size.Price.MinorUnits,
                        WorthConsumed = 0,
                        Boards = [],
                        Offer = size,
                    });
                }
            }
        }
    }

    private static string ProfileKey(BoardClass cls, BlankOption[] blanks, StripFamily[] families) =>
        $"{cls.Species}|{cls.Thickness.Ticks}|{string.Join(';', blanks)}|"
        + string.Join(';', families.Select(f => $"{string.Join(',', f.Rows)}:{f.Along}:{f.Edge}:{f.Narrowest}:{f.Widest}"));
}
