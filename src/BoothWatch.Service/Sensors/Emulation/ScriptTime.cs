using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>A clock that stands where it is put: the scripted shop is played with it at any pace.</summary>
internal sealed class ScriptTime : TimeProvider
{
    /// <summary>Time since the shop opened.</summary>
    public TimeSpan Elapsed { get; set; }

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Elapsed.Ticks;

    /// <summary>A clock of the shop that goes by this one, second for second.</summary>
    public ShopClock ShopClock() =>
        new(this, Options.Create(new DemoOptions { DayLengthS = (Emulation.ShopClock.Closing - Emulation.ShopClock.Opening).TotalSeconds }));
}
