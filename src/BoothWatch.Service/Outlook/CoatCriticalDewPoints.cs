using BoothWatch.Film;
using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>Asks the film model for the critical dew point of the coat in hand over the air temperature; one table a coat, level and pressure.</summary>
/// <param name="plan">The coat.</param>
internal sealed class CoatCriticalDewPoints(CoatPlan plan)
{
    /// <summary>The critical dew point hardly knows the pressure: half a degree of margin is some 100 hPa.</summary>
    private const double PressureGridPa = 1000;

    private (double RetarderPct, double PressurePa, CriticalDewPoints Table)? _last;

    /// <summary>The table for a retarder level of the ladder and a pressure; the nearest level where there is none such.</summary>
    public CriticalDewPoints For(double retarderPct, double pressurePa)
    {
        double pressure = Math.Round(pressurePa / PressureGridPa) * PressureGridPa;
        if (_last is { } last && last.RetarderPct == retarderPct && last.PressurePa == pressure)
        {
            return last.Table;
        }

        CriticalDewPoints table = new(airC => Find(retarderPct, airC, pressure));
        _last = (retarderPct, pressure, table);
        return table;
    }

    private double Find(double retarderPct, double airC, double pressurePa)
    {
        CoatConditions conditions = new()
        {
            Mix = plan.Ladder.MinBy(step => Math.Abs(step.RetarderPct - retarderPct)).Mix,
            WetFilmUm = plan.WetFilmUm,
            Substrate = plan.Substrate,
            AirSpeedMPerS = plan.AirSpeedMPerS,
            AirTemperatureC = airC,
            PieceTemperatureC = airC,
            PressurePa = pressurePa,
        };
        try
        {
            return CriticalHumidity.Find(conditions).DewPointC;
        }
        catch (Exception trouble) when (trouble is DryingFailedException or ArgumentException)
        {
            return double.NaN;
        }
    }
}
