using BoothWatch.Air;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>What emulated parts need of the scripted shop: the true values at the place of a role, and its scripted fault.</summary>
/// <param name="shop">The shop.</param>
/// <param name="fault">The scripted fault.</param>
/// <param name="seed">Seed of all noise.</param>
public sealed class EmulatedShop(ScriptedShop shop, DemoFault fault, int seed)
{
    // Two sound parts of one place never read quite the same. Assumed: well inside the tolerance of either.
    private const double CheckWarmerC = 0.15;
    private const double CheckDamperPct = -0.6;

    /// <summary>The shop at the time its clock shows.</summary>
    public ShopState Now() => shop.Now();

    /// <summary>The air at a role: outdoors for the intake, the booth for all others, a little beside it for the check.</summary>
    public AirSignal AirAt(SensorRole role)
    {
        ShopState now = shop.Now();
        MoistAir air = role == SensorRole.IntakeAir ? now.IntakeAir : now.BoothAir;
        AirSignal signal = new(air.TemperatureC, air.RelativeHumidityPct, air.PressurePa);
        return role == SensorRole.BoothAirCheck
            ? signal with { TemperatureC = signal.TemperatureC + CheckWarmerC, RelativeHumidityPct = Math.Max(0, signal.RelativeHumidityPct + CheckDamperPct) }
            : signal;
    }

    /// <summary>What is wrong with the sensor of a role now.</summary>
    public BusFault FaultOf(SensorRole role) => fault.Of(role, shop.Now().Time);

    /// <summary>Seed of the noise of a role.</summary>
    public int SeedOf(SensorRole role) => (seed * SensorRole.All.Count) + SensorRole.All.ToList().IndexOf(role);
}
