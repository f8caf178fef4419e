namespace BoothWatch.Outlook;

/// <summary>Booth and intake at one minute.</summary>
/// <param name="AtH">When, hours on any steady clock.</param>
/// <param name="BoothRatio">Humidity ratio of the booth, kg/kg.</param>
/// <param name="IntakeRatio">Humidity ratio of the air drawn in, kg/kg.</param>
public readonly record struct RoomPoint(double AtH, double BoothRatio, double IntakeRatio);
