using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Bounds;

/// <summary>From how many to how many boards are used of every supply and of every bought size.</summary>
internal sealed class Purchases
{
    private readonly PurchaseRange[] supplies;
    private readonly Dictionary<int, PurchaseRange> boards;
    private readonly List<BoardType>[] members;

    private Purchases(PurchaseRange[] supplies, Dictionary<int, PurchaseRange> boards, List<BoardType>[] members)
    {
        this.supplies = supplies;
        this.boards = boards;
        this.members = members;
    }

    /// <summary>Anything within the supplies' capacities.</summary>
    public static Purchases Free(PlanningModel model)
    {
        var members = model.Supplies.Select(_ => new List<BoardType>()).ToArray();
        foreach (var board in model.Boards)
        {
            members[board.Supply].Add(board);
        }

        return new Purchases([.. model.Supplies.Select(supply => new PurchaseRange(0, supply.Capacity))], [], members);
    }

    public IEnumerable<(PurchaseRange Range, IReadOnlyList<BoardType> Boards)> BySupply =>
        members.Select((boardsOfSupply, index) => (supplies[index], (IReadOnlyList<BoardType>)boardsOfSupply));

    public PurchaseRange OfSupply(int index) => supplies[index];

    public PurchaseRange OfBoard(BoardType board) =>
        boards.TryGetValue(board.Index, out var range) ? range : new PurchaseRange(0, supplies[board.Supply].Most);

    public Purchases WithSupply(int index, PurchaseRange range)
    {
        var changed = (PurchaseRange[])supplies.Clone();
        changed[index] = range;
        return new Purchases(changed, boards, members);
    }

    public Purchases WithBoard(BoardType board, PurchaseRange range) =>
        new(supplies, new Dictionary<int, PurchaseRange>(boards) { [board.Index] = range }, members);

    /// <summary>Sets the master problem's limits to these.</summary>
    public void Apply(MasterProblem master)
    {
        for (var index = 0; index < supplies.Length; index++)
        {
            master.SetRange(index, supplies[index]);
            foreach (var board in members[index].Where(board => board.Price > 0))
            {
                master.SetBoardRange(board.Index, OfBoard(board));
            }
        }
    }
}
