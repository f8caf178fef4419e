using System.Runtime.InteropServices;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The error stream of the process itself, which native code writes to (POSIX).</summary>
internal static class ErrorStream
{
    [DllImport("libc", EntryPoint = "dup")]
    public static extern int Dup(int descriptor);

    [DllImport("libc", EntryPoint = "dup2")]
    public static extern int Dup2(int from, int to);

    [DllImport("libc", EntryPoint = "close")]
    public static extern int Close(int descriptor);
}
