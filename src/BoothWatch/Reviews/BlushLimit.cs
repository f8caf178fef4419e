using BoothWatch.Film;

namespace BoothWatch.Reviews;

/// <summary>The dew point at which one coat begins to blush, in the air of any moment: by a tangent, drawn anew where the air has moved away from it.</summary>
internal sealed class BlushLimit(CoatConditions conditions, FilmParameters parameters)
{
    /// <summary>How far air or piece may be from the place of the tangent, °C: its error stays below 0.1 °C (a test).</summary>
    internal const double ReachC = 1.5;

    private BlushDewPoint? _tangent;

    /// <summary>The limit, °C; null where the model has no answer.</summary>
    public double? At(double airC, double pieceC)
    {
        if (CoatConditionsCheck.Outside(airC, pieceC, conditions.PressurePa, reserveC: 2) is not null)
        {
            return null;
        }

        if (_tangent is not { } near || Math.Abs(near.AirTemperatureC - airC) > ReachC || Math.Abs(near.PieceTemperatureC - pieceC) > ReachC)
        {
            _tangent = near = BlushDewPoint.Find(conditions with { AirTemperatureC = airC, PieceTemperatureC = pieceC }, parameters);
        }

        return CriticalHumidity.Cap(near.At(airC, pieceC), airC, pieceC).DewPointC;
    }
}
