using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Host.Boards;

/// <summary>Lines as a maker says them, from the domain to the wire.</summary>
internal static class BoardLineMapping
{
    public static BoardLineRecord ToRecord(int line, QuickReading reading, BoardRecord? board) =>
        new(line, reading.Understood, [.. reading.Faults.Select(fault => new LineFault(fault.Column, fault.Detail))], board);

    public static LineCarry ToRecord(QuickCarry carry) => new(carry.Species, carry.Place, carry.Batch);
}
