using System.Runtime.InteropServices;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The error stream of the process itself, which native code writes to (POSIX).</summary>
internal static partial class ErrorStream
{
    [LibraryImport("libc", EntryPoint = "dup")]
    public static partial int Dup(int descriptor);

    [LibraryImport("libc", EntryPoint = "dup2")]
    public static partial int Dup2(int from, int to);

    [LibraryImport("libc", EntryPoint = "close")]
    public static partial int Close(int descriptor);
}
