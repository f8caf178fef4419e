using System.Security.Cryptography.X509Certificates;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Turns the options into those of the MQTT library. Password and certificate files are read each time.</summary>
internal static class ConnectOptions
{
    /// <summary>Client id of the booth at the broker.</summary>
    public static string ClientId(MqttTopics topics) => $"boothwatch-{topics.DeviceId}";

    /// <summary>Where the broker is, for people.</summary>
    public static string Place(MqttOptions options) => options.Use == MqttOptions.Embedded
        ? $"the embedded broker at port {options.Broker.Port}"
        : $"the broker at {options.Host}:{options.Port}";

    /// <param name="options">The options.</param>
    /// <param name="topics">The topics, for the last will.</param>
    /// <param name="ownSecret">What proves to the embedded broker that it is us.</param>
    public static MqttClientOptions Of(MqttOptions options, MqttTopics topics, string ownSecret)
    {
        // Not a clean start: a new connection within the delay of the last will takes that will back.
        MqttClientOptionsBuilder builder = new MqttClientOptionsBuilder()
            .WithProtocolVersion(MqttProtocolVersion.V500)
            .WithClientId(ClientId(topics))
            .WithCleanStart(false)
            .WithSessionExpiryInterval((uint)options.SessionExpiryS)
            .WithKeepAlivePeriod(TimeSpan.FromSeconds(options.KeepAliveS))
            .WithTimeout(TimeSpan.FromSeconds(options.AnswerWithinS))
            .WithWillTopic(topics.State)
            .WithWillPayload("lost")
            .WithWillContentType(ContentTypes.Text)
            .WithWillPayloadFormatIndicator(MqttPayloadFormatIndicator.CharacterData)
            .WithWillRetain(true)
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .WithWillDelayInterval((uint)options.WillDelayS);
        if (options.Use == MqttOptions.Embedded)
        {
            return builder.WithTcpServer(ReachableAddress(options.Broker.Address), options.Broker.Port).WithCredentials("boothwatch", ownSecret).Build();
        }

        builder.WithTcpServer(options.Host, options.Port);
        if (options.User.Length > 0)
        {
            builder.WithCredentials(options.User, PasswordFile.Read(options.PasswordFile));
        }

        if (options.Tls.Enabled)
        {
            builder.WithTlsOptions(tls => Secure(tls, options));
        }

        return builder.Build();
    }

    private static string ReachableAddress(string listening) => listening switch
    {
        "0.0.0.0" => "127.0.0.1",
        "::" => "::1",
        _ => listening,
    };

    private static void Secure(MqttClientTlsOptionsBuilder tls, MqttOptions options)
    {
        tls.UseTls().WithTargetHost(options.Host);
        if (options.Tls.CaFile.Length > 0)
        {
            var authorities = new X509Certificate2Collection();
            authorities.ImportFromPemFile(options.Tls.CaFile);
            tls.WithCertificateValidationHandler(args =>
            {
                using var certificate = new X509Certificate2(args.Certificate);
                return AuthorityTrust.IsTrusted(certificate, args.SslPolicyErrors, authorities);
            });
        }

        if (options.Tls.CertificateFile.Length > 0)
        {
            tls.WithClientCertificates([X509Certificate2.CreateFromPemFile(options.Tls.CertificateFile, options.Tls.KeyFile)]);
        }
    }
}
