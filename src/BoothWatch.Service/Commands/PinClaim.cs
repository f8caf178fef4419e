using System.Globalization;
using System.Net.Sockets;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Commands;

/// <summary>
/// The right to drive lamps of this board: one program a pin, whatever folder and page it has. Not every driver keeps two programs from
/// driving one pin, so it is held as a name in the kernel (an abstract Unix socket), which goes with the process however that ends.
/// </summary>
internal sealed class PinClaim : IDisposable
{
    /// <summary>The pins of this machine.</summary>
    public const string ThisBoard = "boothwatch";

    private readonly List<Socket> _held = [];

    private PinClaim(string? refusal = null) => Refusal = refusal;

    /// <summary>Why this program may not drive the lamps, with the fix; null when it may, or when there is no lamp or no way to tell.</summary>
    public string? Refusal { get; private init; }

    /// <summary>Claims the pins of a real light, for the life of this process or until disposed. Those of an emulated one are everybody's own.</summary>
    /// <param name="light">The wiring.</param>
    /// <param name="board">Whose pins they are.</param>
    public static PinClaim Take(LightOptions light, string board = ThisBoard)
    {
        PinClaim claim = new();
        if (SignalSourceWord.Parse(light.Source) != SignalSource.Real || !OperatingSystem.IsLinux())
        {
            return claim;
        }

        foreach ((string key, int? pin) in light.Pins().Where(pin => pin.Pin is not null))
        {
            Socket name = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
            claim._held.Add(name);
            try
            {
                name.Bind(new UnixDomainSocketEndPoint(string.Create(CultureInfo.InvariantCulture, $"\0{board}/gpio/{pin}")));
            }
            catch (SocketException taken) when (taken.SocketErrorCode == SocketError.AddressAlreadyInUse)
            {
                claim.Dispose();
                return new PinClaim($"GPIO {pin} ({key}) is driven by another BoothWatch on this machine; stop it first, or give each its own pins");
            }
            catch (SocketException)
            {
                // Without this way to tell, folder and page still do.
            }
        }

        return claim;
    }

    /// <summary>Gives the claim up.</summary>
    public void Dispose()
    {
        foreach (Socket name in _held)
        {
            name.Dispose();
        }

        _held.Clear();
    }
}
