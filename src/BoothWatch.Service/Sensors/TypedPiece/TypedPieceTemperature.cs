namespace BoothWatch.Service.Sensors.TypedPiece;

/// <summary>The piece temperature that a person measured by hand and typed in. Safe to use from several threads.</summary>
/// <param name="time">Clock that ages it.</param>
public sealed class TypedPieceTemperature(TimeProvider time)
{
    /// <summary>Lowest temperature that may be typed, °C.</summary>
    public const double LowestC = -40;

    /// <summary>Highest temperature that may be typed, °C.</summary>
    public const double HighestC = 80;

    private Entry? _last;

    /// <summary>Takes a value just measured.</summary>
    /// <param name="temperatureC">Surface temperature of the piece, °C, -40 to 80.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is no temperature a piece can have.</exception>
    public void Enter(double temperatureC)
    {
        if (temperatureC is not (>= LowestC and <= HighestC))
        {
            throw new ArgumentOutOfRangeException(nameof(temperatureC), temperatureC, $"A piece temperature is from {LowestC} to {HighestC} °C.");
        }

        Volatile.Write(ref _last, new Entry(temperatureC, time.GetTimestamp()));
    }

    /// <summary>The last value (°C) and the time since it was typed; null when none has been.</summary>
    public (double TemperatureC, TimeSpan Age)? Last =>
        Volatile.Read(ref _last) is { } last ? (last.TemperatureC, time.GetElapsedTime(last.Timestamp)) : null;

    private sealed record Entry(double TemperatureC, long Timestamp);
}
