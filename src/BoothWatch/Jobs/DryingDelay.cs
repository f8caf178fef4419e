using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Verdicts;

namespace BoothWatch.Jobs;

/// <summary>By how much a coat dries slower than in the reference air, by the model's own drying runs, and why.</summary>
/// <remarks>
/// The model follows a film until it sets. That everything after it (sanding, hardening) takes longer in the same proportion is
/// assumed: both are slowed by cold and by slow solvent, but nothing here measures how much. A faster coat shortens no wait.
/// </remarks>
public sealed record DryingDelay
{
    /// <summary>Air temperature of the reference, °C; the piece has it too. Assumed: what a schedule for a heated shop has in mind.</summary>
    public const double ReferenceTemperatureC = 21;

    /// <summary>Relative humidity of the reference, %. Assumed.</summary>
    public const double ReferenceHumidityPct = 50;

    /// <summary>Less than this is not worth a word.</summary>
    private const double LeastCause = 1.02;

    /// <summary>Time to set of this coat in its air, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Time to set of the same kind of coat in the reference air without retarder, s; null when that does not set either.</summary>
    public required double? ReferenceTimeToSetS { get; init; }

    /// <summary>What every wait is multiplied by, 1 or more; null when the coat does not set.</summary>
    public required double? Factor { get; init; }

    /// <summary>What lengthens it, most first; each alone brought back to the reference. Their product need not be the factor.</summary>
    public required IReadOnlyList<DelayCause> Causes { get; init; }

    /// <summary>Runs the coat in its air and in the reference, and once more for each difference brought back to the reference.</summary>
    /// <param name="here">The coat in its air.</param>
    /// <param name="reference">The same kind of coat as a schedule has it in mind.</param>
    /// <param name="parameters">Model parameters; null: <see cref="FilmParameters.Default"/>.</param>
    /// <param name="text">How to write temperatures.</param>
    /// <exception cref="ArgumentException">A condition is out of range; the message names it.</exception>
    /// <exception cref="DryingFailedException">The solver gave up.</exception>
    public static DryingDelay Between(DryingCase here, DryingCase reference, FilmParameters? parameters = null, TemperatureText text = default)
    {
        ArgumentNullException.ThrowIfNull(here);
        ArgumentNullException.ThrowIfNull(reference);
        double? TimeToSet(DryingCase run) => DryingRun.Simulate(run.Conditions, run.VapourPressurePa, parameters).TimeToSetS;
        double? setS = TimeToSet(here);
        double? referenceS = TimeToSet(reference);
        List<DelayCause> causes = [];
        foreach ((string what, DryingCase changed) in Changes(here, reference, text))
        {
            double? without = TimeToSet(changed);
            if (without is > 0 && setS is null)
            {
                causes.Add(new DelayCause(what, null));
            }
            else if (without is > 0 && setS / without >= LeastCause)
            {
                causes.Add(new DelayCause(what, setS / without));
            }
        }

        return new DryingDelay
        {
            TimeToSetS = setS,
            ReferenceTimeToSetS = referenceS,
            Factor = setS is > 0 && referenceS is > 0 ? Math.Max(1, setS.Value / referenceS.Value) : null,
            Causes = [.. causes.OrderByDescending(cause => cause.Factor ?? double.PositiveInfinity)],
        };
    }

    /// <summary>How much longer and why, in words; empty when the waits hold as planned.</summary>
    public string Words()
    {
        string because = Causes.Count == 0 ? "" : ": " + string.Join(", ", Causes.Select(Word));
        return Factor switch
        {
            null => $"this film does not set in this air{because}; warm the air and the piece",
            < LeastCause => "",
            { } factor => string.Create(CultureInfo.InvariantCulture, $"{factor:0.0#} times as long as planned{because}"),
        };
    }

    private static string Word(DelayCause cause) => cause.Factor is { } factor
        ? string.Create(CultureInfo.InvariantCulture, $"{cause.What} (times {factor:0.0#})")
        : cause.What;

    private static IEnumerable<(string What, DryingCase Changed)> Changes(DryingCase here, DryingCase reference, TemperatureText text)
    {
        CoatConditions own = here.Conditions;
        CoatConditions plan = reference.Conditions;
        if (own.AirTemperatureC != plan.AirTemperatureC || own.PieceTemperatureC != plan.PieceTemperatureC)
        {
            yield return (
                $"air of {text.Of(own.AirTemperatureC)} and a piece of {text.Of(own.PieceTemperatureC)}",
                here with { Conditions = own with { AirTemperatureC = plan.AirTemperatureC, PieceTemperatureC = plan.PieceTemperatureC } });
        }

        if (here.VapourPressurePa != reference.VapourPressurePa)
        {
            yield return (Text($"humidity of {here.RelativeHumidityPct:0} %"), here with { VapourPressurePa = reference.VapourPressurePa });
        }

        if (!own.Mix.Equals(plan.Mix))
        {
            yield return (
                here.RetarderPct > 0 ? Text($"{here.RetarderPct:0.#} % of retarder") : "this mix",
                here with { Conditions = own with { Mix = plan.Mix } });
        }

        if (own.WetFilmUm != plan.WetFilmUm)
        {
            yield return (Text($"a wet film of {own.WetFilmUm:0} µm"), here with { Conditions = own with { WetFilmUm = plan.WetFilmUm } });
        }

        if (own.AirSpeedMPerS != plan.AirSpeedMPerS)
        {
            yield return (Text($"air speed of {own.AirSpeedMPerS:0.0#} m/s"), here with { Conditions = own with { AirSpeedMPerS = plan.AirSpeedMPerS } });
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
