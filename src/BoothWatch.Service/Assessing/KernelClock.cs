using System.Runtime.InteropServices;

namespace BoothWatch.Service.Assessing;

/// <summary>Asks the Linux kernel whether something (NTP, PTP, GNSS) disciplines its clock.</summary>
internal static partial class KernelClock
{
    // adjtimex(2): the state TIME_ERROR says "clock not synchronised".
    private const int TimeError = 5;

    // struct timex is 208 bytes on 64-bit Linux and smaller on 32-bit; modes = 0 only reads.
    private const int TimexBytes = 256;

    /// <summary>True when the kernel says that its clock is synchronised; false when not, or when this is no Linux.</summary>
    public static bool IsSynchronised()
    {
        if (!OperatingSystem.IsLinux())
        {
            return false;
        }

        Span<byte> timex = stackalloc byte[TimexBytes];
        timex.Clear();
        int state = AdjustTimex(ref MemoryMarshal.GetReference(timex));
        return state is >= 0 and not TimeError;
    }

    [LibraryImport("libc", EntryPoint = "adjtimex", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int AdjustTimex(ref byte timex);
}
