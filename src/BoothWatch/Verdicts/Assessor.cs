using System.Collections.Immutable;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Verdicts.Rules;
using BoothWatch.Warming;

namespace BoothWatch.Verdicts;

/// <summary>
/// From a snapshot to an assessment: the air from the readings, the film from the air and the coat, the reasons from the rules.
/// What is not known stays null and ends in wait. It keeps no state; <see cref="VerdictDwell"/> comes after it.
/// </summary>
/// <param name="policy">Gives the shop's limits that hold now; asked once an assessment, so it must be quick.</param>
/// <param name="askFilm">The film model, in use <see cref="BlushModel.Assess"/>.</param>
/// <param name="altitudeM">Altitude of the booth above sea level, m, -500 to 5000: gives the pressure where no barometer does.</param>
public sealed class Assessor(Func<VerdictPolicy> policy, AskFilm askFilm, double altitudeM)
{
    private readonly double _altitudePressurePa = StationPressure.AtAltitude(altitudeM);

    /// <summary>An assessor whose limits never change.</summary>
    public Assessor(VerdictPolicy policy, AskFilm askFilm, double altitudeM)
        : this(() => policy, askFilm, altitudeM)
    {
    }

    /// <summary>The assessment of this moment, before the dwell.</summary>
    /// <param name="snapshot">What was measured.</param>
    /// <param name="plan">The coat about to be sprayed; null when none is chosen.</param>
    /// <param name="trail">What the last minutes measured of the piece; null where nobody measures, so that only the model says when it is warm.</param>
    public Assessment Assess(BoothSnapshot snapshot, CoatPlan? plan, WarmingTrail? trail = null)
    {
        Evidence readings = new() { Snapshot = snapshot, Policy = policy(), Air = null, Film = null };
        (MoistAir Air, AirUncertainty Uncertainty)? air = AirOf(readings);
        AirFindings? findings = air is { } known ? Findings(known.Air, known.Uncertainty, readings) : null;
        (FilmFindings? film, string? noFilmCause) = FilmOf(plan, air, readings);
        Evidence evidence = readings with { Air = findings, Film = film, Warming = WarmingEstimate.Of(air?.Air, readings, plan, trail), NoFilmCause = noFilmCause };
        ImmutableArray<Reason> reasons = RuleBook.Decide(evidence);
        return new Assessment
        {
            Time = snapshot.Time,
            Snapshot = snapshot,
            Air = findings,
            Film = film,
            Warming = evidence.Warming,
            Verdict = reasons[0].Limit,
            Reasons = reasons,
        };
    }

    private (MoistAir Air, AirUncertainty Uncertainty)? AirOf(Evidence readings)
    {
        if (readings.Trusted(Quantity.BoothTemperature) is not double temperatureC
            || readings.Trusted(Quantity.BoothHumidity) is not double humidityPct)
        {
            return null;
        }

        double? measuredPa = readings.Trusted(Quantity.StationPressure);
        MoistAir air = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, measuredPa ?? _altitudePressurePa);
        return (air, new AirUncertainty(
            readings[Quantity.BoothTemperature].StandardUncertainty,
            readings[Quantity.BoothHumidity].StandardUncertainty));
    }

    private static AirFindings Findings(MoistAir air, AirUncertainty uncertainty, Evidence readings) => new(
        air.TemperatureC,
        air.RelativeHumidityPct,
        air.PressurePa,
        air.DewPointC,
        uncertainty.OfDewPointC(air),
        air.HumidityRatio,
        readings.Trusted(Quantity.PieceTemperature));

    private (FilmFindings? Film, string? NoFilmCause) FilmOf(CoatPlan? plan, (MoistAir Air, AirUncertainty Uncertainty)? air, Evidence readings)
    {
        if (air is not { } known)
        {
            return (null, "the booth air is not known");
        }

        if (plan is null)
        {
            return (null, "no coat is chosen");
        }

        if (Piece(readings, known.Air) is not { } piece)
        {
            return (null, "the temperature of the piece is not known");
        }

        try
        {
            BlushAnswer answer = askFilm(
                plan, known.Air, piece.TemperatureC, known.Uncertainty, piece.UncertaintyC, readings.Policy.RequiredMarginC, readings.Policy.CoverageFactor);
            FilmFindings film = Findings(plan, answer) with
            {
                BlushesBelowC = readings.Policy.BlushesBelowC(),
                HoldsWithWarmPiece = HoldsWithWarmPiece(plan, known.Air, known.Uncertainty, readings),
            };
            return (film, null);
        }
        catch (DryingFailedException failed)
        {
            return (null, $"the film model gave no answer: {new TemperatureText(readings.Policy.TemperatureUnit).Of(failed)}");
        }
    }

    // Asked only while the piece is too near the dew point: would warming it be enough for this cup?
    private bool? HoldsWithWarmPiece(CoatPlan plan, MoistAir air, AirUncertainty airUncertainty, Evidence readings)
    {
        VerdictPolicy policy = readings.Policy;
        if (readings.Trusted(Quantity.PieceTemperature) is not double pieceC || pieceC - air.DewPointC >= policy.DewClearanceC)
        {
            return null;
        }

        try
        {
            BlushAnswer warm = askFilm(
                plan,
                air,
                policy.WarmEnoughC(air.TemperatureC, air.DewPointC),
                airUncertainty,
                readings[Quantity.PieceTemperature].StandardUncertainty,
                policy.RequiredMarginC,
                policy.CoverageFactor);
            return plan.LoadedRetarderPct is null ? warm.RecommendedRetarderPct is not null : warm.BlushMarginC >= policy.BlushesBelowC();
        }
        catch (DryingFailedException)
        {
            return null;
        }
    }

    // A piece that no sensor looks at counts as warm as the air, where policy allows it; never one whose sensor fails.
    private static (double TemperatureC, double UncertaintyC)? Piece(Evidence readings, MoistAir air)
    {
        if (readings.Trusted(Quantity.PieceTemperature) is double pieceC)
        {
            return (pieceC, readings[Quantity.PieceTemperature].StandardUncertainty);
        }

        return readings.HasNoSensor(Quantity.PieceTemperature) && !readings.Policy.RequirePieceTemperature
            ? (air.TemperatureC, readings.Policy.AssumedPieceUncertaintyC)
            : null;
    }

    private static FilmFindings Findings(CoatPlan plan, BlushAnswer answer) => new()
    {
        Coat = plan.Kind.ToString().ToLowerInvariant(),
        Mix = plan.Description,
        CupMl = plan.CupMl,
        LoadedRetarderPct = plan.LoadedRetarderPct,
        RetarderPct = answer.RetarderPct,
        TimeToSetS = answer.TimeToSetS,
        LowestFilmTemperatureC = answer.LowestFilmTemperatureC,
        WaterAtSetGPerM2 = answer.WaterAtSetGPerM2,
        CriticalHumidityPct = answer.CriticalHumidityPct,
        CriticalDewPointC = answer.CriticalDewPointC,
        BlushMarginC = answer.BlushMarginC,
        MarginUncertaintyC = answer.MarginUncertaintyC,
        RecommendedRetarderPct = answer.RecommendedRetarderPct,
        MarginAtHighestRetarderC = answer.MarginAtHighestRetarderC,
        SolventTrappingRisk = answer.SolventTrappingRisk,
    };
}
