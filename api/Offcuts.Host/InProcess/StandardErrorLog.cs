using System.Globalization;

namespace Offcuts.Host.InProcess;

/// <summary>Writes the log to standard error at once. The console logger of the framework starts a thread and reads options before its first line.</summary>
internal sealed class StandardErrorLog : ILoggerProvider
{
    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => new Logger(categoryName);

    /// <inheritdoc/>
    public void Dispose()
    {
        // It holds nothing.
    }

    private sealed class Logger(string category) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning && logLevel != LogLevel.None;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel))
            {
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{logLevel}: {category}: {formatter(state, exception)}"));
                if (exception is not null)
                {
                    Console.Error.WriteLine(exception);
                }
            }
        }
    }
}
