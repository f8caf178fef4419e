using System.Globalization;
using MimeKit;

namespace BoothWatch.Service.Outputs.Alerts.Email;

/// <summary>Writes a message as a mail in plain text.</summary>
internal static class EmailText
{
    public static MimeMessage Of(AlertMessage message, string from, string to, string? acknowledge, TimeZoneInfo zone)
    {
        var mail = new MimeMessage
        {
            Subject = $"{Word(message)}{message.Title} ({message.Shop}, {message.Booth})",
            Date = message.Time,

            // The same at every attempt, so that a reader that gets it twice shows it once; the all-clear hangs below its alert.
            MessageId = $"{message.Id}@boothwatch.invalid",
            Body = new TextPart("plain") { Text = Body(message, acknowledge, zone) },
        };
        mail.From.Add(MailboxAddress.Parse(from));
        mail.To.Add(MailboxAddress.Parse(to));
        mail.References.Add($"{message.Alert}@boothwatch.invalid");

        // RFC 3834: no out-of-office answers, please.
        mail.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        if (message.Level == BoothWatch.Alerts.AlertLevel.Urgent)
        {
            mail.Importance = MessageImportance.High;
        }

        return mail;
    }

    private static string Word(AlertMessage message) => message.Type switch
    {
        AlertMessageType.Clear => "All clear: ",
        AlertMessageType.Test => "Test: ",
        _ => "",
    };

    private static string Body(AlertMessage message, string? acknowledge, TimeZoneInfo zone)
    {
        string Local(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, zone).ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture);
        List<string> lines = [message.Finding + "."];
        if (message.Action.Length > 0)
        {
            lines.Add($"What to do: {message.Action}.");
        }

        lines.Add("");
        lines.Add($"Since {Local(message.Began)}, written {Local(message.Time)}. Look at the light before you act: this mail may be late.");
        if (acknowledge is not null)
        {
            lines.Add($"Acknowledge: {acknowledge}");
        }

        lines.Add("");
        lines.Add("Advice about the finish only. BoothWatch is no gas detector: no message, and no silence, means that the air is safe to breathe or cannot ignite.");
        return string.Join("\r\n", lines) + "\r\n";
    }
}
