namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>
/// A test with a real mosquitto. Skips with a clear word where it is missing; with CI=true it runs all the same, and fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class MosquittoFactAttribute : FactAttribute
{
    public MosquittoFactAttribute() => Skip = Mosquitto.SkipReason;
}
