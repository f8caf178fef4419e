using BoothWatch.Service.Commands;
using BoothWatch.Service.Outputs.Light;

namespace BoothWatch.Service.Tests.Commands;

public sealed class PinClaimTests
{
    // A name of its own: the kernel's are those of the whole machine, where other tests may run.
    private readonly string _board = Guid.NewGuid().ToString();

    [Fact]
    public void Take_OfAPinThatAnotherHolds_IsRefusedWithItsName_AndFreeAfterwards()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using (PinClaim held = PinClaim.Take(Real(17, 27, 22), _board))
        {
            Assert.Null(held.Refusal);
            using PinClaim second = PinClaim.Take(Real(5, 6, 22), _board);
            Assert.Equal("GPIO 22 (light:redPin) is driven by another BoothWatch on this machine; stop it first, or give each its own pins", second.Refusal);

            // What was refused holds nothing back, and other pins are another's own.
            using PinClaim other = PinClaim.Take(Real(5, 6, 13), _board);
            Assert.Null(other.Refusal);
        }

        using PinClaim after = PinClaim.Take(Real(17, 27, 22), _board);
        Assert.Null(after.Refusal);
    }

    [Fact]
    public void Take_OfAnEmulatedLight_IsEverybodysOwn()
    {
        using PinClaim real = PinClaim.Take(Real(17, 27, 22), _board);
        using PinClaim emulated = PinClaim.Take(new LightOptions(), _board);
        Assert.Null(emulated.Refusal);
    }

    private static LightOptions Real(int green, int yellow, int red) => new() { Source = "real", GreenPin = green, YellowPin = yellow, RedPin = red };
}
