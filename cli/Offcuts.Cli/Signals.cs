using System.Runtime.InteropServices;

namespace Offcuts.Cli;

/// <summary>
/// Ctrl-C and SIGTERM: the first asks the command to end, a second Ctrl-C ends the process at once.
/// </summary>
internal sealed class Signals : IDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly PosixSignalRegistration interrupt;
    private readonly PosixSignalRegistration terminate;

    public Signals()
    {
        interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, context => Stop(context, ExitCode.Interrupted));
        terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, context => Stop(context, ExitCode.Terminated));
    }

    /// <summary>Cancelled by the first signal.</summary>
    public CancellationToken Token => stop.Token;

    /// <summary>The exit code of the first signal; null before it.</summary>
    public int? ExitedBy { get; private set; }

    /// <inheritdoc/>
    public void Dispose()
    {
        interrupt.Dispose();
        terminate.Dispose();
        stop.Dispose();
    }

    private void Stop(PosixSignalContext context, int exitCode)
    {
        context.Cancel = true;
        if (ExitedBy is not null)
        {
            Environment.Exit(exitCode);
        }

        ExitedBy = exitCode;
        stop.Cancel();
    }
}
