using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Changes that say the same in another way, or the same in another currency.</summary>
public sealed class SameMoneyRelationTests
{
    [Fact]
    public void Other_names_cost_the_same() => Relation.Costs(1, problem => problem with
    {
        Stock = [.. problem.Stock.Select(board => board with { Id = $"X{board.Id}", Place = "attic" })],
        Offers = [.. problem.Offers.Select(offer => offer with { Id = $"x/{offer.Id}", Supplier = "x" })],
        Design = problem.Design with
        {
            Name = "x",
            // The names sort the other way round.
            Parts = [.. problem.Design.Parts.Index().Select(entry => entry.Item with { Name = $"{(char)('z' - entry.Index)}" })],
            Panels = [.. problem.Design.Panels.Select(panel => panel with { Name = $"a {panel.Name}" })],
        },
    });

    [Fact]
    public void Another_order_costs_the_same() => Relation.Costs(1, problem => problem with
    {
        Stock = [.. problem.Stock.Reverse()],
        Offers = [.. problem.Offers.Reverse()],
        Design = problem.Design with
        {
            Parts = [.. problem.Design.Parts.Reverse()],
            Panels = [.. problem.Design.Panels.Reverse()],
            Groups = [.. problem.Design.Groups.Reverse()],
        },
    });

    [Fact]
    public void Boards_alike_cost_the_same_one_by_one() => Relation.Costs(1, problem => problem with
    {
        Stock = [.. problem.Stock.SelectMany(board => Enumerable.Range(1, board.Quantity).Select(copy => board with { Id = $"{board.Id}{copy}", Quantity = 1 }))],
    });

    [Fact]
    public void A_part_asked_for_in_two_lines_costs_the_same() => Relation.Costs(1, problem => problem.Design.Parts.All(part => part.Quantity == 1) ? null
        : problem with
        {
            Design = problem.Design with
            {
                Parts = [.. problem.Design.Parts.SelectMany(part => Enumerable.Range(1, part.Quantity).Select(copy => part with { Name = $"{part.Name}, {copy}", Quantity = 1 }))],
            },
        });

    [Fact]
    public void Boards_without_a_use_change_nothing() => Relation.Costs(1, problem => problem with
    {
        Stock = [.. problem.Stock, new Board
        {
            Id = "YYY", Species = "hard-maple", Size = new Dimensions(Length.FromInches(2), Length.FromInches(12), Length.FromInches(120)), LoggedAt = DateTimeOffset.UnixEpoch,
        }],
    });

    [Fact]
    public void Boards_that_are_hard_to_get_at_cost_the_same() => Relation.Costs(1, problem => problem with
    {
        Stock = [.. problem.Stock.Index().Select(entry => entry.Item with { Place = $"rack {entry.Index % 3}" })],
        Reaches = new Dictionary<string, Reach> { ["rack 1"] = Reach.Behind, ["rack 2"] = Reach.Buried },
    });

    [Fact]
    public void A_board_split_at_its_end_costs_what_the_sound_length_does() => Relation.Costs(1, problem => problem.Stock.All(board => board.Defects.Count > 0) ? null
        : problem with { Stock = [.. problem.Stock.Select(SplitAtTheEnd)] });

    [Fact]
    public void Prices_seven_times_as_high_cost_seven_times_as_much() => Relation.Costs(
        7, problem => problem with { Offers = [.. problem.Offers.Select(offer => offer with { Form = Dearer((ByThePiece)offer.Form, 7) })] }, ByPieces);

    private static Board SplitAtTheEnd(Board board) => board.Defects.Count > 0 ? board : board with
    {
        Size = board.Size with { Length = board.Size.Length + Length.FromInches(3) },
        Defects = [new Defect("split", new Rect(board.Size.Length, Length.Zero, Length.FromInches(3), board.Size.Width))],
    };

    private static ByThePiece Dearer(ByThePiece form, int times) => form with { PricePerPiece = form.PricePerPiece * times };

    // Prices by length and volume are rounded up for each piece, and seven times a rounded price is not the rounded price of seven times as much.
    private static PlanningProblem ByPieces(PlanningProblem problem) => problem with
    {
        Offers = [.. problem.Offers.SelectMany(OfferSize.Of).Index().Select(entry => entry.Item.Offer with
        {
            Id = $"{entry.Item.Offer.Id}/{entry.Index}", Form = new ByThePiece(entry.Item.Size.Width, entry.Item.Size.Length, entry.Item.Price),
        })],
    };
}
