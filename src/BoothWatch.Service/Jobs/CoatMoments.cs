using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>Finds the air in which a coat was begun, and asks the film model about this coat's own mix in it.</summary>
/// <param name="physics">The coat for the model.</param>
/// <param name="feed">The present assessment.</param>
/// <param name="journal">The air of the past.</param>
/// <param name="policy">The limits that hold now.</param>
/// <param name="booth">Height of the booth.</param>
public sealed class CoatMoments(CoatPhysics physics, PageFeed feed, CoatAirQuery journal, PolicyInForce policy, IOptions<BoothOptions> booth)
{
    /// <summary>A coat begun at most so long ago takes the present assessment; an older one the journal.</summary>
    public static readonly TimeSpan Present = TimeSpan.FromSeconds(90);

    /// <summary>Standard uncertainties of air and piece taken for readings of the past, °C, % and °C: those that the SHT4x and the
    /// MLX90614 are given under Sensors. Assumed, for the journal does not keep them.</summary>
    internal static readonly (double TemperatureC, double HumidityPct, double PieceC) PastUncertainty = (0.23, 2.1, 0.6);

    private readonly BlushModel _model = new();

    /// <summary>The latest assessment; null while there is none that is fresh.</summary>
    public Assessment? Fresh => feed.Current is { IsStale: false } state ? state.Assessment : null;

    /// <summary>The moment of a coat; null when the air was not known then.</summary>
    /// <param name="details">The coat.</param>
    /// <param name="now">The present time, UTC.</param>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public CoatMoment? Of(CoatDetails details, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(details);
        return (now - details.Start).Duration() <= Present
            ? Fresh is { } assessment ? Of(details, assessment) : null
            : OfPast(details);
    }

    /// <summary>The moment of a coat begun in the air of an assessment; null when the assessment knows no air.</summary>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public CoatMoment? Of(CoatDetails details, Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        if (assessment.Air is not { } air)
        {
            return null;
        }

        double Uncertainty(Quantity quantity) => assessment.Snapshot[quantity].StandardUncertainty;
        return Ask(
            details,
            MoistAir.FromRelativeHumidity(air.TemperatureC, air.RelativeHumidityPct, air.PressurePa),
            air.PieceTemperatureC,
            new AirUncertainty(Uncertainty(Quantity.BoothTemperature), Uncertainty(Quantity.BoothHumidity)),
            Uncertainty(Quantity.PieceTemperature),
            assessment.Time,
            assessment.Verdict);
    }

    private CoatMoment? OfPast(CoatDetails details)
    {
        CoatAir air = journal.Of(details.Start.AddSeconds(-30), details.Start.AddSeconds(30));
        if (air is not { TemperatureC: { } temperature, RelativeHumidityPct: { } humidity, WorstVerdict: { } verdict })
        {
            return null;
        }

        double pressurePa = StationPressure.AtAltitude(booth.Value.AltitudeM);
        return Ask(
            details,
            MoistAir.FromRelativeHumidity(temperature.Mean, Math.Clamp(humidity.Mean, 0, 100), pressurePa),
            air.PieceTemperatureC?.Mean,
            new AirUncertainty(PastUncertainty.TemperatureC, PastUncertainty.HumidityPct),
            PastUncertainty.PieceC,
            details.Start,
            verdict);
    }

    private CoatMoment Ask(
        CoatDetails details, MoistAir air, double? pieceC, AirUncertainty uncertainty, double pieceUncertaintyC, DateTimeOffset time, Verdict verdict)
    {
        CoatMoment moment = new()
        {
            Time = time,
            AirTemperatureC = air.TemperatureC,
            RelativeHumidityPct = air.RelativeHumidityPct,
            PressurePa = air.PressurePa,
            DewPointC = air.DewPointC,
            PieceTemperatureC = pieceC,
            Verdict = verdict,
        };
        if (pieceC is not { } piece)
        {
            return moment;
        }

        VerdictPolicy limits = policy.Current;
        try
        {
            BlushAnswer answer = _model.Assess(
                physics.PlanOf(details), air, piece, uncertainty, pieceUncertaintyC, limits.RequiredMarginC, limits.CoverageFactor);
            return moment with
            {
                BlushMarginC = answer.BlushMarginC,
                MarginUncertaintyC = answer.MarginUncertaintyC,
                RecommendedRetarderPct = answer.RecommendedRetarderPct,
            };
        }
        catch (DryingFailedException)
        {
            // No answer is an answer: the coat keeps its air without a margin.
            return moment;
        }
    }
}
