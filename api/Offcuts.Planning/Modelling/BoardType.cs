using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Boards that are alike for the planner: one size in stock (perhaps under several ids) or one size of an offer.</summary>
internal sealed class BoardType
{
    public required int Index { get; init; }

    public required Profile Profile { get; init; }

    /// <summary>The supply that limits how often it can be used: sizes of one offer share one.</summary>
    public required int Supply { get; init; }

    /// <summary>The rectangle that is cut, on the whole board: all of it where it has divisions.</summary>
    public required Rect Clear { get; init; }

    /// <summary>The ways to saw it down to areas, of which one is chosen; empty if it is cut as one rectangle.</summary>
    public IReadOnlyList<Division> Divisions { get; set; } = [];

    /// <summary>The board of which this is an area; null for a whole board.</summary>
    public BoardType? Whole { get; init; }

    public required BoardClass Class { get; init; }

    public required Dimensions Size { get; init; }

    /// <summary>Price in minor units; 0 for stock.</summary>
    public required long Price { get; init; }

    /// <summary>Worth of the whole board in minor units; 0 for a bought one, whose price is its cost.</summary>
    public required double WorthConsumed { get; init; }

    /// <summary>How hard it is to get at the boards in stock.</summary>
    public Reach Reach { get; init; }

    /// <summary>The boards in stock that it stands for; empty for an offer.</summary>
    public required IReadOnlyList<Board> Boards { get; init; }

    /// <summary>The offer and size that it stands for; null for stock.</summary>
    public OfferSize? Offer { get; init; }

    /// <summary>How to saw a board that is cut as one rectangle down to it.</summary>
    public Region Tree(Length kerf) =>
        Region.Isolate(new Rect(Length.Zero, Length.Zero, Size.Length, Size.Width), Clear, kerf, new AreaRegion(Clear, []));

    public long Along => Clear.Length.Ticks;

    public long Across => Clear.Width.Ticks;
}

/// <summary>How often the board types that share a supply can be used in all.</summary>
internal sealed record Supply(int Index, long Capacity);
