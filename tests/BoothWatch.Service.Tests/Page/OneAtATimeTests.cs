using BoothWatch.Service.Page;

namespace BoothWatch.Service.Tests.Page;

public sealed class OneAtATimeTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Work_AskedForByMany_IsDoneByOneThreadAndHoldsNoOther()
    {
        using OneAtATime turns = new();
        using ManualResetEventSlim release = new();
        using CancellationTokenSource gone = new();
        TaskCompletionSource begun = new();
        (int working, int mostAtOnce) = (0, 0);
        int Work(int result)
        {
            mostAtOnce = Math.Max(mostAtOnce, Interlocked.Increment(ref working));
            begun.TrySetResult();
            Assert.True(release.Wait(Patience));
            Interlocked.Decrement(ref working);
            return result;
        }

        Task<int> first = Task.Run(() => turns.Do(() => Work(0), CancellationToken.None));
        await begun.Task.WaitAsync(Patience);

        // All of them ask from one and the same thread: if asking held it, the second would never get to ask.
        Task<int>[] others = await Task.Run(() => Enumerable.Range(1, 100).Select(i => turns.Do(() => Work(i), i == 100 ? gone.Token : CancellationToken.None)).ToArray())
            .WaitAsync(Patience);
        Assert.Equal(100, turns.Waiting);
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => others[99].WaitAsync(Patience));
        Assert.Equal((99, 1), (turns.Waiting, working));

        release.Set();
        Assert.Equal(0, await first);
        Assert.Equal(Enumerable.Range(1, 99), await Task.WhenAll(others[..99]).WaitAsync(Patience));
        Assert.Equal((1, 0), (mostAtOnce, turns.Waiting));
    }

    [Fact]
    public async Task Work_ThatFails_LetsTheNextOneIn()
    {
        using OneAtATime turns = new();
        await Assert.ThrowsAsync<InvalidOperationException>(() => turns.Do<int>(() => throw new InvalidOperationException("no"), CancellationToken.None));
        Assert.Equal(3, await turns.Do(() => 3, CancellationToken.None).WaitAsync(Patience));
    }
}
