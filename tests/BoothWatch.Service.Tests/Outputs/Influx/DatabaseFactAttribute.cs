namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>
/// A test against a real time-series database. Skips with a clear word where it is missing; with CI=true it runs all the
/// same, and fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class DatabaseFactAttribute : FactAttribute
{
    public DatabaseFactAttribute() => Skip = VictoriaMetrics.SkipReason;
}
