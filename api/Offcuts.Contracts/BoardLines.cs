namespace Offcuts.Contracts;

/// <summary>Boards as a maker says them, one line each: <c>3 @ 3/4 x 5 1/2 x 36 ash, rack 2</c>. All are logged or none.</summary>
/// <param name="Text">The lines, at most 1000, with line breaks between them. Empty ones and those that begin with # are left out.</param>
/// <param name="DryRun">Whether only to say what would be understood, and log nothing.</param>
/// <param name="Carry">What carries on from lines before; null for nothing.</param>
public sealed record BoardLinesEntry(string Text, bool DryRun = false, LineCarry? Carry = null);

/// <summary>What a line says carries on to the next until it says otherwise.</summary>
/// <param name="Species">Species id, name or alias; null if none was named.</param>
/// <param name="Place">Where the boards lie.</param>
/// <param name="Batch">Their batch.</param>
public sealed record LineCarry(string? Species = null, string? Place = null, string? Batch = null);

/// <summary>What lines were understood as.</summary>
/// <param name="Logged">Whether the boards were logged: not after a dry run.</param>
/// <param name="Lines">Every line that is not empty or a remark, in order.</param>
/// <param name="Carry">What carries on to lines that follow.</param>
public sealed record BoardLinesResult(bool Logged, IReadOnlyList<BoardLineRecord> Lines, LineCarry Carry);

/// <summary>What one line was understood as.</summary>
/// <param name="Line">Its number in the text, from 1.</param>
/// <param name="Understood">What was understood, in words; null if it was not.</param>
/// <param name="Faults">What was not understood, from left to right; only a dry run tells it here.</param>
/// <param name="Board">The board that was logged; null after a dry run, and for a line that only says what holds for the next.</param>
public sealed record BoardLineRecord(int Line, string? Understood, IReadOnlyList<LineFault> Faults, BoardRecord? Board);

/// <summary>What is not understood in a line.</summary>
/// <param name="Column">Where, from 1; one beyond the line for what is missing at its end.</param>
/// <param name="Detail">What is wrong and how to mend it.</param>
public sealed record LineFault(int Column, string Detail);
