using System.Globalization;
using BoothWatch.Air;

namespace BoothWatch.Film;

/// <summary>The drying-film model, asked the finisher's questions: will this coat blush, by how much not, and which retarder level holds.</summary>
/// <remarks>
/// Critical dew points do not depend on the humidity now, so they are remembered: in slowly changing air an answer costs one drying run.
/// Safe for one caller at a time; callers on several threads wait for each other.
/// </remarks>
public sealed class BlushModel
{
    private readonly Lock _gate = new();
    private readonly FilmParameters _parameters;
    private readonly BlushDewPointCache _cache;

    /// <summary>A model with the default parameters.</summary>
    public BlushModel()
        : this(FilmParameters.Default)
    {
    }

    /// <summary>A model with parameters of the caller's choice.</summary>
    /// <param name="parameters">The parameters.</param>
    public BlushModel(FilmParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        _parameters = parameters;
        _cache = new BlushDewPointCache(parameters);
    }

    /// <summary>Answers for the loaded retarder level, or for the recommended one when none is loaded (the highest when none serves).</summary>
    /// <param name="plan">The coat.</param>
    /// <param name="air">The booth air.</param>
    /// <param name="pieceTemperatureC">Temperature of the piece when the coat lands, °C.</param>
    /// <param name="airUncertainty">Standard uncertainty of the air.</param>
    /// <param name="pieceUncertaintyC">Standard uncertainty of the piece temperature, °C.</param>
    /// <param name="requiredMarginC">Margin that policy requires beyond the uncertainty, °C.</param>
    /// <param name="coverageFactor">Factor from standard to expanded uncertainty.</param>
    /// <exception cref="ArgumentException">The plan itself is wrong; the message names what, its value and the fix.</exception>
    /// <exception cref="DryingFailedException">There is no answer: air or piece is outside the range of the model, or a solver failed.</exception>
    public BlushAnswer Assess(
        CoatPlan plan,
        MoistAir air,
        double pieceTemperatureC,
        AirUncertainty airUncertainty,
        double pieceUncertaintyC,
        double requiredMarginC,
        double coverageFactor)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(airUncertainty);
        int? loaded = LoadedIndex(plan);
        if (CoatConditionsCheck.Outside(air.TemperatureC, pieceTemperatureC, air.PressurePa, reserveC: 2) is { } outside)
        {
            throw outside;
        }

        lock (_gate)
        {
            MixMargin Margin(int level) => MixMargin.Of(
                _cache.Near(Conditions(plan, level, air, pieceTemperatureC)),
                air,
                pieceTemperatureC,
                airUncertainty,
                pieceUncertaintyC,
                _parameters.ModelUncertaintyC);

            int highest = plan.Ladder.Count - 1;
            int? recommended = RetarderLevel.Recommend(plan.Ladder.Count, level => Margin(level).Covers(requiredMarginC, coverageFactor));
            int level = loaded ?? recommended ?? highest;
            MixMargin margin = Margin(level);
            DryingResult run = DryingRun.Simulate(Conditions(plan, level, air, pieceTemperatureC), air.VapourPressurePa, _parameters);
            return new BlushAnswer
            {
                RetarderPct = plan.Ladder[level].RetarderPct,
                TimeToSetS = run.TimeToSetS,
                LowestFilmTemperatureC = run.LowestFilmTemperatureC,
                WaterAtSetGPerM2 = run.WaterAtSetGPerM2,
                CriticalHumidityPct = margin.Critical.RelativeHumidityPct,
                CriticalDewPointC = margin.Critical.DewPointC,
                BlushMarginC = margin.MarginC,
                MarginUncertaintyC = margin.UncertaintyC,
                RecommendedRetarderPct = recommended is { } index ? plan.Ladder[index].RetarderPct : null,
                MarginAtHighestRetarderC = Margin(highest).MarginC,
                SolventTrappingRisk = run.SolventTrappingRisk,
            };
        }
    }

    private static CoatConditions Conditions(CoatPlan plan, int level, MoistAir air, double pieceTemperatureC) =>
        plan.ConditionsOf(plan.Ladder[level].Mix, air, pieceTemperatureC);

    private static int? LoadedIndex(CoatPlan plan)
    {
        if (plan.Ladder.Count == 0)
        {
            throw new ArgumentException("the retarder ladder of the coat is empty; give at least level 0");
        }

        if (plan.LoadedRetarderPct is not { } loaded)
        {
            return null;
        }

        for (int i = 0; i < plan.Ladder.Count; i++)
        {
            if (Math.Abs(plan.Ladder[i].RetarderPct - loaded) < 1e-6)
            {
                return i;
            }
        }

        string levels = string.Join(", ", plan.Ladder.Select(step => step.RetarderPct.ToString(CultureInfo.InvariantCulture)));
        throw new ArgumentException(string.Create(
            CultureInfo.InvariantCulture, $"retarder in the cup is {loaded} %, no level of the ladder; use one of {levels} or add it to the ladder"));
    }
}
