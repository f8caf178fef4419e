using System.Device.Gpio;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>One change of what a program drives onto a virtual pin.</summary>
/// <param name="Time">When, by the clock of the driver.</param>
/// <param name="Pin">Logical (GPIO) pin number.</param>
/// <param name="Value">The level driven from now on; null when the pin is no longer driven (closed, or made an input).</param>
public readonly record struct PinChange(DateTimeOffset Time, int Pin, PinValue? Value);
