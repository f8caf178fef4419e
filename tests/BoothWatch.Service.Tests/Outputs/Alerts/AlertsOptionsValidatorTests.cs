using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Alerts;
using Microsoft.Extensions.Configuration;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

public sealed class AlertsOptionsValidatorTests
{
    [Fact]
    public void Defaults_AreGood() => Assert.Empty(Errors(new AlertsOptions()));

    [Fact]
    public void Options_WithEveryErrorAtOnce_NameKeyValueRangeAndFix()
    {
        AlertsOptions options = new()
        {
            PageUrl = "booth.lan",
            SessionMinutes = 0,
            MarginMinutesLeft = 500,
            MarginWindowMinutes = 1,
            SensorsLostAfterS = 1,
            ClearAfterS = double.NaN,
            QuietHours = { From = "25:00", To = "", BreakThrough = "verdict-worse, fire" },
            WebPush = { Contact = "office" },
            Email = { Host = "mail.example", Port = 0, Security = "ssl", From = "booth", PasswordFile = "/nowhere/at/all", CaFile = "/nowhere/ca" },
            Webhook = { Url = "ftp://shop.example", Secret = "short" },
        };

        string[] errors = Errors(options);

        foreach (string expected in (string[])
        [
            "alerts:pageUrl is \"booth.lan\"; give the address",
            "alerts:sessionMinutes is 0; give minutes from 1 to 240, for example 30",
            "alerts:marginMinutesLeft is 500; give minutes from 1 to 120, for example 15",
            "alerts:marginWindowMinutes is 1; give minutes from 2 to 60, for example 10",
            "alerts:sensorsLostAfterS is 1; give seconds from 10 to 3600, for example 60",
            "alerts:clearAfterS is NaN; give seconds from 10 to 3600, for example 120",
            "alerts:quietHours:from is \"25:00\"; give a time from 00:00 to 23:59, for example 22:00",
            "alerts:quietHours:to is empty and the other end is not",
            "alerts:quietHours:breakThrough has \"fire\"",
            "alerts:webPush:contact is \"office\"; give mailto:",
            "alerts:email:port is 0; give a port from 1 to 65535, for example 587",
            "alerts:email:security is \"ssl\"; give startTls, tls or none",
            "alerts:email:passwordFile is \"/nowhere/at/all\", which this user cannot read",
            "alerts:email:caFile is \"/nowhere/ca\"",
            "alerts:email:from is \"booth\"; give an e-mail address",
            "alerts:email:to has 0 addresses; give 1 to 20",
            "alerts:webhook:url, which is not shown here",
            "alerts:webhook:secret, which is not shown here",
        ])
        {
            Assert.Contains(errors, error => error.StartsWith(expected, StringComparison.Ordinal));
        }

        Assert.Equal(18, errors.Length);
    }

    [Fact]
    public void MailInTheClear_IsOnlyForAServerOnThisMachine()
    {
        AlertsOptions options = new() { Email = { Host = "mail.example", Security = "none", From = "booth@shop.example", To = ["a@shop.example"] } };
        Assert.Contains("in the clear", Assert.Single(Errors(options)), StringComparison.Ordinal);
        options.Email.Host = "127.0.0.1";
        Assert.Empty(Errors(options));
    }

    [Fact]
    public void SecretFile_ThatOthersMayRead_IsRefusedAndItsSecretNotShown()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, "MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw\n");
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
            AlertsOptions options = new() { Webhook = { Url = "https://shop.example/booth", SecretFile = file } };
            string error = Assert.Single(Errors(options));
            Assert.Contains("chmod 640", error, StringComparison.Ordinal);
            Assert.DoesNotContain("MfKQ", error, StringComparison.Ordinal);

            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
            Assert.Empty(Errors(options));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Section_InTheConfiguration_IsKnownToItsCheckKeyByKey()
    {
        IConfigurationRoot configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["alerts:email:prot"] = "465",
            ["alerts:clearAfterS"] = "soon",
            ["alerts:quietHours:breakThrough"] = "fire",
        }).Build();

        IReadOnlyList<string> errors = ConfigurationCheck.Errors(new ConfigurationFile(null, configuration, []), AlertsOptions.Section);

        Assert.Contains(errors, error => error.StartsWith("alerts:email:prot is not a setting", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("alerts:clearAfterS is \"soon\"", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("alerts:quietHours:breakThrough has \"fire\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("alerts:webhook:url")]
    [InlineData("alerts:webhook:secret")]
    [InlineData("alerts:email:password")]
    public void Secret_OfAChannel_IsNotShownInTheLog(string key) => Assert.Equal("(set, not shown)", EffectiveConfiguration.Show(key, "https://shop.example/T0K3N"));

    private static string[] Errors(AlertsOptions options) => [.. new AlertsOptionsValidator().Validate(null, options).Failures ?? []];
}
