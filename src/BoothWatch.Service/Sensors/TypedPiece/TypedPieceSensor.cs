using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors.TypedPiece;

/// <summary>Piece temperature as typed in by a person; it holds for a while and then counts as unknown.</summary>
/// <param name="name">Configured name.</param>
/// <param name="typed">Where people type it.</param>
/// <param name="hold">How long a value holds.</param>
/// <remarks>
/// The uncertainty is that of a hand-held thermometer on a surface, ±1 °C, and of a piece that goes on warming while the
/// value is used, ±1 °C (common practice, no source).
/// </remarks>
public sealed class TypedPieceSensor(string name, TypedPieceTemperature typed, TimeSpan hold) : ISensor
{
    private static readonly double UncertaintyC = Uncertainty.FromTolerances(1, 1);

    /// <summary>How long a value holds.</summary>
    public TimeSpan Hold => hold;

    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public string Description => string.Create(CultureInfo.InvariantCulture, $"typed in by hand, holds for {hold.TotalMinutes:0} min");

    /// <inheritdoc/>
    public bool IsEmulated => false;

    /// <inheritdoc/>
    TimeSpan? ISensor.Hold => hold;

    /// <inheritdoc/>
    public IReadOnlyList<Quantity> Quantities { get; } = [Quantity.PieceTemperature];

    /// <inheritdoc/>
    public SensorAnswer Read() => typed.Last switch
    {
        null => SensorAnswer.NoReading("no piece temperature has been typed in: measure the piece and type it in"),
        { Age: TimeSpan age } when age >= hold => SensorAnswer.NoReading(string.Create(
            CultureInfo.InvariantCulture,
            $"the typed piece temperature is {age.TotalMinutes:0} min old, it holds for {hold.TotalMinutes:0} min: measure the piece and type it in again")),
        var (temperatureC, age) => SensorAnswer.Of(new Sample(Quantity.PieceTemperature, temperatureC, UncertaintyC) { Age = age }),
    };

    /// <inheritdoc/>
    public void Dispose()
    {
    }
}
