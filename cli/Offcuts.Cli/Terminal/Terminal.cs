using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Offcuts.Cli;

/// <summary>Everything through which a person or a script is spoken to. Data goes to <see cref="Out"/>, messages to <see cref="Err"/>.</summary>
internal sealed class Terminal : IDisposable
{
    private const int PipedWidth = 1000;
    private const int NarrowestWidth = 40;

    // Asking for the real width makes .NET write an escape sequence (keypad mode), which must not be where none is wanted.
    private const int UsualWidth = 80;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Where data is read from.</summary>
    public required TextReader In { get; init; }

    /// <summary>Data and nothing else.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Messages.</summary>
    public required TextWriter Err { get; init; }

    /// <summary>Whether a person can answer a question.</summary>
    public required bool InIsTerminal { get; init; }

    /// <summary>Whether messages go to a screen, so that a line may be written over.</summary>
    public required bool ErrIsTerminal { get; init; }

    /// <summary>Whether escapes may go to <see cref="Out"/>.</summary>
    public required bool ColourOut { get; init; }

    /// <summary>Whether escapes may go to <see cref="Err"/>.</summary>
    public required bool ColourErr { get; init; }

    /// <summary>Columns of the screen; very many where output is no screen, so that nothing is shortened for a script.</summary>
    public required int Width { get; init; }

    /// <summary>The terminal of this process.</summary>
    /// <param name="args">The command line: colour must be settled before it is parsed, since parsing may fail.</param>
    public static Terminal Open(string[] args)
    {
        var plain = args.TakeWhile(arg => arg != "--").Contains("--no-color")
            || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            || Environment.GetEnvironmentVariable("TERM") == "dumb";
        return new Terminal
        {
            In = new StreamReader(Standard(0, Console.IsInputRedirected, Console.OpenStandardInput), Utf8),
            Out = new StreamWriter(Standard(1, Console.IsOutputRedirected, Console.OpenStandardOutput), Utf8, bufferSize: 16 * 1024) { NewLine = "\n" },
            Err = new StreamWriter(Standard(2, Console.IsErrorRedirected, Console.OpenStandardError), Utf8) { AutoFlush = true, NewLine = "\n" },
            InIsTerminal = !Console.IsInputRedirected,
            ErrIsTerminal = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb",
            ColourOut = !plain && !Console.IsOutputRedirected,
            ColourErr = !plain && !Console.IsErrorRedirected,
            Width = Console.IsOutputRedirected ? PipedWidth : Math.Clamp(plain ? UsualWidth : Console.WindowWidth, NarrowestWidth, PipedWidth),
        };
    }

    // Console's own stream writes an escape sequence (keypad mode) to a terminal before its first byte, wanted or not. A file
    // needs it, though: it moves the place that is shared with whoever writes to the same file after this program.
    private static Stream Standard(int descriptor, bool isRedirected, Func<Stream> console) =>
        isRedirected || OperatingSystem.IsWindows()
            ? console()
            : new FileStream(
                new SafeFileHandle(descriptor, ownsHandle: false), descriptor == 0 ? FileAccess.Read : FileAccess.Write, bufferSize: 0);

    /// <summary>A heading on standard output, bold where escapes may go.</summary>
    public string Bold(string text) => ColourOut ? $"\u001b[1m{text}\u001b[0m" : text;

    /// <summary>A message on standard error.</summary>
    public void Say(string message) => Err.WriteLine(message);

    /// <inheritdoc/>
    public void Dispose()
    {
        In.Dispose();
        try
        {
            Out.Dispose();
        }
        catch (IOException)
        {
            // The reader of a pipe may leave before the end (`offcuts boards list | head -1`); what it wanted it has.
        }

        Err.Dispose();
    }
}
