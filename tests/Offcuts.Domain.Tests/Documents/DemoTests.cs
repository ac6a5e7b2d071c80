using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class DemoTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demo");

    [Fact]
    public void The_rack_is_read()
    {
        var boards = BoardListDocument.Parse(Text("boards.yaml"), DisplayUnit.Millimetre, SpeciesCatalogue.Default);
        Assert.InRange(boards.Count, 35, 45);
        Assert.Equal(2, boards.Count(board => board.Defects.Count > 0));
        Assert.Contains(boards, board => board.Kind == BoardKind.Sheet);
        Assert.Contains(boards, board => board.Quantity > 1);
        Assert.InRange(boards.Where(board => board.Kind == BoardKind.Solid).Select(board => board.Species).Distinct().Count(), 5, 6);
        Assert.All(boards, board => Assert.NotNull(board.LoggedAt));
    }

    [Theory]
    [InlineData("prices-hollow-creek.yaml", "hollow-creek-hardwoods/")]
    [InlineData("prices-corner-yard.yaml", "corner-yard/")]
    public void Both_price_lists_are_read(string file, string prefix)
    {
        var list = PriceListDocument.Parse(Text(file), DisplayUnit.Millimetre, SpeciesCatalogue.Default);
        Assert.All(list.Offers, offer => Assert.StartsWith(prefix, offer.Id, StringComparison.Ordinal));
        Assert.Equal(list.Offers.Count, list.Offers.Select(offer => offer.Id).Distinct().Count());
        Assert.All(list.Offers.SelectMany(OfferSize.Of), size => Assert.True(size.Price > Money.Zero));
    }

    [Theory]
    [InlineData("hall-bench.yaml")]
    [InlineData("step-stool.yaml")]
    [InlineData("wall-shelf.yaml")]
    [InlineData("blanket-box.yaml")]
    [InlineData("boot-rack.yaml")]
    [InlineData("side-table.yaml")]
    public void Every_design_is_read_and_the_catalogue_knows_its_species(string file)
    {
        var design = DesignDocument.Parse(Text(Path.Combine("designs", file)), DisplayUnit.Millimetre, SpeciesCatalogue.Default);
        var resolved = DesignResolver.Resolve(design, SpeciesCatalogue.Default.All);
        var ids = SpeciesCatalogue.Default.All.Select(species => species.Id).ToHashSet();
        Assert.All(resolved.Parts, part => Assert.All(part.Species, id => Assert.Contains(id, ids)));
        Assert.All(resolved.Panels, panel => Assert.NotEmpty(panel.Species));
        Assert.Equal(Path.GetFileNameWithoutExtension(file), Slug.Of(design.Name));
    }

    [Fact]
    public void The_bench_has_a_seat_wider_than_the_planer_and_says_that_it_bears_load()
    {
        var bench = DesignDocument.Parse(Text("designs/hall-bench.yaml"), DisplayUnit.Inch, SpeciesCatalogue.Default);
        Assert.True(bench.Panels[0].Finished.Width > new Shop().PlanerWidth);
        Assert.Contains("bears", bench.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void The_boot_rack_leaves_open_what_does_not_matter()
    {
        var rack = DesignDocument.Parse(Text("designs/boot-rack.yaml"), DisplayUnit.Inch, SpeciesCatalogue.Default);
        Assert.Equal(2, rack.Parts.Single(part => part.Name == "Foot").Layers);
        var slat = rack.Parts.Single(part => part.Name == "Slat");
        Assert.Equal((5, 7, 1, Length.FromInches(2, 1, 2)), (slat.Quantity, slat.MostQuantity, slat.Spares, slat.Most!.Value.Width));
        Assert.Equal(new Spacing(Length.FromInches(24), false), slat.Spacing);
    }

    private static string Text(string file) => File.ReadAllText(Path.Combine(Folder, file));
}
