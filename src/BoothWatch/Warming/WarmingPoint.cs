namespace BoothWatch.Warming;

/// <summary>One measurement of a piece and of the air around it.</summary>
/// <param name="AtS">When, s, on a steady clock.</param>
/// <param name="PieceC">Surface temperature of the piece, °C.</param>
/// <param name="AirC">Air temperature, °C.</param>
public readonly record struct WarmingPoint(double AtS, double PieceC, double AirC);
