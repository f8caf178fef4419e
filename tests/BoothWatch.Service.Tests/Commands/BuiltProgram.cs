using System.Diagnostics;

namespace BoothWatch.Service.Tests.Commands;

/// <summary>The built program in a process of its own.</summary>
internal sealed class BuiltProgram : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>A shell lets what it starts in the background ignore Ctrl-C, and that is inherited by the tests and by what they start.</summary>
    private static readonly string[] UnignoredInterrupt = OperatingSystem.IsLinux() ? ["--default-signal=INT"] : [];

    private readonly Process _process;

    public BuiltProgram(string workingFolder, params string[] args)
        : this(workingFolder, new Uri("http://127.0.0.1:0"), args)
    {
    }

    public BuiltProgram(string workingFolder, Uri page, params string[] args)
    {
        string dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        string[] program = [dotnet, Path.Combine(AppContext.BaseDirectory, "BoothWatch.Service.dll"), .. args];
        var start = new ProcessStartInfo("env", [.. UnignoredInterrupt, .. program])
        {
            WorkingDirectory = workingFolder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["BOOTHWATCH_series__folder"] = workingFolder;
        start.Environment["BOOTHWATCH_page__url"] = page.ToString();
        _process = Process.Start(start)!;
    }

    public bool HasEnded => _process.HasExited;

    public StreamReader Out => _process.StandardOutput;

    public StreamWriter In => _process.StandardInput;

    public async Task<string> ReadLineAsync() =>
        await Out.ReadLineAsync().WaitAsync(Patience) ?? throw new EndOfStreamException("the program wrote nothing more");

    /// <summary>Sends the signal of Ctrl-C (INT) or of a service manager (TERM), or kills (KILL).</summary>
    public void Signal(string name)
    {
        using var kill = Process.Start("kill", ["-s", name, _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    public async Task<CommandResult> EndAsync()
    {
        In.Close();
        Task<string> output = Out.ReadToEndAsync();
        Task<string> error = _process.StandardError.ReadToEndAsync();
        await _process.WaitForExitAsync().WaitAsync(Patience);
        return new CommandResult(_process.ExitCode, await output, await error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
        }

        _process.Dispose();
    }
}
