using BoothWatch.Air;

namespace BoothWatch.Film;

/// <summary>How much the dew point may rise before one mix blushes, and how sure that is.</summary>
/// <param name="Critical">The critical point.</param>
/// <param name="MarginC">Critical dew point minus dew point now, °C.</param>
/// <param name="UncertaintyC">Standard uncertainty (k = 1) of the margin, °C.</param>
internal readonly record struct MixMargin(CriticalPoint Critical, double MarginC, double UncertaintyC)
{
    /// <summary>The margin of one mix in one air.</summary>
    /// <remarks>
    /// u² = ((∂c/∂t - ∂d/∂t) u_t)² + (∂d/∂RH u_RH)² + (∂c/∂piece u_piece)² + u_model², c the critical dew point, d the dew point now:
    /// an error of the air thermometer moves both, so its parts are subtracted before squaring (JCGM 100:2008, section 5.1).
    /// Where the bare piece draws dew first, no film model enters and u_model is 0.
    /// </remarks>
    public static MixMargin Of(
        BlushDewPoint blush, MoistAir air, double pieceTemperatureC, AirUncertainty airUncertainty, double pieceUncertaintyC, double modelUncertaintyC)
    {
        CriticalPoint critical = CriticalHumidity.Cap(blush.At(air.TemperatureC, pieceTemperatureC), air.TemperatureC, pieceTemperatureC);
        (double perAir, double perPiece, double model) = critical.Limit switch
        {
            CriticalLimit.Blush => (blush.PerAir, blush.PerPiece, modelUncertaintyC),
            CriticalLimit.Dew => (0, 1, 0),
            _ => (1, 0, modelUncertaintyC),
        };
        DewPointSensitivity sensitivity = DewPointSensitivity.Of(air);
        double fromAir = (perAir - sensitivity.PerTemperature) * airUncertainty.TemperatureC;
        double fromHumidity = sensitivity.CPerHumidityPct * airUncertainty.RelativeHumidityPct;
        double fromPiece = perPiece * pieceUncertaintyC;
        double uncertainty = Math.Sqrt((fromAir * fromAir) + (fromHumidity * fromHumidity) + (fromPiece * fromPiece) + (model * model));
        return new MixMargin(critical, critical.DewPointC - air.DewPointC, uncertainty);
    }

    /// <summary>True when the margin covers what policy requires plus the expanded uncertainty.</summary>
    public bool Covers(double requiredMarginC, double coverageFactor) => MarginC >= requiredMarginC + (coverageFactor * UncertaintyC);
}
