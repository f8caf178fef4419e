using BoothWatch.Air;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// The shop that emulated sensors measure: the script drives a room, a piece that warms up and a filter that loads.
/// It knows nothing of verdicts. Safe to use from several threads.
/// </summary>
/// <param name="clock">Shop time.</param>
/// <param name="weather">The weather; null: as in the script.</param>
public sealed class ScriptedShop(ShopClock clock, ShopWeather? weather = null)
{
    /// <summary>Longest step, shop seconds; the script is held over a step.</summary>
    private const double StepS = 10;

    /// <summary>Dry air that the clean exhaust draws in, kg/s: about 8 changes an hour of 30 m³.</summary>
    private const double FanKgPerS = 0.08;

    /// <summary>Dry air through gaps, kg/s: about half a change an hour.</summary>
    private const double LeakKgPerS = 0.005;

    /// <summary>Dry air exchanged through the open door, kg/s. Assumed.</summary>
    private const double DoorKgPerS = 0.12;

    /// <summary>Water vapour from one person at light work, kg/s: about 60 g/h (common practice, no source).</summary>
    private const double PersonKgPerS = 60e-3 / 3600;

    /// <summary>Thickness of the piece, mm.</summary>
    public const double PieceThicknessMm = PieceBody.ThicknessMm;

    /// <summary>Pressure drop of the clean filter at full flow, Pa. Assumed: a paint-arrestor pad.</summary>
    private const double CleanFilterPa = 45;

    /// <summary>How much resistance the filter gains while the fan runs, as a share of the clean one a second: doubles in a day.</summary>
    private const double LoadingPerS = 1.0 / (9 * 3600);

    private readonly Lock _lock = new();
    private int _day = -1;
    private double _advancedS;
    private PieceBody _piece = new(20, 20);
    private double _load;
    private Room _room = new(20, 0.007);

    /// <summary>The shop at the time its clock shows.</summary>
    public ShopState Now()
    {
        lock (_lock)
        {
            ShopTime now = clock.Now;
            if (now.Day != _day)
            {
                Open(now.Day);
            }

            double untilS = (now.TimeOfDay - ShopClock.Opening).TotalSeconds;
            while (_advancedS < untilS)
            {
                Advance(Math.Min(StepS, untilS - _advancedS));
            }

            ShopMoment moment = Moment(now.TimeOfDay);
            double ratio = Math.Min(_room.HumidityRatio, SaturatedRatio(moment.PressurePa));
            return new ShopState(
                now,
                MoistAir.FromHumidityRatio(_room.TemperatureC, ratio, moment.PressurePa),
                Outdoors(moment),
                _piece.SurfaceC,
                moment.FanOn,
                moment.FanOn ? CleanFilterPa * (1 + _load) * FlowShare * FlowShare : 0);
        }
    }

    /// <summary>Share of the clean flow that the fan still draws through the loaded filter.</summary>
    private double FlowShare => 1 / Math.Sqrt(1 + (_load / 2));

    private ShopMoment Moment(TimeSpan timeOfDay) => weather is null ? ShopScript.At(timeOfDay) : ShopScript.At(timeOfDay, weather);

    private static MoistAir Outdoors(in ShopMoment moment) =>
        MoistAir.FromDewPoint(moment.OutdoorTemperatureC, moment.OutdoorDewPointC, moment.PressurePa);

    private double SaturatedRatio(double pressurePa) =>
        MoistAir.FromRelativeHumidity(_room.TemperatureC, 100, pressurePa).HumidityRatio;

    private void Open(int day)
    {
        // The booth has settled to the morning before the shop opens; the night is not played.
        ShopMoment morning = Moment(ShopClock.Opening);
        _load = 0;
        _room = new Room(morning.WorkshopTemperatureC, Outdoors(morning).HumidityRatio);
        for (int hour = 0; hour < 12; hour++)
        {
            _room.Step(Inputs(morning), 3600);
        }

        _piece = new PieceBody(_room.TemperatureC - ShopScript.PieceColderK, _room.TemperatureC);
        _advancedS = 0;
        _day = day;
    }

    private void Advance(double seconds)
    {
        ShopMoment moment = Moment(ShopClock.Opening + TimeSpan.FromSeconds(_advancedS));
        double before = _room.TemperatureC;
        _room.Step(Inputs(moment), seconds);
        _piece.Step((before + _room.TemperatureC) / 2, seconds);
        _load += moment.FanOn ? LoadingPerS * seconds : 0;
        _advancedS += seconds;
    }

    private RoomInputs Inputs(in ShopMoment moment) => new(
        Outdoors(moment),
        LeakKgPerS + (moment.FanOn ? FanKgPerS * FlowShare : 0) + (moment.DoorOpen ? DoorKgPerS : 0),
        moment.WorkshopTemperatureC,
        moment.HeatGainW,
        PersonKgPerS);
}
