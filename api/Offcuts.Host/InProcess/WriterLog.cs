using System.Globalization;

namespace Offcuts.Host.InProcess;

/// <summary>Writes warnings and errors to a writer at once. The console logger of the framework starts a thread and reads options before its first line.</summary>
/// <param name="writer">Takes the lines.</param>
internal sealed class WriterLog(TextWriter writer) : ILoggerProvider
{
    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, writer);

    /// <inheritdoc/>
    public void Dispose()
    {
        // It holds nothing.
    }

    private sealed class Logger(string category, TextWriter writer) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning && logLevel != LogLevel.None;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel))
            {
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{logLevel}: {category}: {formatter(state, exception)}"));
                if (exception is not null)
                {
                    writer.WriteLine(exception);
                }
            }
        }
    }
}
