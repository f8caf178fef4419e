using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>Keeps every log line for a test to read.</summary>
internal sealed class LogLines : ILoggerProvider, ILogger
{
    public ConcurrentQueue<(LogLevel Level, string Text)> All { get; } = [];

    public IEnumerable<string> Warnings => All.Where(line => line.Level >= LogLevel.Warning).Select(line => line.Text);

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        All.Enqueue((logLevel, formatter(state, exception)));

    public void Dispose()
    {
    }
}
