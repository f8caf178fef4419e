using System.Collections.Concurrent;
using System.Text.Json.Nodes;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>A reader of verdict changes that comes back whenever the broker does, and drops what it has already.</summary>
internal sealed class ChangeReader : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly ConcurrentDictionary<long, bool> _known = [];
    private readonly ConcurrentDictionary<long, bool> _byEvent = [];
    private readonly Task _run;
    private int _repeated;

    public ChangeReader(int port, string events, string recent) => _run = RunAsync(port, events, recent);

    /// <summary>Ids known from events or from the retained list.</summary>
    public ICollection<long> Known => _known.Keys;

    /// <summary>Ids that came as an event.</summary>
    public ICollection<long> ByEvent => _byEvent.Keys;

    /// <summary>Events that came again.</summary>
    public int Repeated => Volatile.Read(ref _repeated);

    public bool Subscribed { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _run;
    }

    private async Task RunAsync(int port, string events, string recent)
    {
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                await using MqttReader reader = await MqttReader.ConnectAsync(port, events);
                await reader.SubscribeAsync(recent);
                Subscribed = true;
                do
                {
                    await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
                    Take(reader, events);
                }
                while (reader.IsConnected && !_stop.IsCancellationRequested);
                Take(reader, events);
            }
            catch (Exception e) when (e is MQTTnet.Exceptions.MqttCommunicationException or System.Net.Sockets.SocketException)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
            }
        }
    }

    private void Take(MqttReader reader, string events)
    {
        while (reader.All.TryDequeue(out MqttReader.Heard? message))
        {
            JsonNode document = JsonNode.Parse(message.Payload)!;
            if (message.Topic == events)
            {
                long id = (long)document["id"]!;
                _known.TryAdd(id, true);
                _repeated += _byEvent.TryAdd(id, true) ? 0 : 1;
            }
            else
            {
                foreach (JsonNode? change in document.AsArray())
                {
                    _known.TryAdd((long)change!["id"]!, true);
                }
            }
        }
    }
}
