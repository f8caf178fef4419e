using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.MqttAir;
using BoothWatch.Service.Sensors.TypedPiece;

namespace BoothWatch.Service.Sensors;

/// <summary>What parts are connected to.</summary>
/// <param name="Buses">I²C buses.</param>
/// <param name="Pins">GPIO pins.</param>
/// <param name="Shop">The shop that emulated parts measure, with their scripted faults.</param>
/// <param name="Typed">Piece temperature typed in by a person.</param>
/// <param name="Messages">Readings that arrive as messages.</param>
public sealed record SensorWiring(
    I2cBusSource Buses,
    GpioSource Pins,
    EmulatedShop Shop,
    TypedPieceTemperature Typed,
    AirMessages Messages)
{
    /// <summary>
    /// The clock by which emulated chips convert: always that of the machine, because the bindings sleep by it, whatever
    /// clock the shop runs by.
    /// </summary>
    public static TimeProvider ConversionClock => TimeProvider.System;
}
