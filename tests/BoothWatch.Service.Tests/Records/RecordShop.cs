using BoothWatch.Readings;
using BoothWatch.Records;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Records;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Records;

/// <summary>A journal in a temporary folder with what makes records of it.</summary>
internal sealed class RecordShop : IDisposable
{
    private readonly JournalLocation _location;

    public RecordShop(bool isDemo = false)
    {
        _location = Folder.Location with { IsDemo = isDemo };
        Store = new JobStore(Folder.Journal(), Folder.Location);
    }

    public JournalFolder Folder { get; } = new();

    public JobStore Store { get; }

    public SensorCheck? LastCheck { get; set; }

    public RecordMaker Maker => new(
        _location,
        new RecordAirQuery(_location),
        new SeriesQuery(_location),
        [new StubSensor()],
        (_, _) => LastCheck,
        Options.Create(new BoothOptions()),
        Folder.Time);

    public void Dispose() => Folder.Dispose();

    private sealed class StubSensor : ISensor
    {
        public string Name => "boothAir";

        public string Description => "SHT4x at 0x44 on bus 1";

        public IReadOnlyList<Quantity> Quantities => [Quantity.BoothTemperature, Quantity.BoothHumidity];

        public bool IsEmulated => false;

        public SensorAnswer Read() => throw new InvalidOperationException("a record asks no sensor");

        public void Dispose()
        {
        }
    }
}
