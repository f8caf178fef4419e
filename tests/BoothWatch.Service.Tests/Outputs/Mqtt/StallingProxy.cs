using System.Net;
using System.Net.Sockets;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>A TCP proxy that can stop forwarding without closing anything, as a dead router or a hung broker does.</summary>
internal sealed class StallingProxy : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly List<Socket> _sockets = [];
    private readonly int _target;
    private volatile int _stalledBelow;
    private int _accepted;

    public StallingProxy(int target)
    {
        _target = target;
        _listener.Start();
        _ = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Connections taken so far.</summary>
    public int Accepted => Volatile.Read(ref _accepted);

    /// <summary>Connections made so far say nothing more, in either direction, and stay open. New ones work.</summary>
    public void Stall() => _stalledBelow = Accepted + 1;

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Dispose();
        lock (_sockets)
        {
            _sockets.ForEach(socket => socket.Dispose());
        }
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                Socket client = await _listener.AcceptSocketAsync(_stop.Token);
                int number = Interlocked.Increment(ref _accepted);
                Socket server = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                await server.ConnectAsync(IPAddress.Loopback, _target, _stop.Token);
                lock (_sockets)
                {
                    _sockets.AddRange([client, server]);
                }

                _ = ForwardAsync(client, server, number);
                _ = ForwardAsync(server, client, number);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task ForwardAsync(Socket from, Socket to, int number)
    {
        byte[] buffer = new byte[16_384];
        try
        {
            while (true)
            {
                int length = await from.ReceiveAsync(buffer, _stop.Token);
                if (number < _stalledBelow)
                {
                    return;
                }

                if (length == 0)
                {
                    to.Shutdown(SocketShutdown.Send);
                    return;
                }

                await to.SendAsync(buffer.AsMemory(0, length), _stop.Token);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // One side is gone.
        }
    }
}
