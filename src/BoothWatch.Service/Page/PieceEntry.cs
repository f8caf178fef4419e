namespace BoothWatch.Service.Page;

/// <summary>Where a person types in the temperature of the piece. The composition root binds it to the sensor, so that the page does not know the sensor.</summary>
/// <param name="LowestC">Lowest temperature that may be typed, °C.</param>
/// <param name="HighestC">Highest temperature that may be typed, °C.</param>
/// <param name="Hold">How long a value holds.</param>
/// <param name="Enter">Takes a value just measured, °C, within the range.</param>
/// <param name="Age">Time since the last value was typed; null when none has been. Called on every answer, so it must be cheap.</param>
public sealed record PieceEntry(double LowestC, double HighestC, TimeSpan Hold, Action<double> Enter, Func<TimeSpan?> Age)
{
    /// <summary>A value for examples, °C.</summary>
    public const double ExampleC = 18.5;

    /// <summary>How old the value is and how long it still holds, for people.</summary>
    public string Words => Age() switch
    {
        null => "not typed in yet",
        { } age when age >= Hold => $"typed {Span(age)} ago, expired: measure again",
        { } age => $"typed {Span(age)} ago, expires in {Span(Hold - age)}",
    };

    private static string Span(TimeSpan span) => span switch
    {
        { TotalMinutes: < 1 } => $"{(int)span.TotalSeconds}\u00a0s",
        { TotalHours: < 2 } => $"{(int)span.TotalMinutes}\u00a0min",
        _ => $"{(int)span.TotalHours}\u00a0h",
    };
}
