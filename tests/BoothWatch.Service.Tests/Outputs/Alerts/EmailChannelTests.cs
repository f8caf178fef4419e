using BoothWatch.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.Email;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using MimeKit;
using SmtpServer.Protocol;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>E-mail to a real submission server over real TLS.</summary>
public sealed class EmailChannelTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-mail-").FullName;
    private readonly TestCertificates _certificates;
    private readonly AlertsOptions _options;
    private readonly AlertBench _bench;

    public EmailChannelTests()
    {
        _certificates = new TestCertificates(_folder, "authority");
        string password = Path.Combine(_folder, "password");
        File.WriteAllText(password, SmtpReceiver.Password + "\n");
        _options = new AlertsOptions
        {
            PageUrl = "https://booth.lan:5443",
            Email =
            {
                Host = "127.0.0.1",
                CaFile = _certificates.CaFile,
                User = SmtpReceiver.User,
                PasswordFile = password,
                From = "booth@harbour-lane.example",
                To = ["finisher@harbour-lane.example", "office@harbour-lane.example"],
            },
        };
        _bench = new AlertBench(_options);
    }

    public void Dispose()
    {
        _bench.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Theory]
    [InlineData(EmailOptions.StartTls)]
    [InlineData(EmailOptions.Tls)]
    public async Task Message_ArrivesOverTlsFromAUserThatSignedIn(string security)
    {
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(_certificates, tlsFromTheStart: security == EmailOptions.Tls);
        (_options.Email.Security, _options.Email.Port) = (security, server.Port);
        AlertMessage message = _bench.Message();
        await SendAsync(message);
        await SendAsync(_bench.Message(AlertMessageType.Clear) with { Alert = message.Alert, Title = "Spray again" });

        MimeMessage[] mails = [.. server.Mails];
        Assert.Equal("Wait (Harbour Lane, corner)", mails[0].Subject);
        Assert.Equal("All clear: Spray again (Harbour Lane, corner)", mails[1].Subject);
        Assert.Equal(["finisher@harbour-lane.example"], mails[0].To.Mailboxes.Select(to => to.Address));
        Assert.Contains("17.8 °C", mails[0].TextBody, StringComparison.Ordinal);
        Assert.Contains("no gas detector", mails[0].TextBody, StringComparison.Ordinal);
        Assert.Contains("https://booth.lan:5443/alerts#acknowledge=", mails[0].TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("#acknowledge=", mails[1].TextBody, StringComparison.Ordinal);

        // RFC 3834, 5: automatic mail says so. The same id at every attempt, and both hang together.
        Assert.Equal("auto-generated", mails[0].Headers[HeaderId.AutoSubmitted]);
        Assert.StartsWith(message.Id, mails[0].MessageId, StringComparison.Ordinal);
        Assert.Equal(mails[0].References, mails[1].References);
    }

    [Fact]
    public async Task Server_OfAnotherAuthority_GetsNothing()
    {
        TestCertificates other = new(_folder, "other");
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(other, tlsFromTheStart: false);
        _options.Email.Port = server.Port;

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => SendAsync(_bench.Message()));

        Assert.Contains("TLS", failure.Message, StringComparison.Ordinal);
        Assert.Empty(server.Mails);
    }

    [Fact]
    public async Task Server_WithoutTls_GetsNeitherMailNorPassword()
    {
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(_certificates, tlsFromTheStart: false, offersTls: false);
        _options.Email.Port = server.Port;

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => SendAsync(_bench.Message()));

        Assert.False(failure.MayHaveArrived);
        Assert.Empty(server.Mails);
    }

    [Fact]
    public async Task Password_ThatIsWrong_IsNamedButNotShown()
    {
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(_certificates, tlsFromTheStart: false);
        (_options.Email.Port, _options.Email.PasswordFile, _options.Email.Password) = (server.Port, "", "not-the-one");

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => SendAsync(_bench.Message()));

        Assert.Contains("alerts:email:passwordFile", failure.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("not-the-one", failure.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SmtpReplyCode.MailboxUnavailable, true)]
    [InlineData(SmtpReplyCode.InsufficientStorage, false)]
    public async Task Refusal_OfAMessage_IsForGoodWhenTheServerSaysSo(SmtpReplyCode code, bool forGood)
    {
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(_certificates, tlsFromTheStart: false);
        server.Answer = new SmtpResponse(code, "no");
        _options.Email.Port = server.Port;

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => SendAsync(_bench.Message()));

        Assert.Equal(forGood, failure.IsFinal);
    }

    [Fact]
    public async Task Address_ThatIsRefused_KeepsTheMailFromNoOther()
    {
        await using SmtpReceiver server = await SmtpReceiver.StartAsync(_certificates, tlsFromTheStart: false);
        (server.Unknown, _options.Email.Port) = ("finisher@harbour-lane.example", server.Port);
        EmailChannel channel = _bench.Email();
        Episode episode = new("verdict", AlertKind.VerdictWorse, AlertLevel.Urgent, _bench.Time.GetUtcNow(), "Wait", "f", "a");
        _bench.Store.Enter(
            [new(EpisodeStep.Began, episode, "Wait", "f", "a"), new(EpisodeStep.Told, episode with { IsTold = true }, "Wait", "f", "a")],
            _bench.Time.GetUtcNow(),
            [.. channel.Targets().Select(target => (channel.Name, target))]);
        using AlertDispatcher dispatcher = _bench.Dispatcher(channel);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(["email alert refused", "email alert delivered"], _bench.Rows());
        Assert.Equal(["office@harbour-lane.example"], Assert.Single(server.Mails).To.Mailboxes.Select(to => to.Address));
        Assert.Contains("alerts:email:to:0", _bench.Outbox.RecordOf("email").LastError, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Address_ThatIsNoLongerSet_GetsNothing()
    {
        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(
            () => _bench.Email().SendAsync("gone@harbour-lane.example", _bench.Message(), CancellationToken.None));

        Assert.True(failure.IsFinal);
    }

    [Fact]
    public async Task Server_ThatIsNotThere_HasSurelyNotGotIt()
    {
        _options.Email.Port = Mosquitto.FreePort();

        Assert.False((await Assert.ThrowsAsync<AlertDeliveryException>(() => SendAsync(_bench.Message()))).MayHaveArrived);
    }

    private Task SendAsync(AlertMessage message) => _bench.Email().SendAsync("finisher@harbour-lane.example", message, CancellationToken.None);
}
