namespace BoothWatch.Outlook;

/// <summary>Booth, intake and fan in one minute.</summary>
/// <param name="AtH">When, hours on any steady clock.</param>
/// <param name="BoothRatio">Humidity ratio of the booth, kg/kg; null where not known.</param>
/// <param name="IntakeRatio">Humidity ratio of the air drawn in, kg/kg; null where not known.</param>
/// <param name="FanOn">Whether the exhaust is proven to run; null where not known.</param>
public readonly record struct RoomMinute(double AtH, double? BoothRatio, double? IntakeRatio, bool? FanOn);
