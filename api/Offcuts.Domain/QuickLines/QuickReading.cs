namespace Offcuts.Domain;

/// <summary>What one line says carries on to the next until it says otherwise.</summary>
/// <param name="Species">Species id; null if none was named yet.</param>
/// <param name="Place">Where the boards lie; null for nowhere in particular.</param>
/// <param name="Batch">Their batch; null for none.</param>
public sealed record QuickCarry(string? Species = null, string? Place = null, string? Batch = null);

/// <summary>What cannot be understood, at its place in the line.</summary>
/// <param name="Column">Where it begins, from 1, in UTF-16 signs; one beyond the line for what is missing at its end.</param>
/// <param name="Detail">What is wrong and how to mend it.</param>
public sealed record QuickFault(int Column, string Detail);

/// <summary>What one line was understood as.</summary>
public sealed record QuickReading
{
    /// <summary>The board to be logged; null if the line names none, or if anything in it is not understood.</summary>
    public NewBoard? Board { get; init; }

    /// <summary>What was understood, in words; null if the line is empty, a remark, or not understood.</summary>
    public string? Understood { get; init; }

    /// <summary>What carries on to the next line: as before, where this one is not understood.</summary>
    public required QuickCarry Carry { get; init; }

    /// <summary>What is not understood, from left to right; empty for a line that is.</summary>
    public IReadOnlyList<QuickFault> Faults { get; init; } = [];
}
