using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Tests.Sensors;

public sealed class GpioTroubleTests
{
    [Fact]
    public void Explain_GivesTheCauseInside_AndWhatToCheck()
    {
        var fault = new IOException("Exception while calling libgpiod.", new DllNotFoundException("Unable to load it:\n/here\n/there\n"));

        string text = GpioTrouble.Explain(fault);

        Assert.StartsWith("Exception while calling libgpiod: the library libgpiod is not installed, or cannot be loaded; check that ", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text);
        Assert.Contains("/dev/gpiochip*", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Explain_WithABareMessage_SaysAtLeastWhatToCheck() =>
        Assert.Contains("; check that ", GpioTrouble.Explain(new IOException("Exception while calling libgpiod")), StringComparison.Ordinal);

    [Fact]
    public void Explain_WithACauseThatSaysAll_AddsNothing() =>
        Assert.Equal("the pin is in use by something else", GpioTrouble.Explain(new InvalidOperationException("the pin is in use by something else")));
}
