using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>Gathers every error of the <c>demo</c> section.</summary>
public sealed class DemoOptionsValidator : IValidateOptions<DemoOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, DemoOptions options)
    {
        List<string> errors = [];
        if (options.DayLengthS is not (>= 10 and <= 86_400))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"demo:dayLengthS is {options.DayLengthS}; give seconds from 10 to 86400, for example 240"));
        }

        if (options.CupRetarderPct is not (>= 0 and <= 30))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"demo:cupRetarderPct is {options.CupRetarderPct}; give a percentage from 0 to 30, for example 5"));
        }

        CheckTime("demo:startAt", options.StartAt, "08:00", errors);
        CheckTime("demo:fault:from", options.Fault.From, "09:30", errors);
        CheckTime("demo:fault:until", options.Fault.Until, "10:30", errors);
        if (options.Fault.Sensor is { Length: > 0 } && SensorRole.All.All(role => role.Name != options.Fault.Sensor))
        {
            errors.Add($"demo:fault:sensor is {options.Fault.Sensor}; give one of {string.Join(", ", SensorRole.All.Select(role => role.Name))}, or nothing");
        }

        if (!Enum.TryParse(options.Fault.Kind, ignoreCase: true, out BusFault kind) || !Enum.IsDefined(kind))
        {
            IEnumerable<string> kinds = Enum.GetNames<BusFault>().Select(JsonName);
            errors.Add($"demo:fault:kind is {options.Fault.Kind}; give one of {string.Join(", ", kinds)}");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static string JsonName(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static void CheckTime(string key, string value, string example, List<string> errors)
    {
        if (!TimeSpan.TryParseExact(value, @"hh\:mm", CultureInfo.InvariantCulture, out TimeSpan time)
            || time < ShopClock.Opening
            || time >= ShopClock.Closing)
        {
            errors.Add($"{key} is {value}; give a shop time from 08:00 to 16:59, for example {example}");
        }
    }
}
