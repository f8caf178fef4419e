using BoothWatch.Jobs;

namespace BoothWatch.Service.Limits;

/// <summary>A coat that counts, as JSON.</summary>
/// <param name="Id">Number of the coat.</param>
/// <param name="JobId">Its job.</param>
/// <param name="Start">When it began, UTC.</param>
/// <param name="MarginC">Its blush margin, °C.</param>
/// <param name="MarginUncertaintyC">Standard uncertainty (k = 1) of it, °C.</param>
/// <param name="Outcome">How it came out.</param>
/// <param name="IsClose">True when it had less margin than the settings want.</param>
public sealed record LimitAnswerCoat(
    long Id, long JobId, DateTimeOffset Start, double MarginC, double MarginUncertaintyC, CoatOutcome Outcome, bool IsClose);
