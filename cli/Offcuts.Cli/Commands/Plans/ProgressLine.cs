using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>One line on standard error that is written over; nothing at all where that is no screen.</summary>
internal sealed class ProgressLine(Terminal terminal, bool quiet) : IDisposable
{
    private readonly bool isShown = terminal.ErrIsTerminal && !quiet;
    private int length;

    /// <summary>Shows a text in place of the one before.</summary>
    public void Show(string text)
    {
        if (isShown)
        {
            // Blanks and no escape sequence wipe the line, so that it works without colour too.
            var line = text.Length < terminal.Width ? text : text[..(terminal.Width - 1)];
            terminal.Err.Write($"\r{line.PadRight(length)}");
            length = line.Length;
        }
    }

    /// <summary>Wipes the line before something else is written; the next text shows again.</summary>
    public void Wipe()
    {
        if (isShown && length > 0)
        {
            terminal.Err.Write($"\r{new string(' ', length)}\r");
            length = 0;
        }
    }

    /// <summary>Shows how far a search is.</summary>
    public void Show(PlanProgressRecord? progress, string currency)
    {
        if (progress is null)
        {
            return;
        }

        var best = progress.WoodCost is { } cost ? $"best {Price.Of(cost, currency)}, " : "no plan yet, ";
        Show(string.Create(
            CultureInfo.InvariantCulture,
            $"Planning {progress.ElapsedMs / 1000m:0.0} s: {best}at least {Price.Of(progress.WoodBound, currency)}"));
    }

    /// <summary>Wipes the line.</summary>
    public void Dispose() => Wipe();
}
