using BoothWatch.Outlook;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Outlook;

/// <summary>
/// The invented earlier days of the demo: the scripted shop played on days of other weather, from opening to closing. Nothing of them is written
/// to the journal, where a day of the demo is compressed into minutes and could be no day to learn from.
/// </summary>
/// <param name="seed">The same seed gives the same days.</param>
internal sealed class ScriptedRecord(int seed) : IOutlookRecord
{
    /// <summary>Five weeks.</summary>
    public const int Days = 35;

    private readonly List<AirDay> _played = [];
    private DateOnly _playedFor;

    public bool IsInvented => true;

    public AirPast Before(DateOnly today, int most, CancellationToken cancellationToken)
    {
        if (_played.Count == 0 || _playedFor != today)
        {
            _played.Clear();
            IReadOnlyList<ShopWeather> weather = ShopWeather.Earlier(Days, seed);
            for (int back = 1; back <= Math.Min(most, Days); back++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                _played.Add(Play(today.AddDays(-back), weather[back - 1]));
            }

            _playedFor = today;
        }

        return new AirPast(_played);
    }

    private static AirDay Play(DateOnly date, ShopWeather weather)
    {
        ScriptTime script = new();
        ScriptedShop shop = new(script.ShopClock(), weather);
        AirDay day = new(date);
        for (TimeSpan at = ShopClock.Opening; at < ShopClock.Closing; at += TimeSpan.FromMinutes(AirDay.SlotMinutes))
        {
            script.Elapsed = at - ShopClock.Opening;
            ShopState state = shop.Now();
            day[AirDay.SlotOf(at)] = new OutlookAir(state.BoothAir.TemperatureC, state.BoothAir.DewPointC);
        }

        return day;
    }
}
