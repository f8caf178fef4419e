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

    [Fact]
    public void KernelClock_OnThisMachine_Answers() =>
        // Whether it is synchronised depends on the machine; that the call works does not.
        Assert.Equal(KernelClock.IsSynchronised(), KernelClock.IsSynchronised());
}
