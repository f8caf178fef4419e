namespace BoothWatch.Service.Outputs.Influx;

/// <summary>Writes points to a time-series database. The seam for tests that let the server refuse.</summary>
public interface IPointWriter
{
    /// <summary>Writes lines of line protocol with timestamps in milliseconds. Failures are answers, not exceptions.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    Task<WriteAnswer> WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellationToken);
}
