using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>One quantity as another sensor sends it: the last message, and whether it may still be believed.</summary>
/// <param name="quantity">What it measures.</param>
/// <param name="options">Where it is in the messages.</param>
/// <param name="convert">From the unit sent to that of the quantity.</param>
/// <param name="air">Age limits.</param>
/// <param name="time">Clock that ages messages.</param>
/// <remarks>
/// A message that the broker had kept is of unknown age: it counts only when it carries its own time. A message with a time is
/// as old as that time says; one without is as old as its arrival.
/// </remarks>
internal sealed class MqttValue(
    Quantity quantity, MqttValueOptions options, Func<double, double> convert, MqttAirOptions air, TimeProvider time)
{
    private const int FewestEqual = 20;
    private static readonly TimeSpan AheadAllowed = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private (double Value, long At, TimeSpan AgeThen)? _last;
    private DateTimeOffset _lastSent = DateTimeOffset.MinValue;
    private string _fault = "no message has come yet: check mqtt:use, the broker and that sensor";
    private (double Value, long Since, int Times) _still = (double.NaN, 0, 0);

    /// <summary>Takes a message.</summary>
    public void Take(ReadOnlyMemory<byte> payload, bool isRetained)
    {
        MqttMessage message = MqttMessage.Read(payload, options);
        lock (_lock)
        {
            if (isRetained && message.Sent is null)
            {
                _fault = "only a message kept by the broker has come, and it carries no time: its age is not known, so the next one is waited for";
                return;
            }

            if (Judge(message) is { } fault)
            {
                (_last, _fault) = (null, fault);
            }
            else if (message.Sent is null || message.Sent >= _lastSent)
            {
                Keep(convert(message.Value), message.Sent);
            }
        }
    }

    /// <summary>The value with its age, or why there is none.</summary>
    public (Sample? Sample, string? Cause) Read(double standardUncertainty)
    {
        lock (_lock)
        {
            if (_last is not { } last)
            {
                return (null, $"{options.Topic}: {_fault}");
            }

            TimeSpan age = last.AgeThen + time.GetElapsedTime(last.At);
            if (age > TimeSpan.FromSeconds(air.MaxAgeS))
            {
                return (null, string.Create(CultureInfo.InvariantCulture, $"{options.Topic}: the last message is {age.TotalSeconds:0} s old, and it counts for {air.MaxAgeS:0} s"));
            }

            TimeSpan still = time.GetElapsedTime(_still.Since);
            return _still.Times >= FewestEqual && still > TimeSpan.FromSeconds(air.FrozenAfterS)
                ? (null, string.Create(CultureInfo.InvariantCulture, $"{options.Topic}: it has stood at {last.Value:0.##} for {still.TotalMinutes:0} min: check that sensor"))
                : (new Sample(quantity, last.Value, standardUncertainty) { Age = age }, null);
        }
    }

    private string? Judge(MqttMessage message)
    {
        if (message.Fault is not null)
        {
            return $"the message {message.Fault}";
        }

        TimeSpan ahead = (message.Sent ?? DateTimeOffset.MinValue) - time.GetUtcNow();
        if (ahead > AheadAllowed)
        {
            return string.Create(CultureInfo.InvariantCulture, $"the time of the message is {ahead.TotalSeconds:0} s ahead: check the clocks of that sensor and of this machine");
        }

        PlausibleRange range = PlausibleRange.Of(quantity);
        double value = convert(message.Value);
        return range.Contains(value)
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"the message says {value:0.##} {QuantityUnit.Of(quantity)}, outside {range.Lowest} to {range.Highest}: check its unit and that sensor");
    }

    private void Keep(double value, DateTimeOffset? sent)
    {
        long now = time.GetTimestamp();
        TimeSpan age = sent is { } at && time.GetUtcNow() > at ? time.GetUtcNow() - at : TimeSpan.Zero;
        _last = (value, now, age);
        _lastSent = sent ?? _lastSent;
        _still = value.Equals(_still.Value) ? (value, _still.Since, _still.Times + 1) : (value, now, 1);
    }
}
