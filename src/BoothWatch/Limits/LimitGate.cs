namespace BoothWatch.Limits;

/// <summary>What must be there before the limit may move in one direction.</summary>
/// <param name="Direction">The direction that it guards.</param>
/// <param name="What">What is counted, for people.</param>
/// <param name="Have">How much there is.</param>
/// <param name="Need">How much is needed.</param>
public sealed record LimitGate(LimitChange Direction, string What, double Have, double Need)
{
    /// <summary>True when there is enough.</summary>
    public bool IsOpen => Have >= Need;
}
