using BoothWatch.Service.Assessing;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Assessing;

public class ClockProofTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void IsProven_OnABoardThatStartsIn1970_IsFalseEvenWhenTrusted() =>
        Assert.False(new ClockProof(new FakeTimeProvider(DateTimeOffset.UnixEpoch), mustBeSynchronised: false, () => true).IsProven());

    [Theory]
    [InlineData(true, false, false)]
    [InlineData(true, true, true)]
    [InlineData(false, false, true)]
    public void IsProven_ByTheKernel_OnlyWhereAsked(bool mustBeSynchronised, bool isSynchronised, bool expected) =>
        Assert.Equal(expected, new ClockProof(new FakeTimeProvider(Now), mustBeSynchronised, () => isSynchronised).IsProven());

    [Fact]
    public void IsProven_OnceSynchronised_StaysProvenWithoutTheNetwork()
    {
        bool synchronised = true;
        ClockProof clock = new(new FakeTimeProvider(Now), mustBeSynchronised: true, () => synchronised);
        Assert.True(clock.IsProven());

        synchronised = false;

        Assert.True(clock.IsProven());
    }

    // The tree is that of Linux, Documentation/ABI/testing/sysfs-class-rtc.
    [Theory]
    [InlineData("1\n", "1795597200\n", true)] // 2026-11-25
    [InlineData("0\n", "1795597200\n", false)] // there, but it set nothing: a module that came late
    [InlineData("1\n", "946684800\n", false)] // 2000-01-01: its battery is dead
    [InlineData("1\n", null, false)] // refuses to be read
    [InlineData(null, null, false)]
    public void BatteryClock_OnASysfsTree_VouchesWhenItSetTheSystemClock(string? hctosys, string? sinceEpoch, bool expected)
    {
        DirectoryInfo sysfs = Directory.CreateTempSubdirectory("boothwatch-sysfs-");
        try
        {
            DirectoryInfo clock = sysfs.CreateSubdirectory("class/rtc/rtc0");
            Write(clock, "hctosys", hctosys);
            Write(clock, "since_epoch", sinceEpoch);
            Assert.Equal(expected, BatteryClock.SetTheSystemClock(sysfs.FullName, ClockProof.EarliestPlausible));
        }
        finally
        {
            sysfs.Delete(recursive: true);
        }
    }

    [Fact]
    public void BatteryClock_OnABoardWithoutOne_DoesNotVouch() =>
        Assert.False(BatteryClock.SetTheSystemClock(Path.Combine(Path.GetTempPath(), "boothwatch-no-such-sysfs"), ClockProof.EarliestPlausible));

    private static void Write(DirectoryInfo clock, string attribute, string? value)
    {
        if (value is not null)
        {
            File.WriteAllText(Path.Combine(clock.FullName, attribute), value);
        }
    }

    [Fact]
    public void KernelClock_OnThisMachine_Answers() =>
        // Whether it is synchronised depends on the machine; that the call works does not.
        Assert.Equal(KernelClock.IsSynchronised(), KernelClock.IsSynchronised());
}
