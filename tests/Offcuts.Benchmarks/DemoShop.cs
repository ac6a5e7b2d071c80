using System.Globalization;
using Offcuts.Documents;
using Offcuts.Domain;

namespace Offcuts.Benchmarks;

/// <summary>The demo's rack, suppliers and designs, read from its folder (<c>db/demo</c>).</summary>
internal static class DemoShop
{
    private static readonly string[] Suppliers = ["prices-hollow-creek.yaml", "prices-corner-yard.yaml"];

    /// <summary>A design of the demo by its file name without extension.</summary>
    public static Design Design(string demo, string name) =>
        DesignDocument.Parse(File.ReadAllText(Path.Combine(demo, "designs", $"{name}.yaml")), DisplayUnit.Inch, SpeciesCatalogue.Default);

    /// <summary>The names of its designs.</summary>
    public static IEnumerable<string> Designs(string demo) =>
        Directory.EnumerateFiles(Path.Combine(demo, "designs"), "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal);

    /// <summary>A design with every measure at its default and every choice as its maker prefers it.</summary>
    public static Design Usual(Design design)
    {
        var species = SpeciesCatalogue.Default.All;
        var usual = DesignInstance.AtDefaults(design, (pointer, detail) => throw new InvalidOperationException($"{pointer}: {detail}"));
        return DesignResolver.Resolve(Alternatives.Of(usual, species)[0].Design, species);
    }

    /// <summary>A design against the rack and both suppliers.</summary>
    public static PlanningProblem Problem(string demo, Design design) => new()
    {
        Design = design,
        Shop = new Shop(),
        Stock = [.. BoardListDocument.Parse(File.ReadAllText(Path.Combine(demo, "boards.yaml")), DisplayUnit.Inch, SpeciesCatalogue.Default)
            .Select((board, at) => board.ToBoard(string.Create(CultureInfo.InvariantCulture, $"B{at}"), DateTimeOffset.UnixEpoch))],
        Offers = [.. Suppliers.SelectMany(file => PriceListDocument.Parse(File.ReadAllText(Path.Combine(demo, file)), DisplayUnit.Inch, SpeciesCatalogue.Default).Offers)],
    };
}
