namespace Offcuts.Domain;

/// <summary>A piece that a maker looks for on the rack.</summary>
/// <param name="Finished">Its finished size.</param>
/// <param name="Species">Species id.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="Appearance">The least that its faces must be good for.</param>
/// <param name="Grain">Whether it may be turned.</param>
/// <param name="Place">Only from boards that lie there; null for anywhere.</param>
/// <param name="Batch">Only from boards of that batch; null for any.</param>
public sealed record PieceWanted(
    Dimensions Finished, string Species, int Quantity = 1, Appearance Appearance = Appearance.Clear, Grain Grain = Grain.Fixed,
    string? Place = null, string? Batch = null)
{
    /// <summary>It as the one part of a design, so that the rules of plans hold for it.</summary>
    public Design AsDesign() => new()
    {
        Name = "find",
        Parts = [new Part { Name = "piece", Finished = Finished, Quantity = Quantity, Species = [Species], Appearance = Appearance, Grain = Grain }],
    };

    /// <summary>Whether a board may be looked at: what it gives is another question.</summary>
    public bool MayComeFrom(Board board) => (Place is null || board.Place == Place) && (Batch is null || board.Batch == Batch);
}
