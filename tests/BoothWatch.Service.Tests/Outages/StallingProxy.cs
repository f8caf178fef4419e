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

    public StallingProxy(int target)
    {
        _target = target;
        _listener.Start();
        _accept = AcceptAsync();
    }

    public string Url => $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}";

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
                lock (_gate)
                {
                    _work.Add(RelayAsync(near));
                }
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task RelayAsync(TcpClient near)
    {
        using (near)
        using (var far = new TcpClient())
        {
            try
            {
                await far.ConnectAsync(IPAddress.Loopback, _target, _end.Token);
                await Task.WhenAny(
                    PumpAsync(near.GetStream(), far.GetStream(), () => _requestsStalled),
                    PumpAsync(far.GetStream(), near.GetStream(), () => _answersStalled));
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or IOException)
            {
                // The relay ends with either side.
            }
        }
    }

    private async Task PumpAsync(NetworkStream from, NetworkStream to, Func<bool> stalled)
    {
        byte[] buffer = new byte[65_536];
        bool dead = false;
        while (true)
        {
            int read = await from.ReadAsync(buffer, _end.Token);
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
