using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;

namespace Offcuts.Host.Boards;

/// <summary>Lines as a maker says them, between the wire and the domain.</summary>
internal static class BoardLineMapping
{
    public static BoardLineRecord ToRecord(int line, QuickReading reading, BoardRecord? board) =>
        new(line, reading.Understood, [.. reading.Faults.Select(fault => new LineFault(fault.Column, fault.Detail))], board);

    /// <summary>What carries on from earlier lines.</summary>
    public static QuickCarry ToCarry(LineCarry? carry, SpeciesCatalogue catalogue, Faults faults)
    {
        faults.Text("#/carry/place", carry?.Place, Limits.MaxLine);
        faults.Text("#/carry/batch", carry?.Batch, Limits.MaxName);
        return new QuickCarry(carry?.Species is { } name ? faults.Species("#/carry/species", name, catalogue) : null, carry?.Place, carry?.Batch);
    }

    public static LineCarry ToRecord(QuickCarry carry) => new(carry.Species, carry.Place, carry.Batch);
}
