using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Coat;

/// <summary>Checks the <c>booth</c> section.</summary>
internal sealed class BoothOptionsValidator : IValidateOptions<BoothOptions>
{
    private const int LongestName = 60;

    public ValidateOptionsResult Validate(string? name, BoothOptions options)
    {
        var errors = new List<string>();
        CheckName("shop", options.Shop, "Harbour Lane", errors);
        CheckName("name", options.Name, "corner", errors);
        if (options.AltitudeM is not (>= -430 and <= 5000))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"{BoothOptions.Section}:altitudeM is {options.AltitudeM}; give a height from -430 to 5000 m, for example 120"));
        }

        if (options.TemperatureUnit is not ("C" or "F"))
        {
            errors.Add($"{BoothOptions.Section}:temperatureUnit is \"{options.TemperatureUnit}\"; give C or F, for example C");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static void CheckName(string key, string value, string example, List<string> errors)
    {
        if (string.IsNullOrWhiteSpace(value) || value.Length > LongestName || value.Any(char.IsControl))
        {
            errors.Add($"{BoothOptions.Section}:{key} is \"{value}\"; give a name of 1 to {LongestName} characters, for example \"{example}\"");
        }
    }
}
