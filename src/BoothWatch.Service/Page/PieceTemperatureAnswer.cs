namespace BoothWatch.Service.Page;

/// <summary>A piece temperature that was taken.</summary>
/// <param name="TemperatureC">The value, °C.</param>
/// <param name="HoldS">How long it holds from now on, s; then the piece counts as unknown.</param>
public sealed record PieceTemperatureAnswer(double TemperatureC, double HoldS);
