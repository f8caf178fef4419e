using BoothWatch.Air;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// A well-mixed room with heat and moisture capacity. Each step is the exact solution for inputs that are constant over it,
/// so the result does not depend on how a stretch of constant inputs is cut into steps.
/// </summary>
/// <remarks>
/// <para>
/// Heat: C dT/dt = m cp (Tin - T) + UA (Ts - T) + Q. Moisture: k M dW/dt = m (Win - W) + G.
/// T, W: temperature (K or °C) and humidity ratio (kg/kg) of the room; m: dry air in and out (kg/s); UA: walls (W/K); Q, G:
/// gains (W, kg/s); C: heat capacity of air and furnishings (J/K); M: dry air in the room (kg); k: effective moisture
/// capacity, the factor by which absorbing surfaces enlarge that of the air. Water above saturation condenses.
/// </para>
/// <para>Source of the effective-capacity model: ASHRAE Handbook, Fundamentals, and common practice in building simulation (from memory).</para>
/// </remarks>
public sealed class Room(double temperatureC, double humidityRatio)
{
    /// <summary>Dry air in the room, kg: about 30 m³.</summary>
    public const double DryAirKg = 36;

    /// <summary>Factor by which wood, paper and dust enlarge the moisture capacity of the air. Assumed.</summary>
    public const double MoistureCapacityFactor = 3;

    /// <summary>Heat capacity of the air, the bench and the wall linings, J/K. Assumed.</summary>
    public const double HeatCapacityJPerK = 240_000;

    /// <summary>Heat conductance to the workshop around, W/K. Assumed: 40 m² of light partition.</summary>
    public const double WallWPerK = 60;

    private const double AirHeatCapacityJPerKgK = 1010;

    /// <summary>Temperature, °C.</summary>
    public double TemperatureC { get; private set; } = temperatureC;

    /// <summary>Humidity ratio, kg of water a kg of dry air.</summary>
    public double HumidityRatio { get; private set; } = humidityRatio;

    /// <summary>Water that the exchanged air has brought in, less what it has taken out, kg.</summary>
    public double VentilatedWaterKg { get; private set; }

    /// <summary>Water vapour released inside, kg.</summary>
    public double ReleasedWaterKg { get; private set; }

    /// <summary>Water that has condensed, kg.</summary>
    public double CondensedWaterKg { get; private set; }

    /// <summary>Water held by the air and the absorbing surfaces, kg.</summary>
    public double HeldWaterKg => MoistureCapacityFactor * DryAirKg * HumidityRatio;

    /// <summary>Moves the room on.</summary>
    /// <param name="inputs">What acts on it.</param>
    /// <param name="seconds">For how long, s.</param>
    public void Step(in RoomInputs inputs, double seconds)
    {
        double airWPerK = inputs.IntakeKgPerS * AirHeatCapacityJPerKgK;
        double conductanceWPerK = airWPerK + WallWPerK;
        double finalC = ((airWPerK * inputs.Intake.TemperatureC) + (WallWPerK * inputs.SurroundingsC) + inputs.HeatGainW) / conductanceWPerK;
        TemperatureC = finalC + ((TemperatureC - finalC) * Math.Exp(-seconds * conductanceWPerK / HeatCapacityJPerK));

        double capacityKg = MoistureCapacityFactor * DryAirKg;
        double intakeRatio = inputs.Intake.HumidityRatio;
        double finalRatio = intakeRatio + (inputs.MoistureGainKgPerS / inputs.IntakeKgPerS);
        double timeConstantS = capacityKg / inputs.IntakeKgPerS;
        double decay = Math.Exp(-seconds / timeConstantS);
        double ratioSeconds = (finalRatio * seconds) + ((HumidityRatio - finalRatio) * timeConstantS * (1 - decay));
        VentilatedWaterKg += inputs.IntakeKgPerS * ((intakeRatio * seconds) - ratioSeconds);
        ReleasedWaterKg += inputs.MoistureGainKgPerS * seconds;
        HumidityRatio = finalRatio + ((HumidityRatio - finalRatio) * decay);

        double saturatedRatio = MoistAir.FromRelativeHumidity(TemperatureC, 100, inputs.Intake.PressurePa).HumidityRatio;
        if (HumidityRatio > saturatedRatio)
        {
            CondensedWaterKg += (HumidityRatio - saturatedRatio) * capacityKg;
            HumidityRatio = saturatedRatio;
        }
    }
}
