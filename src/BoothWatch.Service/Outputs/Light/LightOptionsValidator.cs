using System.Globalization;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>Checks the <c>light</c> section as a whole and reports every error at once.</summary>
public sealed class LightOptionsValidator : IValidateOptions<LightOptions>
{
    private const double LeastSilenceS = 2;
    private const double MostSilenceS = 6;

    /// <inheritdoc />
    public ValidateOptionsResult Validate(string? name, LightOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        int[] examples = [17, 27, 22, 24];
        (string Key, int? Pin, int Example)[] pins = [.. options.Pins().Zip(examples, (pin, example) => (pin.Key, pin.Pin, example))];
        List<string> errors =
        [
            .. pins
                .Where(pin => pin.Pin is < 0 or > GpioSource.HighestPin)
                .Select(pin => $"{pin.Key} is {pin.Pin}; give a GPIO number from 0 to {GpioSource.HighestPin}, for example {pin.Example}"),
            .. pins
                .Where(pin => pin.Pin is not null)
                .GroupBy(pin => pin.Pin)
                .Where(group => group.Count() > 1)
                .Select(group => $"{string.Join(" and ", group.Select(pin => pin.Key))} are both {group.Key}; give each its own GPIO number"),
        ];
        if (SignalSourceWord.Parse(options.Source) is null)
        {
            errors.Add($"light:source is {options.Source}; give emulated or real");
        }

        if (!(options.WaitIfSilentForS >= LeastSilenceS && options.WaitIfSilentForS <= MostSilenceS))
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"light:waitIfSilentForS is {options.WaitIfSilentForS}; give a time from {LeastSilenceS} to {MostSilenceS} s, for example 6"));
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
