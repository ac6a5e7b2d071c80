using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>A tiny shop that glues up two panels of unlike lengths and nothing else, in plain whole numbers of centimetres.</summary>
/// <param name="Kerf">Width of a cut.</param>
/// <param name="Edge">What jointing takes of a strip's sawn width.</param>
/// <param name="Narrowest">The narrowest net width of a strip.</param>
/// <param name="Widest">The widest.</param>
/// <param name="Panels">Length of a strip's blank and the net width that is needed, for each of the two.</param>
/// <param name="Boards">What is owned, price 0, and what can be bought; one species.</param>
internal sealed record TinyTwoPanels(int Kerf, int Edge, int Narrowest, int Widest, IReadOnlyList<(int Along, int Need)> Panels, IReadOnlyList<TinyBoard> Boards)
{
    private const int Oversize = 1;

    /// <summary>The case of a seed. No board holds more than two strips end to end.</summary>
    public static TinyTwoPanels Create(int seed)
    {
        var dice = new Dice(seed, metric: true);
        var narrowest = dice.From(3, 6);
        List<(int, int)> panels = [(dice.From(12, 20), dice.From(6, 16)), (dice.From(12, 20), dice.From(6, 16))];
        var boards = Enumerable.Range(0, dice.From(0, 2)).Select(_ => new TinyBoard("ash", [(dice.From(10, 35), dice.From(4, 30), 0)], 1)).ToList();
        var offers = Enumerable.Range(0, 2).Select(_ => new TinyBoard("ash", [(dice.From(18, 35), dice.From(8, 30), dice.From(10, 90))], dice.Chance(4) ? dice.From(0, 2) : int.MaxValue));
        return new TinyTwoPanels(dice.From(0, 1), dice.From(0, 2), narrowest, dice.From(narrowest, 12), panels, [.. boards, .. offers]);
    }

    public PlanningProblem ToProblem() => new()
    {
        Shop = new Shop
        {
            Unit = DisplayUnit.Millimetre,
            Kerf = TinyPanel.Centimetres(Kerf),
            Surfaced = new Allowances(TinyPanel.Centimetres(1), TinyPanel.Centimetres(Edge), Length.Zero),
            PanelOversize = TinyPanel.Centimetres(Oversize),
            PlanerWidth = TinyPanel.Centimetres(50),
            NarrowestStrip = TinyPanel.Centimetres(Narrowest),
            WidestStrip = TinyPanel.Centimetres(Widest),
        },
        Design = new Design
        {
            Name = "tiny",
            Panels = [.. Panels.Index().Select(entry => new Panel
            {
                Name = $"panel {entry.Index}", Species = ["ash"], Finished = TinyPanel.Size(entry.Item.Along - 1, entry.Item.Need - Oversize),
            })],
        },
        Stock = TinyPanel.Owned(Boards),
        Offers = TinyPanel.Offered(Boards),
    };
}
