using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Turns a planning problem with a given choice of species into the search's model.</summary>
internal sealed class ModelBuilder(PlanningProblem problem)
{
    private readonly Milling milling = new(problem.Shop);

    /// <summary>Builds the model for what is wanted.</summary>
    public PlanningModel Build(Wanted wanted)
    {
        var rows = Rows(wanted);
        var profiles = new List<Profile>();
        var byKey = new Dictionary<string, Profile>(StringComparer.Ordinal);
        var byClass = new Dictionary<BoardClass, Profile>();
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

        Profile ProfileOf(BoardClass cls)
        {
            if (!byClass.TryGetValue(cls, out var profile))
            {
                var (blanks, families) = Options(rows, cls);
                var key = ProfileKey(cls, blanks, families);
                if (!byKey.TryGetValue(key, out profile))
                {
                    profile = new Profile(
                        profiles.Count, cls.Species, cls.Thickness, blanks, families,
                        SearchWorth.RatePerSquareTick(cls.Thickness, problem.Rates.Of(cls.Species), problem.Shop.Keep));
                    byKey.Add(key, profile);
                    profiles.Add(profile);
                }

                byClass.Add(cls, profile);
            }

            return profile;
        }

        void Stock()
        {
            var usable = problem.Stock
                .Select(board => (Board: board, Profile: ProfileOf(BoardClass.Of(board)), Clear: ClearOf(board)))
                .Where(entry => !entry.Profile.IsEmpty && entry.Clear is not null)
                .Select(entry => (entry.Board, entry.Profile, Clear: entry.Clear!.Value,
                    Worth: Domain.Worth.OfBoard(entry.Board, problem.Rates.Of(entry.Board.Species), problem.Shop.Keep, problem.Today)));
            foreach (var alike in usable.GroupBy(entry => (entry.Profile.Index, BoardClass.Of(entry.Board), entry.Board.Size, entry.Clear, entry.Worth)))
            {
                var first = alike.First();
                var supply = new Supply(supplies.Count, alike.Sum(entry => (long)entry.Board.Quantity));
                supplies.Add(supply);
                boards.Add(new BoardType
                {
                    Index = boards.Count,
                    Profile = first.Profile,
                    Supply = supply.Index,
                    Clear = first.Clear,
                    Class = BoardClass.Of(first.Board),
                    Size = first.Board.Size,
                    Price = 0,
                    WorthConsumed = first.Worth.MinorUnits,
                    Boards = [.. alike.Select(entry => entry.Board).OrderBy(board => board.LoggedAt).ThenBy(board => board.Id, StringComparer.Ordinal)],
                });
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
                    boards.Add(new BoardType
                    {
                        Index = boards.Count,
                        Profile = profile,
                        Supply = supply.Index,
                        Clear = new Rect(Length.Zero, Length.Zero, size.Size.Length, size.Size.Width),
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

    private static Rect? ClearOf(Board board) => ClearRectangle.Largest(
        new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width), board.Defects.Select(defect => defect.Area));

    private List<DemandRow> Rows(Wanted wanted)
    {
        var rows = new List<DemandRow>();
        foreach (var want in wanted.Parts.Where(want => want.Quantity > 0))
        {
            rows.Add(new PartRow(
                rows.Count, want.Part.Name, want.Part.Appearance, want.Part.Finished.Thickness, want.Species,
                want.Quantity, want.Part.Finished.Width, want.Part.Finished.Length, want.Part.Grain == Grain.Free));
        }

        var family = 0;
        foreach (var want in wanted.Panels.Where(want => want.Copies.Count > 0))
        {
            var (count, width) = milling.SubPanels(want.Panel);
            foreach (var copy in want.Copies)
            {
                for (var number = 1; number <= count; number++)
                {
                    rows.Add(new StripRow(
                        rows.Count, want.Panel.Name, want.Panel.Appearance, want.Panel.Finished.Thickness, want.Species,
                        family, copy, number, width, want.Panel.Finished.Length,
                        want.Panel.NarrowestStrip ?? problem.Shop.NarrowestStrip, want.Panel.WidestStrip ?? problem.Shop.WidestStrip));
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
            if (!row.Species.Contains(cls.Species) || cls.Appearance > row.Appearance
                || !milling.SuitsThickness(cls, row.Thickness, out var widest))
            {
                continue;
            }

            if (row is PartRow part)
            {
                var along = part.Length + allowances.Length;
                var across = part.Width + allowances.Width;
                if (widest is null || across <= widest)
                {
                    blanks.Add(new(row.Index, along.Ticks, across.Ticks, Turned: false));
                    if (part.MayTurn && along != across)
                    {
                        blanks.Add(new(row.Index, across.Ticks, along.Ticks, Turned: true));
                    }
                }
            }
            else if (row is StripRow strip && cls.Kind == BoardKind.Solid)
            {
                var limit = widest is null ? strip.Widest : Length.Min(strip.Widest, widest.Value - allowances.Width);
                if (limit >= strip.Narrowest)
                {
                    strips.Add((strip, limit.Ticks));
                }
            }
        }

        var families = strips.GroupBy(entry => entry.Row.Family).Select(group => new StripFamily(
            [.. group.Select(entry => entry.Row.Index)],
            (group.First().Row.Length + allowances.Length).Ticks, allowances.Width.Ticks,
            group.First().Row.Narrowest.Ticks, group.First().Widest));
        return ([.. blanks], [.. families]);
    }

    private static string ProfileKey(BoardClass cls, BlankOption[] blanks, StripFamily[] families) =>
        $"{cls.Species}|{cls.Thickness.Ticks}|{string.Join(';', blanks)}|"
        + string.Join(';', families.Select(f => $"{string.Join(',', f.Rows)}:{f.Along}:{f.Edge}:{f.Narrowest}:{f.Widest}"));
}
