using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>A real submission server on loopback with a certificate of the test's own authority; mail only over TLS and from one user.</summary>
internal sealed class SmtpReceiver : MessageStore, IUserAuthenticator, IMailboxFilter, IAsyncDisposable
{
    public const string User = "booth";
    public const string Password = "harbour-lane-7";

    private readonly CancellationTokenSource _stop = new();
    private Task _run = Task.CompletedTask;

    public ConcurrentQueue<MimeMessage> Mails { get; } = [];

    public int Port { get; } = Mosquitto.FreePort();

    /// <summary>What is answered to a message.</summary>
    public SmtpResponse Answer { get; set; } = SmtpResponse.Ok;

    /// <summary>A recipient that the server does not know; empty: it takes all.</summary>
    public string Unknown { get; set; } = "";

    public static Task<SmtpReceiver> StartAsync(TestCertificates certificates, bool tlsFromTheStart, bool offersTls = true)
    {
        SmtpReceiver receiver = new();
        (string certificate, string key) = certificates.Issue("mail", IPAddress.Loopback);
        using X509Certificate2 pem = X509Certificate2.CreateFromPemFile(certificate, key);
        X509Certificate2 usable = X509CertificateLoader.LoadPkcs12(pem.Export(X509ContentType.Pkcs12), null);
        ISmtpServerOptions options = new SmtpServerOptionsBuilder()
            .ServerName("mail.harbour-lane.example")
            .Endpoint(endpoint =>
            {
                endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, receiver.Port)).IsSecure(tlsFromTheStart)
                    .AuthenticationRequired(true).AllowUnsecureAuthentication(false);
                if (offersTls)
                {
                    endpoint.Certificate(usable);
                }
            })
            .Build();
        global::SmtpServer.ComponentModel.ServiceProvider services = new();
        services.Add((IMessageStore)receiver);
        services.Add((IUserAuthenticator)receiver);
        services.Add((IMailboxFilter)receiver);
        receiver._run = new global::SmtpServer.SmtpServer(options, services).StartAsync(receiver._stop.Token);
        return Task.FromResult(receiver);
    }

    public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        Assert.True(context.Pipe.IsSecure, "mail came in the clear");
        using MemoryStream bytes = new(buffer.ToArray());
        Mails.Enqueue(await MimeMessage.LoadAsync(bytes, cancellationToken));
        return Answer;
    }

    public Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) =>
        Task.FromResult(context.Pipe.IsSecure && user == User && password == Password);

    public Task<bool> CanAcceptFromAsync(ISessionContext context, IMailbox from, int size, CancellationToken cancellationToken) => Task.FromResult(true);

    public Task<bool> CanDeliverToAsync(ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken) =>
        Task.FromResult($"{to.User}@{to.Host}" != Unknown);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        try
        {
            await _run;
        }
        catch (OperationCanceledException)
        {
            // As asked.
        }

        _stop.Dispose();
    }
}
