using BoothWatch.Film;
using BoothWatch.Outlook;
using BoothWatch.Tests.Film;

namespace BoothWatch.Tests.Outlook;

/// <summary>Critical dew points of a clear coat, 1 part lacquer to 1 part ordinary thinner with 5 % of 2-butoxyethanol, by the film model.</summary>
internal static class ClearCoat
{
    public static CriticalDewPoints CriticalDewPoints() => new(FindC);

    /// <summary>Not a number outside the range of the film model.</summary>
    public static double FindC(double airC) => airC is >= -20 and <= 60
        ? CriticalHumidity.Find(TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned("ordinary thinner"), 5), airC)).DewPointC
        : double.NaN;
}
