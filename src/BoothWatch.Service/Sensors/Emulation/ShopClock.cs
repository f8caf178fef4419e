using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>Time in the scripted shop: its day is compressed, and after 17:00 the next day begins at 08:00.</summary>
public sealed class ShopClock
{
    /// <summary>When the shop opens.</summary>
    public static readonly TimeSpan Opening = TimeSpan.FromHours(8);

    /// <summary>When it closes.</summary>
    public static readonly TimeSpan Closing = TimeSpan.FromHours(17);

    private static readonly TimeSpan DayLength = Closing - Opening;

    private static readonly TimeSpan AnnounceFor = TimeSpan.FromSeconds(15);

    private readonly TimeProvider _time;
    private readonly long _start;
    private readonly TimeSpan _offset;

    /// <summary>Starts the clock.</summary>
    public ShopClock(TimeProvider time, IOptions<DemoOptions> options)
    {
        _time = time;
        _start = time.GetTimestamp();
        _offset = TimeSpan.ParseExact(options.Value.StartAt, @"hh\:mm", CultureInfo.InvariantCulture) - Opening;
        Speed = DayLength.TotalSeconds / options.Value.DayLengthS;
    }

    /// <summary>Shop seconds that pass in a real second.</summary>
    public double Speed { get; }

    /// <summary>Day and time of day in the shop, now.</summary>
    public ShopTime Now
    {
        get
        {
            TimeSpan worked = _offset + (_time.GetElapsedTime(_start) * Speed);
            int day = (int)Math.Floor(worked / DayLength);
            return new ShopTime(day, Opening + (worked - (day * DayLength)));
        }
    }

    /// <summary>True for the first 15 real seconds of every shop day after the first.</summary>
    public bool IsNewDay => Now is { Day: > 0 } now && (now.TimeOfDay - Opening) / Speed < AnnounceFor;

    /// <summary>What the weather is doing, for people, for example <c>rain arriving</c>.</summary>
    public string Phase => ShopScript.At(Now.TimeOfDay).Phase;
}
