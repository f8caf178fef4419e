namespace BoothWatch.Service.Page;

/// <summary>Where the scripted shop day stands.</summary>
/// <param name="ShopClock">Time of day in the script, for example <c>13:40</c>.</param>
/// <param name="Phase">What happens there, for example <c>rain arrives</c>.</param>
/// <param name="Speed">Shop seconds that pass in a real second.</param>
/// <param name="NewDay">True for the first seconds of every shop day after the first: the script has just begun again.</param>
public sealed record DemoMoment(string ShopClock, string Phase, double Speed = 1, bool NewDay = false);
