namespace Offcuts.Cli.Editing;

/// <summary>
/// Asks for lines at a terminal: with the arrow keys, and with the lines before at hand. Written here because the library for it is a preview.
/// </summary>
/// <param name="terminal">Where to ask.</param>
/// <param name="prompt">What stands before each line.</param>
internal sealed class LineEditor(Terminal terminal, string prompt)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);
    private readonly LineBuffer line = new();
    private int shown;

    /// <summary>The next line; null when no more are wanted (Ctrl-D, Ctrl-C, or the end of a terminal without keys).</summary>
    public async Task<string?> ReadAsync(CancellationToken cancellationToken)
    {
        // Reading single keys makes .NET write an escape sequence (keypad mode); without them the terminal's own editing has to do.
        if (!terminal.ColourErr)
        {
            await terminal.Err.WriteAsync(prompt);
            return await terminal.In.ReadLineAsync(cancellationToken);
        }

        // Ctrl-C is a key here: the line is given up, nothing that was logged is.
        Console.TreatControlCAsInput = true;
        try
        {
            return await EditAsync(cancellationToken);
        }
        finally
        {
            Console.TreatControlCAsInput = false;
        }
    }

    private async Task<string?> EditAsync(CancellationToken cancellationToken)
    {
        shown = 0;
        Show();
        while (true)
        {
            while (!Console.KeyAvailable)
            {
                await Task.Delay(Pause, cancellationToken);
            }

            var end = line.Press(Console.ReadKey(intercept: true));
            if (end != LineEnd.None)
            {
                await terminal.Err.WriteLineAsync();
                return end == LineEnd.Entered ? line.Take() : null;
            }

            if (!Console.KeyAvailable)
            {
                Show();
            }
        }
    }

    // A line wider than the screen is shown around the cursor.
    private void Show()
    {
        var room = terminal.Width - prompt.Length - 1;
        var first = Math.Max(0, line.Cursor - room);
        var text = line.Text.Substring(first, Math.Min(room, line.Text.Length - first));
        terminal.Err.Write($"\r{prompt}{SafeText.Of(text).PadRight(shown)}\r{prompt}{SafeText.Of(text[..(line.Cursor - first)])}");
        shown = text.Length;
    }
}
