using System.Collections.Concurrent;
using System.Threading.Channels;
using BoothWatch.Service.Outputs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs.Pump;

/// <summary>An output that does what the test says, and keeps what it was given.</summary>
internal sealed class StubOutput(Func<Assessment, CancellationToken, Task> handle) : IAssessmentOutput
{
    private readonly Channel<int> _calls = Channel.CreateUnbounded<int>();

    public string Name => "stub";

    public ConcurrentQueue<Assessment> Seen { get; } = new();

    /// <summary>Waits until the output has been called once more.</summary>
    public async Task CalledAsync() =>
        await _calls.Reader.ReadAsync().AsTask().WaitAsync(TimeSpan.FromSeconds(30));

    /// <summary>True when the output has been called once more; does not wait.</summary>
    public bool WasCalled() => _calls.Reader.TryRead(out _);

    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        Seen.Enqueue(assessment);
        _calls.Writer.TryWrite(0);
        return handle(assessment, cancellationToken);
    }
}
