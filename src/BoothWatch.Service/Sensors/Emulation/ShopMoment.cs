namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>What the script says of one moment: the weather, and what is switched or opened.</summary>
/// <param name="OutdoorTemperatureC">Outdoor temperature, °C.</param>
/// <param name="OutdoorDewPointC">Outdoor dew point, °C.</param>
/// <param name="PressurePa">Station pressure, Pa.</param>
/// <param name="WorkshopTemperatureC">Temperature of the workshop around the booth, °C.</param>
/// <param name="HeatGainW">Heat released in the booth by lamps, sun and a person, W.</param>
/// <param name="FanOn">The exhaust fan runs.</param>
/// <param name="DoorOpen">The door to the yard stands open.</param>
/// <param name="Phase">The weather for people.</param>
public readonly record struct ShopMoment(
    double OutdoorTemperatureC,
    double OutdoorDewPointC,
    double PressurePa,
    double WorkshopTemperatureC,
    double HeatGainW,
    bool FanOn,
    bool DoorOpen,
    string Phase);
