namespace BoothWatch.Service.Checks;

/// <summary>A salt.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Formula">Its formula.</param>
/// <param name="HumidityPct">Relative humidity over it at 25 °C, %.</param>
public sealed record ChecksSalt(string Id, string Name, string Formula, double HumidityPct);
