using System.Globalization;

namespace BoothWatch.Service.Sensors.TypedPiece;

/// <summary>The typed piece temperature in the configuration. The value itself is no setting: a restart would make an old one new.</summary>
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
        if (options.HoldS is not (>= ShortestHoldS and <= LongestHoldS))
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{key}:holdS is {options.HoldS}; give seconds from {ShortestHoldS} to {LongestHoldS}, for example 1800"));
        }
    }

    /// <inheritdoc/>
    public ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new TypedPieceSensor(role.Name, wiring.Typed, TimeSpan.FromSeconds(options.HoldS));
}
