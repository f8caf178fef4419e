using System.Runtime.InteropServices;

namespace BoothWatch.Service.Page;

/// <summary>Gives memory back to the system after work that took much and comes once.</summary>
internal static partial class SpareMemory
{
    /// <summary>
    /// Collects what is free on the managed heap, and has the C library return what the compiler of the runtime has freed, which it
    /// would keep. Takes about a tenth of a second, in which everything else stands still.
    /// </summary>
    public static void GiveBack()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        if (OperatingSystem.IsLinux())
        {
            try
            {
                _ = Trim(0);
            }
            catch (EntryPointNotFoundException)
            {
                // Not every C library has it (musl has not), and then it keeps little anyway.
            }
        }
    }

    [LibraryImport("libc", EntryPoint = "malloc_trim")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Trim(nuint pad);
}
