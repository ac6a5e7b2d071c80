using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Turns a planning problem with a given choice of species into the search's model.</summary>
internal sealed class ModelBuilder(PlanningProblem problem)
{
    private readonly Milling milling = new(problem.Shop);
    private readonly Trims trims = new(problem.Shop);
    private readonly PartOptions partOptions = new(problem.Shop, new Milling(problem.Shop));

    /// <summary>Builds the model for what is wanted.</summary>
    public PlanningModel Build(Wanted wanted)
    {
        var rows = Rows(wanted);
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
                var (blanks, families) = Options(kinds.Count == 0 ? rows : rows.FindAll(row => row.MayHold(kinds)), cls);
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

    private List<DemandRow> Rows(Wanted wanted)
    {
        var rows = new List<DemandRow>();
        foreach (var want in wanted.Parts.Where(want => want.Quantity > 0))
        {
            rows.Add(new PartRow(
                rows.Count, want.Part.Name, want.Part.Appearance, want.Part.Finished.Thickness, want.Species,
                want.Quantity, want.Part.Finished.Width, want.Part.Finished.Length, want.Part.Grain == Grain.Free, want.LayerCounts)
            {
                Tolerates = want.Part.Tolerates,
                Batches = want.Batches,
                Most = want.Part.Most ?? want.Part.Finished,
            });
        }

        var family = 0;
        foreach (var want in wanted.Panels.Where(want => want.Copies.Count > 0))
        {
            var (count, width) = milling.SubPanels(want.Panel);
            foreach (var copy in want.Copies)
            {
                for (var number = 1; number <= count; number++)
                {
                    // Equal shares to start from; what does not divide evenly goes to the first of them.
                    var share = Length.FromTicks((width.Ticks + count - number) / count);
                    rows.Add(new StripRow(
                        rows.Count, want.Panel.Name, want.Panel.Appearance, want.Panel.Finished.Thickness, want.Species,
                        family, copy, number, share, count == 1 ? share : problem.Shop.PlanerWidth, want.Panel.Finished.Length,
                        want.Panel.NarrowestStrip ?? problem.Shop.NarrowestStrip, want.Panel.WidestStrip ?? problem.Shop.WidestStrip)
                    {
                        Tolerates = want.Panel.Tolerates,
                        Batches = want.Batches,
                    });
                }
            }

            family++;
        }

        return rows;
    }

    private (BlankOption[] Blanks, StripFamily[] Families) Options(List<DemandRow> rows, BoardClass cls)
    {
        var allowances = milling.Allowances(cls);
        var blanks = new List<BlankOption>();
        var strips = new List<(StripRow Row, long Widest)>();
        foreach (var row in rows)
        {
            if (!row.Species.Contains(cls.Species) || (row.Batches is { } batches && !batches.Contains(cls.Batch)) || cls.Appearance > row.Appearance)
            {
                continue;
            }

            if (row is PartRow part)
            {
                blanks.AddRange(partOptions.Of(part, cls));
            }
            else if (row is StripRow strip && cls.Kind == BoardKind.Solid && milling.SuitsThickness(cls, row.Thickness, row.MostThickness, out _))
            {
                var along = milling.StripLength(cls, strip.Thickness, strip.Length);
                var edge = allowances.Width + cls.Flattening.Crook(along);
                if (milling.WidestStrip(cls, strip.Thickness, along, strip.Narrowest + edge, strip.Widest + edge) is { } widest)
                {
                    strips.Add((strip, (widest - edge).Ticks));
                }
            }
        }

        var families = strips.GroupBy(entry => entry.Row.Family).Select(group => new StripFamily(
            [.. group.Select(entry => entry.Row.Index)], group.Max(entry => entry.Row.SubPanel),
            group.Min(entry => entry.Row.MostCounted - entry.Row.Needed),
            milling.StripLength(cls, group.First().Row.Thickness, group.First().Row.Length).Ticks,
            (allowances.Width + cls.Flattening.Crook(milling.StripLength(cls, group.First().Row.Thickness, group.First().Row.Length))).Ticks,
            group.First().Row.Narrowest.Ticks, group.First().Widest));
        return ([.. blanks], [.. families]);
    }

    private static string ProfileKey(BoardClass cls, BlankOption[] blanks, StripFamily[] families) =>
        $"{cls.Species}|{cls.Thickness.Ticks}|{string.Join(';', blanks)}|"
        + string.Join(';', families.Select(f => $"{string.Join(',', f.Rows)}:{f.Along}:{f.Edge}:{f.Narrowest}:{f.Widest}"));
}
