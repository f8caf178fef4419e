using System.Net;
using System.Net.Sockets;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>
/// A TCP relay on loopback that can stop forwarding without closing anything, as a broken switch or a sleeping router does:
/// connections stay open and nothing arrives.
/// </summary>
internal sealed class StallingProxy : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly int _target;
    private readonly CancellationTokenSource _end = new();
    private readonly List<Task> _work = [];
    private readonly Lock _gate = new();
    private readonly Task _accept;
    private volatile bool _requestsStalled;
    private volatile bool _answersStalled;
    private volatile int _stalledBelow;
    private int _accepted;

    public StallingProxy(int target)
    {
        _target = target;
        _listener.Start();
        _accept = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public string Url => $"http://127.0.0.1:{Port}";

    /// <summary>Connections taken so far.</summary>
    public int Accepted => Volatile.Read(ref _accepted);

    /// <summary>True: requests are swallowed. A connection that has stalled once stays dead.</summary>
    public bool RequestsStalled
    {
        get => _requestsStalled;
        set => _requestsStalled = value;
    }

    /// <summary>True: requests go through and their answers are swallowed. A connection that has stalled once stays dead.</summary>
    public bool AnswersStalled
    {
        get => _answersStalled;
        set => _answersStalled = value;
    }

    /// <summary>Connections made so far say nothing more, in either direction, not even that they end. New ones work.</summary>
    public void Stall() => _stalledBelow = Accepted + 1;

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        _listener.Stop();
        await _accept;
        Task[] work;
        lock (_gate)
        {
            work = [.. _work];
        }

        await Task.WhenAll(work);
        _end.Dispose();
    }

    private async Task AcceptAsync()
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                TcpClient near = await _listener.AcceptTcpClientAsync(_end.Token);
                int number = Interlocked.Increment(ref _accepted);
                lock (_gate)
                {
                    _work.Add(RelayAsync(near, number));
                }
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task RelayAsync(TcpClient near, int number)
    {
        using (near)
        using (var far = new TcpClient())
        {
            try
            {
                await far.ConnectAsync(IPAddress.Loopback, _target, _end.Token);
                await Task.WhenAny(
                    PumpAsync(near.GetStream(), far.GetStream(), number, () => _requestsStalled),
                    PumpAsync(far.GetStream(), near.GetStream(), number, () => _answersStalled));
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or IOException)
            {
                // The relay ends with either side.
            }
        }
    }

    private async Task PumpAsync(NetworkStream from, NetworkStream to, int number, Func<bool> stalled)
    {
        byte[] buffer = new byte[65_536];
        bool dead = false;
        while (true)
        {
            int read = await from.ReadAsync(buffer, _end.Token);
            if (number < _stalledBelow)
            {
                await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, _end.Token);
            }

            if (read == 0)
            {
                return;
            }

            dead |= stalled();
            if (!dead)
            {
                await to.WriteAsync(buffer.AsMemory(0, read), _end.Token);
            }
        }
    }
}
