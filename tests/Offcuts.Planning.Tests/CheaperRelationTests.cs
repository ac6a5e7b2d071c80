using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Changes to a shop or design that can only help: every plan that could be made before can be made after.</summary>
public sealed class CheaperRelationTests
{
    [Fact]
    public void One_more_board_is_never_dearer() => Relation.NeverDearer(problem => problem with
    {
        Stock = [.. problem.Stock, new Board
        {
            Id = "YYY", Species = problem.Design.Parts[0].Species[0], Surface = Surface.Rough,
            Size = new Dimensions(Length.FromInches(2), Length.FromInches(6), Length.FromInches(24)), LoggedAt = DateTimeOffset.UnixEpoch,
        }],
    });

    [Fact]
    public void One_more_of_every_board_is_never_dearer() => Relation.NeverDearer(problem => problem.Stock.Count == 0 ? null
        : problem with { Stock = [.. problem.Stock.Select(board => board with { Quantity = board.Quantity + 1 })] });

    [Fact]
    public void One_more_offer_is_never_dearer() => Relation.NeverDearer(problem => problem with
    {
        Offers = [.. problem.Offers, new Offer
        {
            Id = "other/ash", Supplier = "other", Species = "white-ash", Thickness = Length.FromInches(2),
            Form = new ByThePiece(Length.FromInches(8), Length.FromInches(60), new Money(1500)),
        }],
    });

    [Fact]
    public void An_offer_without_limit_is_never_dearer() => Relation.NeverDearer(problem => problem.Offers.All(offer => offer.Available is null) ? null
        : problem with { Offers = [.. problem.Offers.Select(offer => offer with { Available = null })] });

    [Fact]
    public void A_thinner_blade_is_never_dearer() => Relation.NeverDearer(problem => problem.Shop.Kerf == Length.Zero ? null
        : problem with { Shop = problem.Shop with { Kerf = Length.FromTicks(problem.Shop.Kerf.Ticks / 2) } });

    [Fact]
    public void A_third_cut_is_never_dearer() => Relation.NeverDearer(problem => problem.Shop.Recut ? null
        : problem with { Shop = problem.Shop with { Recut = true } });

    [Fact]
    public void Free_grain_is_never_dearer() => Relation.NeverDearer(problem => problem with
    {
        Design = problem.Design with { Parts = [.. problem.Design.Parts.Select(part => part with { Grain = Grain.Free })] },
    });

    [Fact]
    public void A_part_less_is_never_dearer() => Relation.NeverDearer(problem => problem.Design.Parts.Count == 1 ? null
        : problem with { Design = problem.Design with { Parts = [.. problem.Design.Parts.Skip(1)] } });

    [Fact]
    public void A_group_of_any_species_is_never_dearer() => Relation.NeverDearer(problem =>
        problem.Design.Parts.All(part => part.Group is null) && problem.Design.Panels.All(panel => panel.Group is null) ? null
        : problem with { Design = problem.Design with { Groups = [.. problem.Design.Groups.Select(group => group with { OneSpecies = false })] } });
}
