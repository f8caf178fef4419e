using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Tests.Outputs.Series;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public sealed class ChangeCursorTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Cursor_OfAFreshJournal_IsAtTheStart()
    {
        ChangeCursor cursor = new(_folder.Location.Path);

        Assert.Equal((false, 0L), (cursor.Existed, cursor.Id));
    }

    [Fact]
    public void Cursor_Advanced_IsThereAfterARestart()
    {
        DateTime time = TestAssessment.Start.UtcDateTime.AddMilliseconds(7);
        new ChangeCursor(_folder.Location.Path).Advance(42, time);

        ChangeCursor again = new(_folder.Location.Path);

        Assert.Equal((true, 42L, time), (again.Existed, again.Id, again.Time));
        Assert.Equal(DateTimeKind.Utc, again.Time.Kind);
    }

    [Fact]
    public void Cursor_Damaged_BeginsAtTheStartSoThatNothingIsLost()
    {
        new ChangeCursor(_folder.Location.Path).Advance(42, TestAssessment.Start.UtcDateTime);
        File.WriteAllText(Path.ChangeExtension(_folder.Location.Path, ".mqtt-cursor"), "4\02 \0\0");

        ChangeCursor again = new(_folder.Location.Path);

        Assert.Equal((true, 0L), (again.Existed, again.Id));
    }
}
