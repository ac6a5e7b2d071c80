using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

/// <summary>Against the Wood Handbook (Forest Products Laboratory, FPL-GTR-190, 2010), chapter 13: its worked example, and cases computed by its Eq. 13-2 by hand.</summary>
public class WoodMovementTests
{
    /// <summary>Pages 13-15 and 13-17: a flat-grained board of white fir, 232 mm wide, from 8 to 11 %, becomes 1.705 mm wider.</summary>
    [Fact]
    public void The_handbooks_example_comes_out()
    {
        Near(1.705m, Millimetres(Tangential("white-fir", Length.FromMillimetres(232), 8, 11)), 0.001m);
        Near(-1.705m, Millimetres(Tangential("white-fir", Length.FromMillimetres(232), 11, 8)), 0.001m);
    }

    [Theory]
    [InlineData("red-oak", 12, 6, 10, 0.1771)]
    [InlineData("black-cherry", 36, 6, 10, 0.3571)]
    [InlineData("white-oak", 42, 6, 11, 0.7665)]
    [InlineData("eastern-white-pine", 36, 6, 10, 0.3053)]
    public void Flatsawn_boards_move_by_the_handbooks_coefficients(string species, int inches, int from, int to, double change) =>
        Near((decimal)change, Tangential(species, Length.FromInches(inches), from, to) / Length.TicksPerInch, 0.0001m);

    [Fact]
    public void Quartersawn_boards_move_less()
    {
        var walnut = SpeciesCatalogue.Default.Find("black-walnut")!;
        Near(0.1824m, WoodMovement.RadialTicks(walnut, Length.FromInches(24), 7, 11)!.Value / Length.TicksPerInch, 0.0001m);
    }

    /// <summary>500 mm of flatsawn hard maple from 6 to 12 %: 10.59 mm.</summary>
    [Fact]
    public void Millimetres_are_counted_alike() => Near(10.59m, Millimetres(Tangential("hard-maple", Length.FromMillimetres(500), 6, 12)), 0.01m);

    /// <summary>Eq. 13-3 on the same fir, with its tangential shrinkage of 7.0 %: 1.712 mm. Between 6 and 14 % the coefficients hold; beyond them it is used.</summary>
    [Fact]
    public void Beyond_the_range_of_the_coefficients_the_shrinkage_is_used()
    {
        var fir = SpeciesCatalogue.Default.Find("white-fir")!;
        var byShrinkage = fir with { TangentialCoefficient = null };
        Near(1.712m, Millimetres(WoodMovement.TangentialTicks(byShrinkage, Length.FromMillimetres(232), 8, 11)!.Value), 0.001m);
        Assert.Equal(
            WoodMovement.TangentialTicks(byShrinkage, Length.FromMillimetres(232), 8, 15), WoodMovement.TangentialTicks(fir, Length.FromMillimetres(232), 8, 15));
    }

    /// <summary>Eq. 4-9: 10 in of green northern red oak (8.6 % tangential shrinkage) dried to 8 % is 9.369 in wide. Above fibre saturation nothing moves.</summary>
    [Fact]
    public void Green_wood_shrinks_from_fibre_saturation_on()
    {
        var oak = new Species { Id = "northern-red-oak", Name = "northern red oak", TangentialShrinkage = 8.6m };
        Near(-0.631m, WoodMovement.TangentialTicks(oak, Length.FromInches(10), 30, 8)!.Value / Length.TicksPerInch, 0.001m);
        Assert.Equal(
            WoodMovement.TangentialTicks(oak, Length.FromInches(10), 30, 8), WoodMovement.TangentialTicks(oak, Length.FromInches(10), 80, 8));
        Assert.Equal(0, WoodMovement.TangentialTicks(oak, Length.FromInches(10), 80, 40));
    }

    [Fact]
    public void Of_a_species_without_figures_nothing_is_said() =>
        Assert.Null(WoodMovement.TangentialTicks(new Species { Id = "plum", Name = "plum" }, Length.FromInches(10), 6, 10));

    /// <summary>The identity by which the handbook made the coefficients of single species: C = S / (3000 - 20 S) at a fibre saturation of 30 %.</summary>
    [Fact]
    public void The_coefficients_follow_from_the_shrinkage_where_the_handbook_says_so()
    {
        string[] otherwise = ["mahogany", "african-mahogany", "teak"];
        var checkedOf = 0;
        foreach (var species in SpeciesCatalogue.Default.All.Where(species => species is { TangentialCoefficient: not null, TangentialShrinkage: not null } && !otherwise.Contains(species.Id)))
        {
            var (f, s) = (species.FibreSaturation ?? 30m, species.TangentialShrinkage!.Value);
            var expected = s / f / (100 - (s * (f - 10) / f));
            Assert.True(Math.Abs(expected - species.TangentialCoefficient!.Value) < 0.0000151m, $"{species.Id}: {expected}");
            checkedOf++;
        }

        Assert.True(checkedOf > 40, $"{checkedOf}");
    }

    [Fact]
    public void What_grows_and_what_shrinks_add_up_and_are_never_less_than_nothing() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[40, 200], Gen.Int[5, 60], Gen.Int[61, 95]).Sample((inches, built, low, high) =>
        {
            var climate = new Climate(low, high, 21);
            var species = SpeciesCatalogue.Default.Find("black-cherry")!;
            var change = SeasonalMovement.Change(species, Length.FromInches(inches), climate.DryMoisture, climate.DampMoisture, built / 10m)!;
            return change.Shrinks >= Length.Zero && change.Grows >= Length.Zero && change.Total == change.Shrinks + change.Grows
                && change.EachEdge * 2 >= change.Total && change.EachEdge <= change.Inwards + change.Outwards
                && (built / 10m <= climate.DampMoisture || change.Grows == Length.Zero) && (built / 10m >= climate.DryMoisture || change.Shrinks == Length.Zero);
        });

    private static decimal Tangential(string species, Length width, decimal from, decimal to) =>
        WoodMovement.TangentialTicks(SpeciesCatalogue.Default.Find(species)!, width, from, to)!.Value;

    private static decimal Millimetres(decimal ticks) => ticks / Length.TicksPerMillimetre;

    private static void Near(decimal expected, decimal actual, decimal within) => Assert.InRange(actual, expected - within, expected + within);
}
