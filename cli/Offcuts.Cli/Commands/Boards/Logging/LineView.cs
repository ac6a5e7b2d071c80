using System.Globalization;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>Lines as they were understood, and what in them was not, pointed at in place.</summary>
internal static class LineView
{
    /// <summary>What every line was understood as; faults go to standard error.</summary>
    public static void Write(BoardLinesResult result, string text, Terminal terminal)
    {
        foreach (var line in result.Lines.Where(line => line.Understood is not null))
        {
            terminal.Out.WriteLine(SafeText.Of(line.Board is { } board ? $"{board.Id}  {line.Understood}" : line.Understood));
        }

        WriteFaults(text, result.Lines.SelectMany(line => line.Faults.Select(fault => (line.Line, fault))), terminal);
    }

    /// <summary>The faults that an answer tells of the one line that was sent, under it; false if it tells others.</summary>
    public static bool TryWriteFaults(string line, ApiException refused, Terminal terminal)
    {
        if (FaultReport.ProblemIn(refused)?.Errors is not { Count: > 0 } faults || faults.Any(fault => fault.Column is null))
        {
            return false;
        }

        WriteFaults(line, faults.Select(fault => (1, new LineFault(fault.Column!.Value, fault.Detail))), terminal);
        return true;
    }

    /// <summary>Each fault under the line in which it is.</summary>
    public static void WriteFaults(string text, IEnumerable<(int Line, LineFault Fault)> faults, Terminal terminal)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        foreach (var (number, fault) in faults)
        {
            terminal.Say(SafeText.Of(string.Create(CultureInfo.InvariantCulture, $"line {number}, column {fault.Column}: {fault.Detail}")));
            // A tab is one sign of the line, so it is one sign wide here too.
            terminal.Say($"  {SafeText.Of(lines[number - 1].Replace('\t', ' '))}");
            terminal.Say($"  {new string(' ', fault.Column - 1)}^");
        }
    }
}
