using System.Device.Gpio;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>What a program has done with one opened virtual pin.</summary>
internal sealed class VirtualPin
{
    /// <summary>Mode of the pin.</summary>
    public PinMode Mode { get; set; } = PinMode.Input;

    /// <summary>Level that the program drives; null when it drives none.</summary>
    public PinValue? Level { get; set; }

    /// <summary>Who wants to know of which edges.</summary>
    public List<(PinEventTypes Edges, PinChangeEventHandler Handler)> Handlers { get; } = [];

    /// <summary>All who want to know of an edge; null when nobody does.</summary>
    public PinChangeEventHandler? HandlersFor(PinEventTypes edge) => (PinChangeEventHandler?)Delegate.Combine(
        [.. Handlers.Where(entry => (entry.Edges & edge) != 0).Select(entry => entry.Handler)]);
}
