using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>A coat in an air that changes, asked again and again with one thing changed.</summary>
/// <remarks>
/// The margin in changing air: by how much the dew point could have been higher all along, from landing to set, before the film just
/// blushes. In constant air that is the ordinary blush margin.
/// </remarks>
/// <param name="conditions">The coat; its air temperature is that of the landing.</param>
/// <param name="air">The air.</param>
/// <param name="parameters">Model parameters.</param>
internal sealed class Replay(CoatConditions conditions, AirCourse air, FilmParameters parameters)
{
    private const double DifferenceC = 0.5;
    private double? _blushDewPointC;

    /// <summary>The coat.</summary>
    public CoatConditions Conditions { get; } = conditions with { AirTemperatureC = air.Landing.TemperatureC };

    /// <summary>The air.</summary>
    public AirCourse Air => air;

    /// <summary>The margin, °C.</summary>
    public double MarginC => Critical(BlushDewPointC) - air.Landing.DewPointC;

    private double BlushDewPointC => _blushDewPointC ??= FindBlushDewPointC();

    /// <summary>The same with another coat or another air.</summary>
    public Replay With(CoatConditions? coat = null, AirCourse? course = null) => new(coat ?? Conditions, course ?? air, parameters);

    /// <summary>One drying run.</summary>
    public DryingResult Run(bool keepTrajectory = false) => DryingRun.Simulate(Conditions, air, parameters, keepTrajectory);

    /// <summary>Whether the margin is at least so much, by one drying run.</summary>
    public bool Holds(double marginC) => MayHold(marginC) && IsClear(RunRaised(marginC));

    /// <summary>False where bare air or piece leaves no room for such a margin, whatever the film does.</summary>
    public bool MayHold(double marginC) =>
        air.Landing.DewPointC + marginC <= Math.Min(Conditions.AirTemperatureC, Conditions.PieceTemperatureC);

    /// <summary>One drying run with the dew point higher all along by so much, °C.</summary>
    public DryingResult RunRaised(double byC) =>
        DryingRun.Simulate(Conditions, air.With(step => step with { DewPointC = step.DewPointC + byC }), parameters);

    /// <summary>True when a run leaves no more water than the tolerance.</summary>
    public bool IsClear(DryingResult run) => run.WaterAtSetGPerM2 <= parameters.BlushToleranceGPerM2;

    /// <summary>The margin with its uncertainty, from the sensors and the model as in any other answer.</summary>
    public MixMargin MarginWith(ReviewCase coat)
    {
        double here = BlushDewPointC;
        double warmerAir = Warmer(DifferenceC).FindBlushDewPointC(here + (DifferenceC / 2));
        double warmerPiece = With(Conditions with { PieceTemperatureC = Conditions.PieceTemperatureC + DifferenceC })
            .FindBlushDewPointC(here + (DifferenceC / 2));
        AirStep landing = air.Landing;
        return MixMargin.Of(
            new BlushDewPoint(
                landing.TemperatureC, Conditions.PieceTemperatureC, here, (warmerAir - here) / DifferenceC, (warmerPiece - here) / DifferenceC),
            MoistAir.FromDewPoint(landing.TemperatureC, Math.Min(landing.DewPointC, landing.TemperatureC), Conditions.PressurePa),
            Conditions.PieceTemperatureC,
            coat.AirUncertainty,
            coat.PieceUncertaintyC,
            parameters.ModelUncertaintyC);
    }

    /// <summary>True when the margin covers what the shop wants, with the uncertainty of this very replay.</summary>
    public bool Covers(ReviewCase coat)
    {
        VerdictPolicy policy = coat.Policy;
        return Holds(policy.RequiredMarginC) && MarginWith(coat).Covers(policy.RequiredMarginC, policy.CoverageFactor);
    }

    private Replay Warmer(double byC) => With(course: air.With(step => step with { TemperatureC = step.TemperatureC + byC }));

    private double Critical(double blushDewPointC) =>
        CriticalHumidity.Cap(blushDewPointC, Conditions.AirTemperatureC, Conditions.PieceTemperatureC).DewPointC;

    private double FindBlushDewPointC(double nearC = double.NaN)
    {
        double landingC = air.Landing.DewPointC;
        double highest = Conditions.AirTemperatureC + CriticalHumidity.BeyondSaturationC;
        BlushSearch search = new(dewPointC => RunRaised(dewPointC - landingC).WaterAtSetGPerM2, parameters.BlushToleranceGPerM2, highest);
        if (!double.IsNaN(nearC))
        {
            return search.Run(Math.Min(highest, nearC + 0.15), 0.1);
        }

        DryingResult dry = With(course: air.With(step => step with { DewPointC = DewPoint.LowestC })).Run();
        double high = Math.Min(highest, dry.LastFilmTemperatureC);
        return search.Run(high, Math.Max(0.1, (high - dry.LowestFilmTemperatureC) / 4));
    }
}
