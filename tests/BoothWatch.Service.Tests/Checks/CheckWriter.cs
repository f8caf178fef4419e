using BoothWatch.Service.Checks;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Assessing;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>The process that the kill test kills: begins a check of one sensor after the other and prints its name once the person would be told to go on.</summary>
internal static class CheckWriter
{
    public const string Command = "begin-checks";

    public const int Sensors = 10_000;

    public static string NameOf(int number) => $"sensor{number}";

    public static async Task<int> Run(string path)
    {
        JournalLocation location = new(path, IsDemo: false);
        using var journal = new Journal(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        CheckBook book = Book(journal, location);
        await using var acknowledged = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        for (int number = 0; number < Sensors; number++)
        {
            if (book.Holds.Of(NameOf(number)) is null)
            {
                book.Begin(NameOf(number), spareMayStandIn: false);
                await acknowledged.WriteLineAsync(NameOf(number));
            }
        }

        await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System);
        return 0;
    }

    public static CheckBook Book(Journal journal, JournalLocation location) => new(
        new CheckStore(journal, location),
        new HoldFile(location),
        Enumerable.Range(0, Sensors).Select(number => new ScriptedSensor(NameOf(number), Readings.Quantity.BoothTemperature, Readings.Quantity.BoothHumidity)),
        CheckLimits.Of(new ChecksOptions()),
        TimeProvider.System,
        NullLogger<CheckBook>.Instance);
}
