namespace BoothWatch.Service.Page;

/// <summary>How the outputs fare. It says nothing of the verdict: a dead database does not make the air worse.</summary>
/// <param name="Time">Time of the answer, UTC (RFC 3339).</param>
/// <param name="Working">True when every output works.</param>
/// <param name="AssessmentAgeS">Age of the latest assessment, s; above 5 the verdict is wait.</param>
/// <param name="Outputs">Each output, the light first.</param>
public sealed record HealthAnswer(DateTime Time, bool Working, double AssessmentAgeS, IReadOnlyList<OutputStatus> Outputs);
