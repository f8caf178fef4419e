using System.Globalization;
using BoothWatch.Service.Access;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>Checks the <c>page</c> section as a whole and names every mistake with its fix.</summary>
public sealed class PageOptionsValidator : IValidateOptions<PageOptions>
{
    /// <summary>Shortest chart, h.</summary>
    public const double ShortestChartHours = 0.1;

    /// <summary>Longest chart, h.</summary>
    public const double LongestChartHours = 72;

    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, PageOptions options)
    {
        List<string> errors = [];

        if (PageAddress.Parse(options.Url) is null)
        {
            errors.Add($"page:url is {options.Url}; give http://ADDRESS:PORT or https://ADDRESS:PORT with a numeric address or localhost, for example http://127.0.0.1:5080");
        }

        bool isTls = options.Url.StartsWith("https:", StringComparison.OrdinalIgnoreCase);
        if (isTls && (options.CertificateFile.Length == 0 || options.KeyFile.Length == 0))
        {
            errors.Add($"page:url is {options.Url}, but page:{(options.CertificateFile.Length == 0 ? "certificateFile" : "keyFile")} is empty; give the full paths of the certificate and of its key, or write http:");
        }
        else if (!isTls && (options.CertificateFile.Length > 0 || options.KeyFile.Length > 0))
        {
            errors.Add($"page:url is {options.Url}, but page:certificateFile or page:keyFile is set; write https:, or leave both empty");
        }
        else if (isTls && CertificateFiles.Read(options.CertificateFile, options.KeyFile).Problem is { } problem)
        {
            errors.Add(problem);
        }

        if (!(options.ChartHours >= ShortestChartHours && options.ChartHours <= LongestChartHours))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"page:chartHours is {options.ChartHours}; give hours from {ShortestChartHours} to {LongestChartHours}, for example 6"));
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
