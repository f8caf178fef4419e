using System.Collections.Concurrent;
using BoothWatch.Service.Outputs.Alerts;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>A channel that does as the test says.</summary>
internal sealed class StubChannel(string name) : IAlertChannel
{
    public ConcurrentQueue<AlertMessage> Taken { get; } = [];

    public int Attempts { get; private set; }

    /// <summary>What is thrown; null to take the message.</summary>
    public Func<Exception?> Trouble { get; set; } = () => null;

    /// <summary>What an attempt waits for.</summary>
    public Task Hold { get; set; } = Task.CompletedTask;

    public string Name => name;

    public string? OffBecause { get; set; }

    public IReadOnlyList<string> Targets() => [""];

    public async Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken)
    {
        Attempts++;
        await Hold.WaitAsync(cancellationToken);
        if (Trouble() is { } trouble)
        {
            throw trouble;
        }

        Taken.Enqueue(message);
    }
}
