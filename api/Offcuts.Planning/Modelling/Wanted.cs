using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>What is to be made, with the species still open to each part: the design less what is known to be missing.</summary>
internal sealed record Wanted(IReadOnlyList<WantedPart> Parts, IReadOnlyList<WantedPanel> Panels)
{
    /// <summary>Everything in a design.</summary>
    public static Wanted All(Design design) => new(
        [.. design.Parts.Select(part => new WantedPart(part, part.Quantity, part.Species, [.. Enumerable.Range(2, part.Layers - 1)]))],
        [.. design.Panels.Select(panel => new WantedPanel(panel, [.. Enumerable.Range(1, panel.Quantity)], panel.Species))]);

    /// <summary>The same for the same things of the same species and batch.</summary>
    public string Key => string.Join('\n', [
        .. Parts.Select(want => $"{want.Quantity} {want.Part.Name}: {string.Join(' ', want.Species)} {Of(want.Batches)} in {string.Join(',', want.LayerCounts)}"),
        .. Panels.Select(want => $"{string.Join(',', want.Copies)} {want.Panel.Name}: {string.Join(' ', want.Species)} {Of(want.Batches)}")]);

    private static string Of(IReadOnlyList<string>? batches) => batches is null ? "" : string.Join('|', batches);
}

/// <summary>So many pieces of a part, of the batches that are named.</summary>
/// <param name="Part">The part.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Species">Of which species they may be.</param>
/// <param name="LayerCounts">From how many layers they may be face-glued; a plan has at most one number, only a relaxation may leave several open.</param>
/// <param name="Batches">The batches; null for any.</param>
internal sealed record WantedPart(Part Part, int Quantity, IReadOnlyList<string> Species, IReadOnlyList<int> LayerCounts, IReadOnlyList<string>? Batches = null);

/// <summary>Some of the copies (numbered from 1) of a panel, of the batches that are named.</summary>
internal sealed record WantedPanel(Panel Panel, IReadOnlyList<int> Copies, IReadOnlyList<string> Species, IReadOnlyList<string>? Batches = null);
