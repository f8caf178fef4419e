using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Materials;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>Schedules as data.</summary>
public sealed class SchedulesLoaderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-schedules-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    // Common practice, no source: flash, clear, flash, four hours; nothing coarser than 800; a week before buffing.
    [Fact]
    public void Shipped_TouchUp_IsTheCommonRound()
    {
        Schedule touchUp = SchedulesLoader.Load(Path.Combine(AppContext.BaseDirectory, "config", "schedules")).Schedules["touch-up"];
        Assert.Equal([CoatKind.Flash, CoatKind.Clear, CoatKind.Flash], touchUp.Round.Select(step => step.Coat));
        Assert.Equal(TimeSpan.FromHours(4), touchUp.Round[^1].Wait);
        Assert.Equal(800, touchUp.SandNoCoarserThanGrit);
        Assert.Equal(TimeSpan.FromDays(7), touchUp.HangBeforeBuffing);
        Assert.Equal("common practice, no source", touchUp.Basis);
    }

    [Fact]
    public void Schedule_WithErrors_NamesThemAll()
    {
        File.WriteAllText(Path.Combine(_folder, "a.json"), """{ "id": "a", "description": "d", "basis": "b", "round": [ { "coat": "primer", "waitMinutes": -1 } ], "rounds": 1.5, "softHours": 24, "buffing": 1 }""");
        File.WriteAllText(Path.Combine(_folder, "b.json"), "{");
        MaterialsException wrong = Assert.Throws<MaterialsException>(() => SchedulesLoader.Load(_folder));
        Assert.Contains(wrong.Errors, error => error.Contains("round[0].coat is primer", StringComparison.Ordinal));
        Assert.Contains(wrong.Errors, error => error.Contains("round[0].waitMinutes is -1", StringComparison.Ordinal));
        Assert.Contains(wrong.Errors, error => error.Contains("rounds is 1.5", StringComparison.Ordinal));
        Assert.Contains(wrong.Errors, error => error.Contains("buffing", StringComparison.Ordinal));
        Assert.Contains(wrong.Errors, error => error.StartsWith("b.json: not valid JSON", StringComparison.Ordinal));
    }

    [Fact]
    public void Folder_ThatIsNotThere_HasNoSchedules() => Assert.Empty(SchedulesLoader.Load(Path.Combine(_folder, "none")).Schedules);
}
