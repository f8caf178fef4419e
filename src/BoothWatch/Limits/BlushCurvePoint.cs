namespace BoothWatch.Limits;

/// <summary>Chance that a coat of one margin blushes in this shop, with its 90 % band; 0 to 1.</summary>
/// <param name="MarginC">Blush margin by the model, °C.</param>
/// <param name="Low">Lower end.</param>
/// <param name="Likely">Mean.</param>
/// <param name="High">Upper end.</param>
public sealed record BlushCurvePoint(double MarginC, double Low, double Likely, double High);
