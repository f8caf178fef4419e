namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>What can be wrong with an emulated chip. All but <see cref="None"/> are made at the level of its registers.</summary>
public enum BusFault
{
    /// <summary>The chip works.</summary>
    None,

    /// <summary>The chip does not acknowledge: unplugged, without power, or at another address.</summary>
    NoAcknowledge,

    /// <summary>The check byte of every answer is wrong. No effect on chips that send none.</summary>
    BadCrc,

    /// <summary>Every byte answered is 0x00: the data line is held low.</summary>
    AllZero,

    /// <summary>Every byte answered is 0xFF: nothing drives the data line.</summary>
    AllOnes,

    /// <summary>The chip answers, but its conversion result no longer changes.</summary>
    Stuck,

    /// <summary>Each conversion is a little further off than the one before.</summary>
    Drift,

    /// <summary>The conversion result is at the end of its scale.</summary>
    Saturated,
}
