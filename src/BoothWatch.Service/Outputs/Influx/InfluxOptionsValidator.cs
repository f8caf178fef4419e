using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Influx;

/// <summary>Gathers every error of the <c>influx</c> section, each with the key, the value, the range and an example. Never shows the token.</summary>
public sealed class InfluxOptionsValidator : IValidateOptions<InfluxOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, InfluxOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var errors = new List<string>();
        if (options.IsOn)
        {
            CheckUrl(errors, options.Url);
            Named(errors, "org", options.Org);
            Named(errors, "bucket", options.Bucket);
            CheckToken(errors, options);
        }

        Range(errors, "batchRows", options.BatchRows, 1, 50_000, "rows", "5000");
        Range(errors, "everyS", options.EveryS, 0.1, 3600, "seconds", "10");
        Range(errors, "timeoutS", options.TimeoutS, 0.1, 300, "seconds", "15");
        Range(errors, "longestRetryS", options.LongestRetryS, 0.1, 3600, "seconds", "60");
        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static void CheckUrl(List<string> errors, string text)
    {
        const string Fix = "give http://HOST:PORT or https://HOST:PORT, for example http://127.0.0.1:8086, or leave it empty to ship nothing";
        if (!Uri.TryCreate(text, UriKind.Absolute, out Uri? url) || url.Scheme is not ("http" or "https"))
        {
            errors.Add($"influx:url is \"{text}\"; {Fix}");
        }
        else if (url.UserInfo.Length > 0)
        {
            errors.Add($"influx:url holds a name or password, which is not shown here; {Fix}, and the token in influx:tokenFile");
        }
        else if (url.Query.Length > 0 || url.Fragment.Length > 0)
        {
            errors.Add($"influx:url goes on after the address; {Fix}, and everything else in its own setting");
        }
    }

    private static void CheckToken(List<string> errors, InfluxOptions options)
    {
        if (options.TokenFile.Length > 0 && options.Token.Length > 0)
        {
            errors.Add("influx:token and influx:tokenFile are both set; give one of them, for example influx:tokenFile");
        }
        else if (options.TokenFile.Length > 0 && !File.Exists(options.TokenFile))
        {
            errors.Add($"influx:tokenFile is \"{options.TokenFile}\", which is no file that this user can see; give a file with the token in its first line, for example /etc/boothwatch/influx-token");
        }

        if (options.Token.Any(char.IsControl))
        {
            errors.Add("influx:token holds a line end or control character; give the token as the server shows it");
        }
    }

    private static void Named(List<string> errors, string key, string value)
    {
        if (string.IsNullOrWhiteSpace(value))
        {
            errors.Add($"influx:{key} is empty; give the name that the server knows, for example boothwatch");
        }
    }

    private static void Range(List<string> errors, string key, double value, double least, double most, string unit, string example)
    {
        if (!(value >= least && value <= most))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"influx:{key} is {value}; give {unit} from {least} to {most}, for example {example}"));
        }
    }
}
