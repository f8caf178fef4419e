using System.Globalization;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.Options;
using MimeKit;

namespace BoothWatch.Service.Outputs.Alerts.Email;

/// <summary>Sends messages by SMTP submission (RFC 6409), over TLS unless the server is this machine. One connection and one mail a recipient, so that an address that is refused keeps the mail from no other.</summary>
internal sealed class EmailChannel(AlertLinks links, IOptions<AlertsOptions> options, TimeProvider time) : IAlertChannel
{
    private readonly EmailOptions _options = options.Value.Email;

    public string Name => "email";

    public string? OffBecause => _options.IsOn ? null : "no server is set: alerts:email:host";

    public IReadOnlyList<string> Targets() => _options.To;

    public async Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken)
    {
        int place = Array.IndexOf(_options.To, target);
        if (place < 0)
        {
            throw new AlertDeliveryException("the address is no longer in alerts:email:to") { IsFinal = true };
        }

        using MimeMessage mail = EmailText.Of(message, _options.From, target, links.Acknowledge(message), time.LocalTimeZone);
        using var client = new SmtpClient();
        if (_options.CaFile.Length > 0)
        {
            // An authority of a shop publishes no list of what it took back.
            client.CheckCertificateRevocation = false;
            client.ServerCertificateValidationCallback = IsTrusted;
        }

        bool handing = false;
        try
        {
            await client.ConnectAsync(_options.Host, _options.Port, Security(), cancellationToken);
            if (_options.User.Length > 0)
            {
                await client.AuthenticateAsync(_options.User, SecretFile.Read(_options.PasswordFile, _options.Password), cancellationToken);
            }

            handing = true;
            await client.SendAsync(mail, cancellationToken);
            handing = false;
            await client.DisconnectAsync(quit: true, cancellationToken);
        }
        catch (SmtpCommandException e)
        {
            bool forGood = (int)e.StatusCode is >= 500 and < 600 && handing;
            string code = ((int)e.StatusCode).ToString(CultureInfo.InvariantCulture);

            // By its place: the list of channels is no list of addresses.
            string what = e.ErrorCode == SmtpErrorCode.RecipientNotAccepted ? string.Create(CultureInfo.InvariantCulture, $" alerts:email:to:{place}") : "";
            throw new AlertDeliveryException($"the mail server refused{what}: {code} {e.Message}", e) { IsFinal = forGood };
        }
        catch (AuthenticationException e)
        {
            throw new AlertDeliveryException("the mail server refused the user or the password: check alerts:email:user and alerts:email:passwordFile", e);
        }
        catch (SslHandshakeException e)
        {
            throw new AlertDeliveryException($"TLS with the mail server failed: check alerts:email:security, host and caFile ({FirstLine(e.InnerException?.Message ?? e.Message)})", e);
        }
        catch (Exception e) when (e is not OperationCanceledException && (handing || e is IOException or System.Net.Sockets.SocketException or ProtocolException or NotSupportedException or UnauthorizedAccessException or TimeoutException))
        {
            throw new AlertDeliveryException($"no delivery to {_options.Host}: {FirstLine(e.Message)}", e) { MayHaveArrived = handing };
        }
    }

    private static string FirstLine(string text) => text.Split('\n')[0].TrimEnd();

    private SecureSocketOptions Security() => _options.Security switch
    {
        EmailOptions.Tls => SecureSocketOptions.SslOnConnect,
        EmailOptions.None => SecureSocketOptions.None,
        _ => SecureSocketOptions.StartTls,
    };

    private bool IsTrusted(object sender, X509Certificate? certificate, X509Chain? chain, SslPolicyErrors errors)
    {
        var authorities = new X509Certificate2Collection();
        authorities.ImportFromPemFile(_options.CaFile);
        return certificate is X509Certificate2 presented && AuthorityTrust.IsTrusted(presented, errors, authorities);
    }
}
