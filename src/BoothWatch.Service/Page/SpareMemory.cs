using System.Runtime.InteropServices;

namespace BoothWatch.Service.Page;

/// <summary>Keeps the memory of the process small: one heap in the C library, and what is free given back to the system after work that took much and comes once.</summary>
internal static partial class SpareMemory
{
    // M_ARENA_MAX in malloc.h of the GNU C library.
    private const int ArenaMax = -8;

    /// <summary>
    /// Has the C library keep one heap for all threads instead of one for each of the first few, which fragment each for itself. Works for
    /// threads that have not started yet, so it comes first of all.
    /// </summary>
    public static void OneHeap()
    {
        if (OperatingSystem.IsLinux())
        {
            try
            {
                _ = SetOption(ArenaMax, 1);
            }
            catch (EntryPointNotFoundException)
            {
                // As below.
            }
        }
    }

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

    [LibraryImport("libc", EntryPoint = "mallopt")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetOption(int option, int value);

    [LibraryImport("libc", EntryPoint = "malloc_trim")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Trim(nuint pad);
}
