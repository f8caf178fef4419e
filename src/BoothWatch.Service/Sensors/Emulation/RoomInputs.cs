using BoothWatch.Air;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>What acts on the room during one step; all of it constant over the step.</summary>
/// <param name="Intake">Air that enters.</param>
/// <param name="IntakeKgPerS">Dry air that enters, and as much leaves, kg/s; above zero.</param>
/// <param name="SurroundingsC">Temperature beyond the walls, °C.</param>
/// <param name="HeatGainW">Heat released inside, W.</param>
/// <param name="MoistureGainKgPerS">Water vapour released inside, kg/s.</param>
public readonly record struct RoomInputs(
    MoistAir Intake,
    double IntakeKgPerS,
    double SurroundingsC,
    double HeatGainW,
    double MoistureGainKgPerS);
