using BoothWatch.Air;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Tests.Sensors.Emulation;

public class RoomTests
{
    private static readonly MoistAir Outdoors = MoistAir.FromRelativeHumidity(16, 60, 101_325);
    private static readonly RoomInputs Steady = new(Outdoors, 0.08, 21, 300, 1.5e-5);

    /// <summary>Exponential approach with constant inputs (mass and heat balance by hand): τ = k M / m = 3 × 36 / 0.08 = 1350 s for moisture.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(360)]
    public void Step_ConstantInputs_IsTheExponentialWhateverTheSteps(int steps)
    {
        const double Seconds = 1350;
        Room room = new(24, 0.012);
        for (int i = 0; i < steps; i++)
        {
            room.Step(Steady, Seconds / steps);
        }

        double finalRatio = Outdoors.HumidityRatio + (1.5e-5 / 0.08);
        Assert.Equal(finalRatio + ((0.012 - finalRatio) / Math.E), room.HumidityRatio, 1e-9);

        double conductance = (0.08 * 1010) + 60;
        double finalC = ((0.08 * 1010 * 16) + (60 * 21) + 300) / conductance;
        Assert.Equal(finalC + ((24 - finalC) * Math.Exp(-Seconds * conductance / 240_000)), room.TemperatureC, 1e-9);
    }

    [Fact]
    public void Step_AnyInputs_ClosesTheMoistureBalance()
    {
        Random random = new(7);
        Room room = new(22, 0.008);
        double held = room.HeldWaterKg;
        for (int i = 0; i < 500; i++)
        {
            MoistAir intake = MoistAir.FromRelativeHumidity(5 + (25 * random.NextDouble()), 20 + (80 * random.NextDouble()), 100_000);
            room.Step(new RoomInputs(intake, 0.002 + (0.2 * random.NextDouble()), 15, 200 * random.NextDouble(), 1e-4 * random.NextDouble()), 300 * random.NextDouble());
        }

        Assert.True(room.CondensedWaterKg > 0, "the cold spells of this sequence condense water; else the term is not tested");
        double gained = room.VentilatedWaterKg + room.ReleasedWaterKg - room.CondensedWaterKg;
        Assert.Equal(room.HeldWaterKg - held, gained, 1e-9);
    }

    [Fact]
    public void Step_WithoutGains_KeepsTheHumidityRatioBetweenRoomAndIntake()
    {
        Room room = new(22, 0.012);
        double before = room.HumidityRatio;
        for (int i = 0; i < 200; i++)
        {
            room.Step(new RoomInputs(Outdoors, 0.05, 22, 0, 0), 60);
            Assert.InRange(room.HumidityRatio, Outdoors.HumidityRatio, before);
            before = room.HumidityRatio;
        }

        Assert.Equal(Outdoors.HumidityRatio, room.HumidityRatio, 1e-4);
    }

    [Fact]
    public void Step_DampRoomCooled_CondensesAndStaysAtSaturation()
    {
        Room room = new(22, 0.016);
        room.Step(new RoomInputs(MoistAir.FromRelativeHumidity(5, 90, 101_325), 0.001, 5, 0, 0), 20_000);

        double saturated = MoistAir.FromRelativeHumidity(room.TemperatureC, 100, 101_325).HumidityRatio;
        Assert.Equal(saturated, room.HumidityRatio, 1e-12);
        Assert.True(room.CondensedWaterKg > 0.1);
    }
}
