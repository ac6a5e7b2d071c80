using System.Globalization;
using Offcuts.Domain;
using Offcuts.Planning.Layout;

namespace Offcuts.Planning.Together;

/// <summary>
/// The stock while builds are planned one after another: what the plans so far cut is gone, and their leftovers are boards again. It also has all
/// cuts so far on the boards that there were at first.
/// </summary>
internal sealed class Rack
{
    private readonly PlanningProblem problem;
    private readonly List<BoardCut> cuts;
    private readonly List<Plan> plans;
    private readonly Dictionary<string, List<int>> copies;
    private readonly Dictionary<string, (int Cut, Rect At)> leftovers;
    private List<Board> back;
    private int made;

    /// <summary>The rack before any build.</summary>
    public Rack(PlanningProblem problem)
    {
        this.problem = problem;
        (cuts, plans, leftovers, back) = ([], [], new(StringComparer.Ordinal), []);
        copies = problem.Stock.ToDictionary(board => board.Id, board => Enumerable.Range(1, board.Quantity).ToList(), StringComparer.Ordinal);
    }

    private Rack(Rack before)
    {
        problem = before.problem;
        (cuts, plans, back, made) = ([.. before.cuts], [.. before.plans], [.. before.back], before.made);
        copies = before.copies.ToDictionary(each => each.Key, each => each.Value.ToList(), StringComparer.Ordinal);
        leftovers = new(before.leftovers, StringComparer.Ordinal);
    }

    /// <summary>Whether a leftover was cut again: a single plan would cut each board in fewer stages.</summary>
    public bool IsRecut { get; private init; }

    /// <summary>The plans so far.</summary>
    public IReadOnlyList<Plan> Plans => plans;

    /// <summary>What a build can be planned from now.</summary>
    public PlanningProblem For(Design design) => problem with
    {
        Design = design,
        Builds = [],
        Earlier = null,
        Stock = [.. problem.Stock.Where(board => copies[board.Id].Count > 0).Select(board => board with { Quantity = copies[board.Id].Count }), .. back],
        Offers = [.. problem.Offers.Select(offer => offer.Available is { } there
            ? offer with { Available = there - cuts.Count(cut => cut.OfferId == offer.Id) }
            : offer)],
    };

    /// <summary>The rack after one more build.</summary>
    public Rack After(Plan plan)
    {
        var after = new Rack(this) { IsRecut = IsRecut || plan.Boards.Any(board => board.BoardId is { } id && leftovers.ContainsKey(id)) };
        after.Cut(plan);
        return after;
    }

    /// <summary>All builds so far as one plan, but for its money and its missing parts.</summary>
    /// <param name="missing">What is missing.</param>
    /// <param name="run">How it was found.</param>
    public Plan Joined(IReadOnlyList<MissingPart> missing, PlanRun run)
    {
        var purchases = cuts.Where(cut => cut.OfferId is not null).GroupBy(cut => (cut.OfferId, cut.Size)).Select(alike =>
        {
            var offer = problem.Offers.First(each => each.Id == alike.Key.OfferId);
            return new Purchase(new OfferSize(offer, alike.Key.Size, OfferSize.PriceOf(offer, alike.Key.Size)), alike.Count());
        }).ToList();
        return new Plan
        {
            Status = PlanStatus.Feasible,
            Boards = cuts,
            GlueUps = [.. plans.SelectMany(plan => plan.GlueUps.Select(glueUp => glueUp with
            {
                SubPanels = [.. glueUp.SubPanels.Select(sub => sub with { Strips = [.. sub.Strips.Select(strip => strip with { BoardNumber = NumberOf(glueUp, sub, strip) })] })],
            }))],
            Laminations = [.. plans.SelectMany(plan => plan.Laminations.Select(part => part with
            {
                Layers = [.. part.Layers.Select(layer => layer with { BoardNumber = NumberOf(part, layer) })],
            }))],
            Purchases = purchases,
            Missing = missing,
            Counts = PartCounts.Of(problem, cuts, missing),
            Warnings = Explaining.Warnings.Of(problem, cuts),
            WoodCost = new Money(purchases.Sum(purchase => purchase.Cost.MinorUnits)),
            ItemCost = problem.Design.ItemCost,
            WoodBound = Money.Zero,
            WorthConsumed = PlanWriter.Consumed(problem, cuts),
            WorthReturned = new Money(cuts.Sum(cut => PlanWriter.Returned(problem, cut))),
            Run = run,
        };
    }

    private void Cut(Plan plan)
    {
        var free = copies.ToDictionary(each => each.Key, each => each.Value.ToList(), StringComparer.Ordinal);
        var touched = new HashSet<int>();
        foreach (var board in plan.Boards)
        {
            if (board.BoardId is { } id && leftovers.Remove(id, out var place))
            {
                cuts[place.Cut] = CutAgain(cuts[place.Cut], place.At, board);
                back = [.. back.Where(each => each.Id != id)];
                touched.Add(place.Cut);
                continue;
            }

            var copy = board.BoardId is { } own ? free[own][board.Copy - 1] : cuts.Count(cut => cut.OfferId == board.OfferId) + 1;
            if (board.BoardId is { } used)
            {
                copies[used].Remove(copy);
            }

            touched.Add(cuts.Count);
            cuts.Add(board with { Number = cuts.Count + 1, Copy = copy });
        }

        foreach (var at in touched)
        {
            PutBack(at);
        }

        plans.Add(plan);
    }

    /// <summary>The leftovers of a board that are not on the rack yet, as boards.</summary>
    private void PutBack(int at)
    {
        if (Source(cuts[at]) is not { } source)
        {
            return;
        }

        foreach (var piece in cuts[at].Pieces.OfType<LeftoverPiece>().Where(piece => !leftovers.ContainsValue((at, piece.At))))
        {
            string id;
            do
            {
                id = string.Create(CultureInfo.InvariantCulture, $"leftover {++made}");
            }
            while (copies.ContainsKey(id));
            leftovers.Add(id, (at, piece.At));
            back.Add(source with
            {
                Id = id,
                Size = new Dimensions(cuts[at].Size.Thickness, piece.At.Width, piece.At.Length),
                Quantity = 1,
                Defects = [],
                Ends = piece.Ends,
                LoggedAt = new DateTimeOffset(problem.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            });
        }
    }

    /// <summary>
    /// What the leftovers of a board are; null for those that wait until somebody has looked at them: of boards that are warped or of which a size
    /// was only estimated, and of sheets whose factory edges are trimmed.
    /// </summary>
    private Board? Source(BoardCut cut)
    {
        if (cut.BoardId is { } id)
        {
            var board = problem.Stock.First(each => each.Id == id);
            return board.Warp != default || board.Estimates.Any || IsTrimmedSheet(board.Kind) ? null : board;
        }

        var offer = problem.Offers.First(each => each.Id == cut.OfferId);
        return IsTrimmedSheet(offer.Kind) ? null : new Board
        {
            Id = "",
            Kind = offer.Kind,
            Species = offer.Species,
            Size = cut.Size,
            Surface = offer.Surface,
            Appearance = offer.Appearance,
            LoggedAt = default,
        };
    }

    private bool IsTrimmedSheet(BoardKind kind) => kind == BoardKind.Sheet && problem.Shop.FactoryEdgeTrim > Length.Zero;

    private static BoardCut CutAgain(BoardCut first, Rect leftover, BoardCut again)
    {
        var last = first.Cuts.Select(cut => cut.Order).DefaultIfEmpty(0).Max();
        return first with
        {
            Pieces = [.. first.Pieces.Where(piece => !(piece is LeftoverPiece && piece.At == leftover)), .. again.Pieces.Select(piece => piece with { At = Moved(piece.At) })],
            Cuts = [.. first.Cuts, .. again.Cuts.OrderBy(cut => cut.Order).Select((cut, index) => cut with { Order = last + index + 1, Kerf = Moved(cut.Kerf) })],
        };

        Rect Moved(Rect at) => at with { X = at.X + leftover.X, Y = at.Y + leftover.Y };
    }

    private int NumberOf(GlueUp glueUp, SubPanel sub, StripPlace strip) => cuts.First(cut => cut.Pieces.OfType<StripPiece>().Any(piece =>
        (piece.Panel, piece.Copy, piece.SubPanel, piece.Order) == (glueUp.Panel, glueUp.Copy, sub.Number, strip.Order))).Number;

    private int NumberOf(Lamination part, LayerPlace layer) => cuts.First(cut => cut.Pieces.OfType<PartPiece>().Any(piece =>
        piece.Part == part.Part && piece.Use == PieceUse.Asked && piece.Recipe.Layers > 1 && piece.Copies.Contains(new PartCopy(part.Copy, layer.Layer)))).Number;
}
