using BoothWatch.Service.Sensors.Bme280;
using BoothWatch.Service.Sensors.ContactInput;
using BoothWatch.Service.Sensors.FilterPressure;
using BoothWatch.Service.Sensors.Mlx90614;
using BoothWatch.Service.Sensors.MqttAir;
using BoothWatch.Service.Sensors.Sht3x;
using BoothWatch.Service.Sensors.Sht4x;
using BoothWatch.Service.Sensors.TypedPiece;

namespace BoothWatch.Service.Sensors;

/// <summary>The kinds of part that a sensor may be. A new kind is one folder and one line here.</summary>
public static class SensorParts
{
    /// <summary>All of them.</summary>
    public static readonly IReadOnlyList<ISensorPart> All =
    [
        new Sht4xPart(),
        new Sht3xPart(),
        new Bme280Part(),
        new Mlx90614Part(),
        new TypedPiecePart(),
        new ContactInputPart(),
        new FilterPressurePart(),
        new MqttAirPart(),
    ];

    /// <summary>The kind of a configured name; null when there is none.</summary>
    public static ISensorPart? Find(string id) => All.FirstOrDefault(part => part.Id == id);
}
