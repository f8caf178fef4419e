using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>What the page shows beside the assessment. The composition root fills it; everything has a quiet default.</summary>
public sealed record PageSources
{
    /// <summary>Name of the shop.</summary>
    public string Shop { get; init; } = "";

    /// <summary>Name of the booth.</summary>
    public string Booth { get; init; } = "";

    /// <summary>Unit of the temperatures on the page and its chart; the JSON stays in °C.</summary>
    public TemperatureUnit TemperatureUnit { get; init; }

    /// <summary>The configured sensors.</summary>
    public IReadOnlyList<SensorLine> Sensors { get; init; } = [];

    /// <summary>Where the piece temperature is typed in; null unless the piece is measured by hand.</summary>
    public PieceEntry? PieceEntry { get; init; }

    /// <summary>Asks how the outputs fare. Called on every answer, so it must be cheap.</summary>
    public Func<IReadOnlyList<OutputLine>> Outputs { get; init; } = () => [];

    /// <summary>Asks how the outputs fare, in figures. Called on every answer, so it must be cheap.</summary>
    public Func<IReadOnlyList<OutputStatus>> Health { get; init; } = () => [];

    /// <summary>Asks where the scripted day stands; null when there is none. Called on every answer, so it must be cheap.</summary>
    public Func<DemoMoment?> Demo { get; init; } = () => null;

    /// <summary>Asks for a remark on a sensor that reads well, by its name; null for none. Called on every answer, so it must be cheap.</summary>
    public Func<string, string?> Remark { get; init; } = _ => null;

    /// <summary>True where jobs and coats are served: the page then shows the running job and marks coats in its chart.</summary>
    public bool HasJobs { get; init; }

    /// <summary>True where the outlook is served: the page then shows it.</summary>
    public bool HasOutlook { get; init; }

    /// <summary>True while at least one sensor is emulated.</summary>
    public bool AnyEmulated => Sensors.Any(s => s.Emulated);

    /// <summary>Describes the configured sensors.</summary>
    public static IReadOnlyList<SensorLine> Describe(IEnumerable<ISensor> sensors) =>
        [.. sensors.Select(s => new SensorLine(
            s.Name, s.Description, s.IsEmulated, [.. s.Quantities]))];
}
