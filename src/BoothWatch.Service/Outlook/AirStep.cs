namespace BoothWatch.Service.Outlook;

/// <summary>A step of the air in the last hour.</summary>
/// <param name="AtIntake">True when the intake sensor saw it; false: the booth did.</param>
/// <param name="ByRatio">By how much, kg of water a kg of dry air; above 0 it has become damper.</param>
/// <param name="HeadingForDewPointC">Dew point that the booth is heading for, °C; null where that is not known.</param>
public sealed record AirStep(bool AtIntake, double ByRatio, double? HeadingForDewPointC);
