using Offcuts.Domain;
using Offcuts.Planning.Finding;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Fitting;

/// <summary>
/// What one board could become: for each part and panel of a design, as much of it as the board gives where nothing else is cut from it, by the cutting
/// rules of plans. Of a part in one piece that is what <see cref="BoardFinder"/> finds.
/// </summary>
public static class BoardUses
{
    /// <summary>The parts and panels of which the board gives anything, in the order of the design.</summary>
    /// <param name="board">The board; whether it is free does not matter.</param>
    /// <param name="design">The design; its parts name concrete species.</param>
    /// <param name="shop">How the shop works.</param>
    /// <param name="rates">What wood is worth: of the ways to saw a board with several defects, the most worth are looked at.</param>
    public static IReadOnlyList<PartUse> Of(Board board, Design design, Shop shop, WorthRates rates)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(shop);
        if (Estimates.Counted(board with { Quantity = 1 }, shop.EstimateMargin) is not { } counted)
        {
            return [];
        }

        var needsBatch = design.Groups.Where(group => group.Batch == BatchChoice.One).Select(group => group.Name).ToHashSet(StringComparer.Ordinal);
        var face = new FullBoard(counted, design, shop, rates);
        return
        [
            .. design.Parts.Where(part => MayServe(part.Species, part.Group)).Select(face.Of).OfType<PartUse>(),
            .. design.Panels.Where(panel => MayServe(panel.Species, panel.Group)).Select(face.Of).OfType<PartUse>(),
        ];

        bool MayServe(IReadOnlyList<string> species, string? group) =>
            species.Contains(board.Species) && (board.Batch is not null || group is null || !needsBatch.Contains(group));
    }

    /// <summary>A board that is cut for one thing only.</summary>
    private sealed class FullBoard(Board board, Design design, Shop shop, WorthRates rates)
    {
        /// <summary>Copies of a panel beyond these would only make the program larger: no board is as wide and long.</summary>
        private const int MostPanels = 100;
        private readonly Milling milling = new(shop);
        private readonly PlanningProblem problem = new() { Stock = [board], Design = design, Shop = shop, Rates = rates };

        /// <summary>The pieces of a part; of one that may be laminated, with the number of layers that gives most.</summary>
        public PartUse? Of(Part part)
        {
            var inOne = new PieceCuts(problem, part, 1).All().Select(cuts => (long)cuts.Gives).DefaultIfEmpty(0).Max();
            var most = Enumerable.Range(2, part.Layers - 1).Select(layers => Laminated(part, [layers])).Append(inOne).Max();
            return most > 0 ? new PartUse(part.Name, false, part.Quantity, (int)most, Length.Zero) : null;
        }

        /// <summary>The width of a panel's strips.</summary>
        public PartUse? Of(Panel panel)
        {
            var needed = milling.SubPanels(panel).Width;
            var strip = Length.Larger(panel.NarrowestStrip ?? shop.NarrowestStrip, Length.FromTicks(1));
            var room = (double)board.Size.Length.Ticks * board.Size.Width.Ticks / ((double)panel.Finished.Length.Ticks * Math.Max(1, Math.Min(needed.Ticks, strip.Ticks)));
            var copies = (int)Math.Clamp(Math.Ceiling(room), 1, MostPanels);
            var width = Cover(new ModelBuilder(problem).Build(new Wanted([], [new WantedPanel(panel, [.. Enumerable.Range(1, copies)], panel.Species)])));
            return width > 0 ? new PartUse(panel.Name, true, panel.Quantity, (int)(width / needed.Ticks), Length.FromTicks(width)) : null;
        }

        // With as many wanted as there is room for by area, needs bound nothing, and the knapsacks stay small.
        private long Laminated(Part part, int[] layers)
        {
            var open = Model(Limits.MaxQuantity);
            if (open.Boards.Count == 0)
            {
                return 0;
            }

            var units = ((PartRow)open.Rows[0]).Units;
            var room = open.Boards.Max(type => (double)type.Along * type.Across)
                * open.Profiles.SelectMany(profile => profile.Blanks).Max(blank => blank.Yield / ((double)blank.Along * blank.Across));
            return Cover(Model((int)Math.Clamp(Math.Ceiling(room / units), 1, Limits.MaxQuantity))) / units;

            PlanningModel Model(int quantity) => new ModelBuilder(problem).Build(new Wanted([new WantedPart(part, quantity, part.Species, layers)], []));
        }

        /// <summary>The most of all rows that a pattern of the board makes.</summary>
        private static long Cover(PlanningModel model)
        {
            if (model.Boards.Count == 0)
            {
                return 0;
            }

            var prices = Pricing.PriceList.FromDuals(model.Rows, [.. model.Rows.Select(row => row is StripRow ? (double)row.Needed / Length.TicksPerInch : 1)],
                [.. model.Rows.Select(row => row.Needed)], worthWeight: 0);
            return new PatternPricer(model)
                .Improving(prices, new double[model.Boards.Count], new CostWeights(0, 0), int.MaxValue, _ => true, CancellationToken.None)
                .Select(pattern => pattern.Cover.Sum(cover => cover.Amount)).DefaultIfEmpty(0).Max();
        }
    }
}
