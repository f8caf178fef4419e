namespace BoothWatch.Service.Page;

/// <summary>
/// Does the long work of requests (reviews, records, what-if answers, pictures) one after the other, however many ask at once. Whoever waits holds no
/// thread: the light is switched on the same thread pool, and must find one.
/// </summary>
internal sealed class OneAtATime : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private int _waiting;

    /// <summary>How many wait for their turn now.</summary>
    public int Waiting => Volatile.Read(ref _waiting);

    /// <summary>Waits for its turn, then does the work on one thread of the pool.</summary>
    /// <param name="work">The work; what it throws is thrown on.</param>
    /// <param name="cancellationToken">Ends the waiting, not the work: the caller went away.</param>
    /// <exception cref="OperationCanceledException">The caller went away before its turn.</exception>
    public async Task<T> Do<T>(Func<T> work, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(work);
        Interlocked.Increment(ref _waiting);
        try
        {
            await _turn.WaitAsync(cancellationToken);
        }
        finally
        {
            Interlocked.Decrement(ref _waiting);
        }

        try
        {
            return work();
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();
}
