namespace BoothWatch.Service.Sensors;

/// <summary>Where the signals of a sensor or an output come from or go to.</summary>
public enum SignalSource
{
    /// <summary>Emulated inside the program, at the level of registers and pins; no hardware is touched.</summary>
    Emulated,

    /// <summary>Real buses and pins of the board.</summary>
    Real,
}
