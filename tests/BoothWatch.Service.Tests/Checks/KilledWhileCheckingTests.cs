using BoothWatch.Readings;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Tests.Outputs.Series;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>Kills a process that begins checks with SIGKILL: whoever was told to put a sensor into a jar finds it held after the restart.</summary>
public sealed class KilledWhileCheckingTests
{
    [Fact]
    public async Task Begin_ThatWasAnswered_HoldsAfterAKill_ByTheJournalAndByTheFileAlone()
    {
        using var folder = new JournalFolder();
        Random random = new(20261125);
        HashSet<string> told = [];
        for (int kill = 0; kill < 3; kill++)
        {
            told.UnionWith(await KilledWriter.RunAsync(
                CheckWriter.Command, folder.Location.Path, TimeSpan.FromMilliseconds(random.Next(50, 400)), patience: TimeSpan.FromSeconds(90)));

            CheckBook both = CheckWriter.Book(folder.Journal(), folder.Location);
            Assert.All(told, sensor => Assert.Equal(ReadingQuality.BeingChecked, both.Holds.Of(sensor)?.Quality));
            HoldLine[] lines = [.. new HoldFile(folder.Location).Read()!];
            Assert.Superset(told, lines.Select(line => line.Sensor).ToHashSet());
            HashSet<string> entered = [.. new CheckStore(null, folder.Location).All().Select(entry => entry.Sensor)];
            Assert.Superset(told, entered);
            Assert.InRange(lines.Length, told.Count, told.Count + kill + 1); // at most one a kill that nobody was told of
        }

        Assert.True(told.Count > 5, $"only {told.Count} checks were begun: the kills proved little");
    }
}
