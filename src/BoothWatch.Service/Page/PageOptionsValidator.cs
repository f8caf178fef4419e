using System.Globalization;
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
            errors.Add($"page:url is {options.Url}; give http://ADDRESS:PORT with a numeric address or localhost, for example http://127.0.0.1:5080");
        }

        if (!(options.ChartHours >= ShortestChartHours && options.ChartHours <= LongestChartHours))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"page:chartHours is {options.ChartHours}; give hours from {ShortestChartHours} to {LongestChartHours}, for example 6"));
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
