using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors;

/// <summary>What a sensor is for. Each role has one configured name, and decides which quantities its part provides.</summary>
/// <param name="Name">The configured name, for example <c>boothAir</c>.</param>
/// <param name="Temperature">The quantity that a temperature of this sensor is; null when the role has none.</param>
/// <param name="Humidity">The quantity that a relative humidity of this sensor is; null when the role has none.</param>
public sealed record SensorRole(string Name, Quantity? Temperature = null, Quantity? Humidity = null)
{
    /// <summary>Air in the booth, upstream of the overspray.</summary>
    public static readonly SensorRole BoothAir = new("boothAir", Quantity.BoothTemperature, Quantity.BoothHumidity);

    /// <summary>The same air by a second part: the two must agree, and it stands in while the first is silent.</summary>
    public static readonly SensorRole BoothAirCheck = new("boothAirCheck", Quantity.BoothTemperature, Quantity.BoothHumidity);

    /// <summary>Air that the booth draws in: at the intake, or outdoors.</summary>
    public static readonly SensorRole IntakeAir = new("intakeAir", Quantity.IntakeTemperature, Quantity.IntakeHumidity);

    /// <summary>Surface of the piece to be sprayed.</summary>
    public static readonly SensorRole Piece = new("piece", Quantity.PieceTemperature);

    /// <summary>Proof that the exhaust moves air.</summary>
    public static readonly SensorRole Exhaust = new("exhaust");

    /// <summary>Pressure drop across the exhaust filter.</summary>
    public static readonly SensorRole Filter = new("filter");

    /// <summary>All roles, in the order in which they are shown.</summary>
    public static readonly IReadOnlyList<SensorRole> All = [BoothAir, BoothAirCheck, IntakeAir, Piece, Exhaust, Filter];
}
