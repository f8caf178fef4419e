using System.Globalization;

namespace BoothWatch.Service.Sensors.TypedPiece;

/// <summary>The typed piece temperature in the configuration.</summary>
public sealed class TypedPiecePart : ISensorPart
{
    private const double ShortestHoldS = 60;
    private const double LongestHoldS = 86_400;

    /// <inheritdoc/>
    public string Id => "typed";

    /// <inheritdoc/>
    public IReadOnlyList<SensorRole> Roles { get; } = [SensorRole.Piece];

    /// <summary>Never: a person measured a real piece.</summary>
    public bool? IsEmulated(SensorOptions options) => false;

    /// <inheritdoc/>
    public void Check(string key, SensorOptions options, ICollection<string> errors)
    {
        if (options.TemperatureC is { } typed && typed is not (>= TypedPieceTemperature.LowestC and <= TypedPieceTemperature.HighestC))
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{key}:temperatureC is {typed}; give °C from {TypedPieceTemperature.LowestC} to {TypedPieceTemperature.HighestC}, for example 18.5, or leave it out"));
        }

        if (options.HoldS is not (>= ShortestHoldS and <= LongestHoldS))
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{key}:holdS is {options.HoldS}; give seconds from {ShortestHoldS} to {LongestHoldS}, for example 1800"));
        }
    }

    /// <inheritdoc/>
    public ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring)
    {
        if (options.TemperatureC is { } temperatureC)
        {
            wiring.Typed.Enter(temperatureC);
        }

        return new TypedPieceSensor(role.Name, wiring.Typed, TimeSpan.FromSeconds(options.HoldS));
    }
}
