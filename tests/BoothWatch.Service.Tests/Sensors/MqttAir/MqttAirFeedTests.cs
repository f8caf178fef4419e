using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Sensors.MqttAir;

/// <summary>From another sensor's message over a broker to a reading.</summary>
public sealed class MqttAirFeedTests : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly int _port = Mosquitto.FreePort();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Message_OfAnotherSensor_BecomesAReading()
    {
        await using MqttBooth booth = await StartAsync(("broker:port", $"{_port}"));
        await CheckAsync(booth);
    }

    [MosquittoFact]
    public async Task Message_OverTheShopsOwnBroker_BecomesAReading()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync("allow_anonymous true");
        await using MqttBooth booth = await StartAsync(("use", "external"), ("host", "127.0.0.1"), ("port", $"{broker.Port}"));
        await CheckAsync(booth, broker.Port);
    }

    private async Task CheckAsync(MqttBooth booth, int? port = null)
    {
        ISensor sensor = booth.Get<SensorSet>().Single(candidate => candidate.Name == "intakeAir");
        await Eventually.TrueAsync(() => booth.Connections == 1, "connected");
        await using MqttReader yard = await MqttReader.ConnectAsync(port ?? _port, "nothing");
        Assert.Contains("no message has come yet", sensor.Read().NoReadingCause, StringComparison.Ordinal);

        await yard.WriteAsync("yard/air", """{"t":64.4,"rh":71}""");
        await Eventually.TrueAsync(() => sensor.Read().NoReadingCause is null, "the reading");

        // 64.4 °F = 18 °C by definition.
        Assert.Equal(
            [(Quantity.IntakeTemperature, 18.0), (Quantity.IntakeHumidity, 71.0)],
            sensor.Read().Samples.Select(sample => (sample.Quantity, Math.Round(sample.Value, 9))));
    }

    [Fact]
    public async Task Message_KeptByTheBrokerFromBefore_IsNoReading_AndTheSameSentLiveIsOne()
    {
        int port = Mosquitto.FreePort();
        await using MqttBooth keeper = await MqttBooth.EmbeddedAsync(_folder, port, ("deviceId", "keeper"));
        await CheckKeptAsync(port);
    }

    [MosquittoFact]
    public async Task Message_KeptByTheShopsOwnBrokerFromBefore_IsNoReading_AndTheSameSentLiveIsOne()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync("allow_anonymous true");
        await CheckKeptAsync(broker.Port);
    }

    private async Task CheckKeptAsync(int port)
    {
        const string Air = """{"t":64.4,"rh":71}""";
        await using MqttReader yard = await MqttReader.ConnectAsync(port, "nothing");
        await yard.WriteAsync("yard/air", Air, retain: true);
        await using MqttBooth booth = await StartAsync(("use", "external"), ("host", "127.0.0.1"), ("port", $"{port}"));
        ISensor sensor = booth.Get<SensorSet>().Single(candidate => candidate.Name == "intakeAir");

        await Eventually.TrueAsync(
            () => sensor.Read().NoReadingCause?.Contains("its age is not known", StringComparison.Ordinal) == true, "the kept message");
        await yard.WriteAsync("yard/air", Air, retain: true);

        await Eventually.TrueAsync(() => sensor.Read().NoReadingCause is null, "the reading");
    }

    private Task<MqttBooth> StartAsync(params (string Key, string Value)[] settings) => MqttBooth.StartAsync(
        _folder,
        services =>
        {
            services.AddSensing();
            services.Configure<SensorsOptions>(options => options.IntakeAir = new SensorOptions
            {
                Part = "mqtt",
                Mqtt =
                {
                    Temperature = { Topic = "yard/air", ValuePointer = "/t" },
                    Humidity = { Topic = "yard/air", ValuePointer = "/rh" },
                    TemperatureUnit = "F",
                },
            });
            services.AddSingleton<IMqttSubscriber, MqttAirFeed>();
        },
        settings);
}
