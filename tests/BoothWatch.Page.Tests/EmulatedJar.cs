using System.Diagnostics;
using BoothWatch.Checks;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Page.Tests;

/// <summary>
/// The air around an emulated chip that a test carries about: in the booth, or in a closed jar whose air nears that over its salt as
/// 1 - exp(-t/τ). The chip measures it with its own error, noise and registers.
/// </summary>
internal sealed class EmulatedJar
{
    private const double TemperatureC = 23.4;
    private const double BoothPct = 52;
    private static readonly TimeSpan TimeConstant = TimeSpan.FromMilliseconds(400);

    private readonly Lock _one = new();
    private double _fromPct = BoothPct;
    private double _toPct = BoothPct;
    private long _since = Stopwatch.GetTimestamp();

    /// <summary>By how much the part has drifted, % of relative humidity.</summary>
    public double OffPct { get; set; }

    /// <summary>What the chip's own air would be if it measured truly: its error is put on top, as a drifted part has it.</summary>
    public AirSignal Air
    {
        get
        {
            lock (_one)
            {
                return new AirSignal(TemperatureC, NowPct + OffPct, 101_300);
            }
        }
    }

    private double NowPct => _toPct + ((_fromPct - _toPct) * Math.Exp(-Stopwatch.GetElapsedTime(_since) / TimeConstant));

    /// <summary>The lid is closed over a salt; null: back in the booth.</summary>
    public void Put(SaltPoint? salt)
    {
        lock (_one)
        {
            (_fromPct, _toPct, _since) = (NowPct, salt?.HumidityPct(TemperatureC) ?? BoothPct, Stopwatch.GetTimestamp());
        }
    }
}
