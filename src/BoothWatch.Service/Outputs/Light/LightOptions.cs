using System.Globalization;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>Wiring of the booth light. Pin numbers are GPIO (logical) numbers, not positions on the header.</summary>
public sealed class LightOptions
{
    /// <summary>Name of the section in the configuration.</summary>
    public const string Section = "light";

    /// <summary>Where the outputs go: emulated or real. Default emulated.</summary>
    public string Source { get; set; } = "emulated";

    /// <summary>GPIO of the green lamp (spray). Default 17, 0 to 53.</summary>
    public int GreenPin { get; set; } = 17;

    /// <summary>GPIO of the yellow lamp (slow down). Default 27, 0 to 53.</summary>
    public int YellowPin { get; set; } = 27;

    /// <summary>GPIO of the red lamp (wait). Default 22, 0 to 53.</summary>
    public int RedPin { get; set; } = 22;

    /// <summary>GPIO of the buzzer; null for none. Default none, 0 to 53.</summary>
    public int? BuzzerPin { get; set; }

    /// <summary>True when a low level switches a lamp on, as many relay boards want it. Default false.</summary>
    public bool ActiveLow { get; set; }

    /// <summary>True keeps a wired buzzer quiet. Default false.</summary>
    public bool BuzzerSilent { get; set; }

    /// <summary>Time without a verdict from the loop after which the light drops to wait by itself, s: one tick of 1 s and 5 s of patience. Default 6, 2 to 6: it can be lowered, not raised.</summary>
    public double WaitIfSilentForS { get; set; } = 6;

    /// <summary>Every output with its full key and its GPIO number; null when it is not wired.</summary>
    public IEnumerable<(string Key, int? Pin)> Pins() =>
    [
        ($"{Section}:greenPin", GreenPin),
        ($"{Section}:yellowPin", YellowPin),
        ($"{Section}:redPin", RedPin),
        ($"{Section}:buzzerPin", BuzzerPin),
    ];

    /// <summary>How an output is wired, in words: what a look at a lamp holds for.</summary>
    /// <param name="pin">Its GPIO number.</param>
    internal string WiringOf(int pin) => string.Create(CultureInfo.InvariantCulture, $"{Source} GPIO {pin}, active {(ActiveLow ? "low" : "high")}");
}
