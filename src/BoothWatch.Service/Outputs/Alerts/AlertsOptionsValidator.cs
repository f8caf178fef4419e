using System.Globalization;
using BoothWatch.Alerts;
using BoothWatch.Service.Outputs.Alerts.Email;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Gathers every error of the <c>alerts</c> section, each with the key, the value, the range and an example. Never shows a secret.</summary>
public sealed class AlertsOptionsValidator : IValidateOptions<AlertsOptions>
{
    private const int MostAddresses = 20;

    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, AlertsOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        List<string> errors = [];
        Range(errors, "sessionMinutes", options.SessionMinutes, 1, 240, "minutes", "30");
        Range(errors, "marginMinutesLeft", options.MarginMinutesLeft, 1, 120, "minutes", "15");
        Range(errors, "marginWindowMinutes", options.MarginWindowMinutes, 2, 60, "minutes", "10");
        Range(errors, "sensorsLostAfterS", options.SensorsLostAfterS, 10, 3600, "seconds", "60");
        Range(errors, "clearAfterS", options.ClearAfterS, 10, 3600, "seconds", "120");
        if (options.PageUrl.Length > 0 && !IsPlainWebAddress(options.PageUrl))
        {
            errors.Add($"alerts:pageUrl is \"{options.PageUrl}\"; give the address of the page as phones reach it, https://HOST:PORT, for example https://booth.lan:5443, or leave it empty");
        }

        CheckQuiet(errors, options.QuietHours);
        CheckWebPush(errors, options.WebPush.Contact);
        CheckEmail(errors, options.Email);
        CheckWebhook(errors, options.Webhook);
        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static void CheckQuiet(List<string> errors, QuietHoursOptions quiet)
    {
        Time(errors, "from", quiet.From, "22:00");
        Time(errors, "to", quiet.To, "06:30");
        if (quiet.From.Length > 0 != quiet.To.Length > 0)
        {
            string missing = quiet.From.Length > 0 ? "to" : "from";
            errors.Add($"alerts:quietHours:{missing} is empty and the other end is not; give both, for example 22:00 and 06:30, or none");
        }

        foreach (string word in AlertLimitsReader.Words(quiet.BreakThrough).Where(word => !AlertWords.Kinds.ContainsKey(word)))
        {
            errors.Add($"alerts:quietHours:breakThrough has \"{word}\", which is no kind of alert; give some of {string.Join(", ", AlertWords.Kinds.Keys)}, with commas between");
        }
    }

    private static void Time(List<string> errors, string key, string text, string example)
    {
        if (text.Length > 0 && AlertLimitsReader.Time(text) is null)
        {
            errors.Add($"alerts:quietHours:{key} is \"{text}\"; give a time from 00:00 to 23:59, for example {example}, or leave it empty");
        }
    }

    private static void CheckWebPush(List<string> errors, string contact)
    {
        bool good = contact.Length == 0
            || (contact.StartsWith("mailto:", StringComparison.Ordinal) && MailAddress.IsGood(contact["mailto:".Length..]))
            || (Uri.TryCreate(contact, UriKind.Absolute, out Uri? url) && url.Scheme == Uri.UriSchemeHttps);
        if (!good)
        {
            errors.Add($"alerts:webPush:contact is \"{contact}\"; give mailto:NAME@HOST or an https address, for example mailto:office@harbour-lane.example, or leave it empty");
        }
    }

    private static void CheckEmail(List<string> errors, EmailOptions email)
    {
        if (email.Security is not (EmailOptions.StartTls or EmailOptions.Tls or EmailOptions.None))
        {
            errors.Add($"alerts:email:security is \"{email.Security}\"; give startTls, tls or none");
        }

        Range(errors, "email:port", email.Port, 1, 65_535, "a port", "587");
        SecretFile.Check(errors, "alerts:email:passwordFile", email.PasswordFile, "/etc/boothwatch/mail-password");
        if (email is { PasswordFile.Length: > 0, Password.Length: > 0 })
        {
            errors.Add("alerts:email:password and alerts:email:passwordFile are both set; give one of them, for example alerts:email:passwordFile");
        }

        if (email.CaFile.Length > 0 && !File.Exists(email.CaFile))
        {
            errors.Add($"alerts:email:caFile is \"{email.CaFile}\", and there is no such file; give a file that this user may read, or leave it empty");
        }

        if (!email.IsOn)
        {
            return;
        }

        if (email.Security == EmailOptions.None && email.Host is not ("localhost" or "127.0.0.1" or "::1"))
        {
            errors.Add($"alerts:email:security is none, and alerts:email:host is \"{email.Host}\"; mail and password would cross the network in the clear: give startTls or tls");
        }

        Address(errors, "from", email.From);
        if (email.To.Length is < 1 or > MostAddresses)
        {
            errors.Add($"alerts:email:to has {email.To.Length} addresses; give 1 to {MostAddresses}, for example [\"finisher@harbour-lane.example\"]");
        }

        for (int i = 0; i < email.To.Length; i++)
        {
            Address(errors, string.Create(CultureInfo.InvariantCulture, $"to:{i}"), email.To[i]);
        }
    }

    private static void Address(List<string> errors, string key, string text)
    {
        if (!MailAddress.IsGood(text))
        {
            errors.Add($"alerts:email:{key} is \"{text}\"; give an e-mail address, for example booth@harbour-lane.example");
        }
    }

    private static void CheckWebhook(List<string> errors, WebhookOptions webhook)
    {
        bool readable = SecretFile.Check(errors, "alerts:webhook:secretFile", webhook.SecretFile, "/etc/boothwatch/webhook-secret");
        if (webhook is { SecretFile.Length: > 0, Secret.Length: > 0 })
        {
            errors.Add("alerts:webhook:secret and alerts:webhook:secretFile are both set; give one of them, for example alerts:webhook:secretFile");
        }

        if (!webhook.IsOn)
        {
            return;
        }

        if (!Uri.TryCreate(webhook.Url, UriKind.Absolute, out Uri? url) || url.Scheme is not ("http" or "https") || url.UserInfo.Length > 0)
        {
            errors.Add("alerts:webhook:url, which is not shown here, is no web address or holds a name or password; give https://HOST/PATH, for example https://shop.example/booth");
        }

        if (readable && WebhookSignature.KeyOf(SecretFile.Read(webhook.SecretFile, webhook.Secret)) is null)
        {
            errors.Add("alerts:webhook:secret, which is not shown here, is no base64 of 24 to 64 bytes; make one with: openssl rand -base64 32");
        }
    }

    private static bool IsPlainWebAddress(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out Uri? url) && url.Scheme is "http" or "https" && url is { UserInfo: "", Query: "", Fragment: "" };

    private static void Range(List<string> errors, string key, double value, double least, double most, string unit, string example)
    {
        if (!(value >= least && value <= most))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"alerts:{key} is {value}; give {unit} from {least} to {most}, for example {example}"));
        }
    }
}
