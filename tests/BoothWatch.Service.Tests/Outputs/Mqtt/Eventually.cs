using System.Diagnostics;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>Waits for what another process or thread brings about, with a generous end.</summary>
internal static class Eventually
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(20);

    public static async Task TrueAsync(Func<bool> condition, string what)
    {
        Stopwatch watch = Stopwatch.StartNew();
        while (!condition())
        {
            Assert.True(watch.Elapsed < Limit, $"waited {Limit.TotalSeconds} s in vain until {what}");
            await Task.Delay(Look, TimeProvider.System);
        }
    }
}
