using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Text.Json;
using MQTTnet;
using MQTTnet.Exceptions;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>What went wrong with a connection, in words with the fix where there is one.</summary>
internal static class MqttTrouble
{
    /// <summary>True for what a network, a broker or a certificate file can do to us.</summary>
    public static bool IsConnection(Exception error) => error
        is MqttCommunicationException
        or MqttProtocolViolationException
        or MqttConfigurationException
        or SocketException
        or IOException
        or UnauthorizedAccessException
        or AuthenticationException
        or CryptographicException
        or TimeoutException
        or ObjectDisposedException
        or InvalidOperationException
        or MqttLinkException;

    public static string Explain(Exception error)
    {
        Exception root = error;
        while (root is MqttCommunicationException { InnerException: { } inner })
        {
            root = inner;
        }

        return root switch
        {
            SocketException socket => socket.SocketErrorCode switch
            {
                SocketError.ConnectionRefused => "nothing listens there (connection refused): start the broker, or check its address and port",
                SocketError.HostNotFound or SocketError.TryAgain or SocketError.NoData => "its name is not known: check the name and the DNS",
                SocketError.TimedOut or SocketError.HostUnreachable or SocketError.NetworkUnreachable => "it cannot be reached: check the network and the firewall",
                _ => socket.Message,
            },
            AuthenticationException tls => $"TLS failed: {tls.InnerException?.Message ?? tls.Message}; check mqtt:tls and the certificate of the broker",
            CryptographicException file => $"a certificate file cannot be used: {file.Message}; check mqtt:tls",
            OperationCanceledException or TimeoutException or MqttCommunicationTimedOutException => "it did not answer in time",
            _ => root.Message,
        };
    }

    public static string Explain(MqttClientConnectResultCode code) => code switch
    {
        MqttClientConnectResultCode.BadUserNameOrPassword => "it refused the user or the password: check mqtt:user and mqtt:passwordFile",
        MqttClientConnectResultCode.NotAuthorized => "it does not let this client in: check mqtt:user and mqtt:passwordFile, and what it allows them",
        MqttClientConnectResultCode.UnsupportedProtocolVersion => "it does not speak MQTT 5: update the broker",
        _ => $"it refused the connection: {Words(code)}",
    };

    public static string Explain(MqttClientDisconnectedEventArgs args) => (args.Reason, args.Exception) switch
    {
        (MqttClientDisconnectReason.SessionTakenOver, _) => "another client took over with the same client id: give each booth its own mqtt:deviceId",
        (_, { } error) => Explain(error),
        (MqttClientDisconnectReason.NormalDisconnection, _) => "the connection ended",
        _ => $"the broker ended the connection: {Words(args.Reason)}",
    };

    /// <summary>A code of the library as words: <c>NotAuthorized</c> becomes <c>not authorized</c>.</summary>
    public static string Words<T>(T code)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(code.ToString()).Replace('-', ' ');
}
