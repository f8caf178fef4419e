namespace BoothWatch.Service.Page;

/// <summary>Where the scripted shop day stands.</summary>
/// <param name="ShopClock">Time of day in the script, for example <c>13:40</c>.</param>
/// <param name="Phase">What happens there, for example <c>rain arrives</c>.</param>
public sealed record DemoMoment(string ShopClock, string Phase);
