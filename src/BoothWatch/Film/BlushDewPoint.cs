namespace BoothWatch.Film;

/// <summary>The dew point at which a film blushes, near one air and piece temperature: a value and its slopes.</summary>
/// <param name="AirTemperatureC">Air temperature of the value, °C.</param>
/// <param name="PieceTemperatureC">Piece temperature of the value, °C.</param>
/// <param name="DewPointC">Dew point at which the film just blushes, °C, not yet bounded by saturation and dew.</param>
/// <param name="PerAir">Its slope with the air temperature at the same piece temperature.</param>
/// <param name="PerPiece">Its slope with the piece temperature at the same air temperature.</param>
internal sealed record BlushDewPoint(double AirTemperatureC, double PieceTemperatureC, double DewPointC, double PerAir, double PerPiece)
{
    private const double DifferenceC = 0.5;

    /// <summary>Finds value and slopes by three searches.</summary>
    public static BlushDewPoint Find(CoatConditions conditions, FilmParameters parameters)
    {
        double here = CriticalHumidity.FindBlushDewPointC(conditions, parameters);
        double warmerAir = CriticalHumidity.FindBlushDewPointC(
            conditions with { AirTemperatureC = conditions.AirTemperatureC + DifferenceC }, parameters, here + (DifferenceC / 2));
        double warmerPiece = CriticalHumidity.FindBlushDewPointC(
            conditions with { PieceTemperatureC = conditions.PieceTemperatureC + DifferenceC }, parameters, here + (DifferenceC / 2));
        return new BlushDewPoint(
            conditions.AirTemperatureC, conditions.PieceTemperatureC, here, (warmerAir - here) / DifferenceC, (warmerPiece - here) / DifferenceC);
    }

    /// <summary>The dew point at nearby temperatures, °C, by the tangent.</summary>
    public double At(double airTemperatureC, double pieceTemperatureC) =>
        DewPointC + (PerAir * (airTemperatureC - AirTemperatureC)) + (PerPiece * (pieceTemperatureC - PieceTemperatureC));
}
