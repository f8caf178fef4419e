using BoothWatch.Air;
using FsCheck;
using FsCheck.Fluent;

namespace BoothWatch.Tests.Air;

/// <summary>Generates states of moist air over the whole range of <see cref="MoistAir"/> that exists as a gas.</summary>
public static class AirStates
{
    public static Arbitrary<MoistAir> Air() => (
        from tenthsC in Gen.Choose(-600, 900)
        from hundredthsPct in Gen.Choose(0, 10_000)
        from pressurePa in Gen.Choose(50_000, 120_000)
        where hundredthsPct / 1e4 * SaturationPressure.OverWater(tenthsC / 10.0) < 0.9 * pressurePa
        select MoistAir.FromRelativeHumidity(tenthsC / 10.0, hundredthsPct / 100.0, pressurePa)).ToArbitrary();
}
