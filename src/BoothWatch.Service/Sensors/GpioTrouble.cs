namespace BoothWatch.Service.Sensors;

/// <summary>Says why a GPIO pin could not be used: the bindings often give a bare "Exception while calling libgpiod" and keep the cause inside.</summary>
internal static class GpioTrouble
{
    private const string Bare = "Exception while calling libgpiod";

    /// <summary>The causes from the outside in, and for those of the chip itself what to check.</summary>
    public static string Explain(Exception fault)
    {
        List<string> causes = [];
        bool ofTheChip = false;
        for (Exception? inner = fault; inner is not null; inner = inner.InnerException)
        {
            // The runtime's own text on a missing library lists every place that it looked at, over a dozen lines.
            string message = inner is DllNotFoundException ? "the library libgpiod is not installed, or cannot be loaded" : inner.Message.TrimEnd('.');
            ofTheChip |= message.StartsWith(Bare, StringComparison.Ordinal) || inner is DllNotFoundException or UnauthorizedAccessException;
            if (!causes.Contains(message))
            {
                causes.Add(message);
            }
        }

        string cause = string.Join(": ", causes);
        return ofTheChip
            ? $"{cause}; check that the machine has GPIO (ls /dev/gpiochip*), that the system's libgpiod is installed, that this user may use the chip (group gpio) and that no other program holds the pin (gpioinfo)"
            : cause;
    }
}
