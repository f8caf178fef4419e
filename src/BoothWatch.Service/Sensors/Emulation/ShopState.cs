using BoothWatch.Air;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>The scripted shop at one moment: what ideal sensors would measure.</summary>
/// <param name="Time">Shop time.</param>
/// <param name="BoothAir">Air in the booth.</param>
/// <param name="IntakeAir">Outdoor air at the intake.</param>
/// <param name="PieceTemperatureC">Surface of the piece, °C.</param>
/// <param name="FanOn">The exhaust moves air.</param>
/// <param name="FilterPressureDropPa">Pressure drop across the exhaust filter, Pa.</param>
public sealed record ShopState(
    ShopTime Time,
    MoistAir BoothAir,
    MoistAir IntakeAir,
    double PieceTemperatureC,
    bool FanOn,
    double FilterPressureDropPa);
