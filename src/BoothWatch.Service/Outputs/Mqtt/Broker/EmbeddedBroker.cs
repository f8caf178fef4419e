using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Options;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace BoothWatch.Service.Outputs.Mqtt.Broker;

/// <summary>
/// The broker inside this process. Others may read everything and write anywhere but to this booth's own topics. When its port
/// is taken it says so and tries again; the service goes on without it meanwhile.
/// </summary>
internal sealed partial class EmbeddedBroker(
    IOptions<MqttOptions> options, MqttTopics topics, TimeProvider time, ILogger<EmbeddedBroker> logger) : BackgroundService
{
    private static readonly TimeSpan RetryEvery = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan SweepEvery = TimeSpan.FromSeconds(1);

    private readonly MqttOptions _options = options.Value;
    private readonly RetainedExpiry _expiry = new(time);
    private MqttServer? _server;
    private bool _warned;

    /// <summary>What our own client shows as its password, so that nobody else can take its place.</summary>
    public string OwnSecret { get; } = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));

    /// <summary>True while it listens.</summary>
    public bool IsRunning => Volatile.Read(ref _server) is not null;

    /// <summary>Why it does not listen, for people.</summary>
    public string Trouble { get; private set; } = "it is not listening yet";

    /// <inheritdoc/>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        if (_options.Use == MqttOptions.Embedded)
        {
            await TryStartAsync();
            await base.StartAsync(cancellationToken);
        }
    }

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        if (Interlocked.Exchange(ref _server, null) is { } server)
        {
            await server.StopAsync();
            server.Dispose();
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!IsRunning)
        {
            await Task.Delay(RetryEvery, time, stoppingToken);
            await TryStartAsync();
        }

        using PeriodicTimer timer = new(SweepEvery, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            foreach (string topic in _expiry.TakeExpired())
            {
                // An update without a payload removes it; nobody is sent anything.
                await _server!.UpdateRetainedMessageAsync(new MQTTnet.MqttApplicationMessage { Topic = topic });
            }
        }
    }

    private async Task TryStartAsync()
    {
        MqttServer server = new MqttServerFactory().CreateMqttServer(Configure());
        server.ValidatingConnectionAsync += args =>
        {
            args.ReasonCode = Judge(args.ClientId, args.UserName, args.Password);
            if (string.IsNullOrEmpty(args.ClientId))
            {
                // MQTT 5.0, 3.1.3.1: a client may leave its id to the broker.
                args.AssignedClientIdentifier = $"auto-{Guid.NewGuid():N}";
            }

            return Task.CompletedTask;
        };
        server.InterceptingPublishAsync += args =>
        {
            if (MayWrite(args.ClientId, args.ApplicationMessage.Topic))
            {
                _expiry.Note(args.ApplicationMessage);
            }
            else
            {
                args.ProcessPublish = false;
                args.Response.ReasonCode = MqttPubAckReasonCode.NotAuthorized;
            }

            return Task.CompletedTask;
        };
        try
        {
            await server.StartAsync();
            Volatile.Write(ref _server, server);
            LogListening(_options.Broker.Address, _options.Broker.Port);
        }
        catch (SocketException e)
        {
            server.Dispose();
            Trouble = e.SocketErrorCode == SocketError.AddressAlreadyInUse
                ? $"port {_options.Broker.Port} is taken by another program: give another mqtt:broker:port, or set mqtt:use to external to publish to that program, if it is a broker"
                : $"it cannot listen on {_options.Broker.Address}:{_options.Broker.Port} ({e.Message}): check mqtt:broker:address and mqtt:broker:port";
            if (!_warned)
            {
                _warned = true;
                LogNotListening(Trouble);
            }
        }
    }

    private MqttServerOptions Configure()
    {
        IPAddress address = IPAddress.Parse(_options.Broker.Address);
        bool isV6 = address.AddressFamily == AddressFamily.InterNetworkV6;
        return new MqttServerOptionsBuilder()
            .WithDefaultEndpoint()
            .WithDefaultEndpointPort(_options.Broker.Port)
            .WithDefaultEndpointBoundIPAddress(isV6 ? IPAddress.None : address)
            .WithDefaultEndpointBoundIPV6Address(isV6 ? address : IPAddress.None)
            .WithPersistentSessions()
            .Build();
    }

    private MqttConnectReasonCode Judge(string clientId, string? user, string? password)
    {
        if (clientId == ConnectOptions.ClientId(topics))
        {
            return Same(password, OwnSecret) ? MqttConnectReasonCode.Success : MqttConnectReasonCode.ClientIdentifierNotValid;
        }

        bool isOpen = _options.Broker.User.Length == 0;
        return isOpen || (Same(user, _options.Broker.User) && Same(password, PasswordFile.Read(_options.Broker.PasswordFile)))
            ? MqttConnectReasonCode.Success
            : MqttConnectReasonCode.BadUserNameOrPassword;
    }

    private bool MayWrite(string clientId, string topic) =>
        clientId == ConnectOptions.ClientId(topics)
        || topic.StartsWith($"{topics.Command}/", StringComparison.Ordinal)
        || !(topic.StartsWith($"{topics.Device}/", StringComparison.Ordinal) || topic.StartsWith($"{topics.Booth}/", StringComparison.Ordinal));

    private static bool Same(string? given, string wanted) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given ?? ""), Encoding.UTF8.GetBytes(wanted));

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "The embedded MQTT broker listens on {Address}:{Port}")]
    private partial void LogListening(string address, int port);

    [LoggerMessage(EventId = 2, Level = LogLevel.Warning, Message = "No embedded MQTT broker: {Cause}. Everything else goes on; it is tried again every 10 s")]
    private partial void LogNotListening(string cause);
}
