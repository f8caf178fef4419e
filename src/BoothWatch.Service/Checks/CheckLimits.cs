using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>When readings count as settled: in the jar, back in the booth, and back there from a damp jar.</summary>
/// <param name="Jar">In the jar.</param>
/// <param name="Back">Back in the booth.</param>
/// <param name="BackFromDamp">Back in the booth after more than <see cref="DampFromPct"/>: the polymer of the part gives water back slowly.</param>
/// <param name="GradientC">How much the salt and the sensor may differ in temperature, ± °C.</param>
internal sealed record CheckLimits(SettlingLimits Jar, SettlingLimits Back, SettlingLimits BackFromDamp, double GradientC)
{
    /// <summary>Jars damper than this are left behind more slowly, % of relative humidity. Own choice.</summary>
    public const double DampFromPct = 80;

    // Own choice.
    private const double TimesAsLong = 3;
    private const double BackTemperatureC = 1;
    private static readonly TimeSpan LongestGap = TimeSpan.FromMinutes(10);

    /// <summary>The limits that the options name.</summary>
    /// <param name="options">The options.</param>
    /// <param name="speed">Seconds of the shop in a second of the clock: 1, or more where a scripted day is compressed.</param>
    public static CheckLimits Of(ChecksOptions options, double speed = 1)
    {
        TimeSpan back = TimeSpan.FromMinutes(options.BackSteadyMinutes) / speed;
        return new CheckLimits(
            new SettlingLimits(TimeSpan.FromHours(options.JarHours) / speed, TimeSpan.FromMinutes(options.JarSteadyMinutes) / speed, options.JarHumidityChangePct, options.JarTemperatureChangeC, LongestGap),
            Back(back),
            Back(back * TimesAsLong),
            options.GradientC);

        SettlingLimits Back(TimeSpan steady) => new(steady, steady, options.BackHumidityChangePct, BackTemperatureC, LongestGap);
    }
}
