namespace BoothWatch.Service.Outputs.Influx;

/// <summary>What became of a write.</summary>
/// <param name="Kind">What it means for the points.</param>
/// <param name="Text">In words, with the fix where there is one; empty when accepted.</param>
/// <param name="RetryAfter">How long the server asks to be left alone; null when it does not say.</param>
public sealed record WriteAnswer(WriteAnswerKind Kind, string Text, TimeSpan? RetryAfter = null)
{
    /// <summary>All points are stored.</summary>
    public static WriteAnswer Accepted { get; } = new(WriteAnswerKind.Accepted, "");
}
