using System.Runtime.CompilerServices;
using MimeKit;

namespace BoothWatch.Service.Outputs.Alerts.Email;

/// <summary>Whether a text is a mail address; by itself, so that a shop without mail never loads the library of mail.</summary>
internal static class MailAddress
{
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static bool IsGood(string text) =>
        MailboxAddress.TryParse(text, out MailboxAddress? address) && address.Address.Contains('@', StringComparison.Ordinal);
}
