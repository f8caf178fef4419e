using BoothWatch.Readings;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Tests.Assessing;

/// <summary>A sensor that answers what the test says.</summary>
internal sealed class ScriptedSensor(string name, params Quantity[] quantities) : ISensor
{
    public string Name => name;

    public string Description { get; set; } = $"{name} of a test";

    public IReadOnlyList<Quantity> Quantities => quantities;

    public bool IsEmulated => false;

    public TimeSpan? Hold { get; init; }

    public Func<SensorAnswer> Answer { get; set; } = () => SensorAnswer.NoReading("not asked to answer");

    public int Asked { get; private set; }

    public SensorAnswer Read()
    {
        Asked++;
        return Answer();
    }

    public void Dispose()
    {
    }
}
