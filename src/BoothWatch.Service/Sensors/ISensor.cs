using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors;

/// <summary>One configured sensor. A failing sensor is data: <see cref="Read"/> reports it and does not throw for it.</summary>
public interface ISensor : IDisposable
{
    /// <summary>The configured name, for example <c>boothAir</c>.</summary>
    string Name { get; }

    /// <summary>What and where it is, for people, for example <c>SHT4x at 0x44 on bus 1 (emulated)</c>.</summary>
    string Description { get; }

    /// <summary>What it measures.</summary>
    IReadOnlyList<Quantity> Quantities { get; }

    /// <summary>True when it measures the scripted shop and not the world.</summary>
    bool IsEmulated { get; }

    /// <summary>How long a value that was typed in or sent holds, though it stands still; null for a part that measures when asked.</summary>
    TimeSpan? Hold => null;

    /// <summary>Takes one measurement; may block for the conversion time of the part. Called off the assessment loop, by one thread at a time.</summary>
    SensorAnswer Read();
}
