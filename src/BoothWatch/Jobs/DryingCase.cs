using BoothWatch.Film;

namespace BoothWatch.Jobs;

/// <summary>A coat in one air, as a drying run takes it.</summary>
/// <param name="Conditions">The coat and its surroundings.</param>
/// <param name="VapourPressurePa">Partial pressure of water vapour in the air, Pa.</param>
/// <param name="RelativeHumidityPct">The same as relative humidity, %, for people.</param>
/// <param name="RetarderPct">Retarder level of the mix, %, for people.</param>
public sealed record DryingCase(CoatConditions Conditions, double VapourPressurePa, double RelativeHumidityPct, double RetarderPct);
