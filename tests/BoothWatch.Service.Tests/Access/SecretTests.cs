using System.Runtime.Versioning;
using BoothWatch.Service.Access;
using BoothWatch.Service.Tests.Commands;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Access;

/// <summary>The secret: its hash, its strength, the command that sets it, and the settings beside it.</summary>
[UnsupportedOSPlatform("windows")] // file modes
public sealed class SecretTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-secret-").FullName;

    private string Config => Path.Combine(_folder, "boothwatch.json");

    private string SecretFile => Path.Combine(_folder, "readings", "access", "secret");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    // RFC 7914, 11: test vectors of PBKDF2 with HMAC-SHA-256, 64 octets.
    [InlineData("passwd", "salt", 1, "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783")]
    [InlineData("Password", "NaCl", 80000, "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d")]
    public void Hash_OfAPublishedVector_Matches(string secret, string salt, int iterations, string hex)
    {
        string text = $"pbkdf2-sha256${iterations}${Convert.ToBase64String(System.Text.Encoding.ASCII.GetBytes(salt))}${Convert.ToBase64String(Convert.FromHexString(hex))}";
        Assert.True(SecretHash.Parse(text)!.Matches(secret));
        Assert.False(SecretHash.Parse(text)!.Matches(secret + "x"));
    }

    [Fact]
    public void Hash_OfOneSecretTwice_DiffersAndIsSlow()
    {
        string[] one = SecretHash.Of("winch gravel plum teapot").ToString().Split('$');
        string[] two = SecretHash.Of("winch gravel plum teapot").ToString().Split('$');
        Assert.Equal("600000", one[1]); // OWASP Password Storage Cheat Sheet, PBKDF2-HMAC-SHA256
        Assert.NotEqual(one[2], two[2]);
        Assert.NotEqual(one[3], two[3]);
        Assert.True(SecretHash.Parse(string.Join('$', one))!.Matches(" winch gravel plum teapot\n"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("winch gravel plum teapot")]
    [InlineData("pbkdf2-sha256$0$AAAAAAAAAAA=$AAAAAAAAAAAAAAAAAAAAAA==")]
    [InlineData("pbkdf2-sha256$1000$AAAA$not base64")]
    [InlineData("pbkdf2-sha256$1000$AAAA$")]
    public void Hash_ThatIsNone_IsNotRead(string text) => Assert.Null(SecretHash.Parse(text));

    [Theory]
    [InlineData("fourteen chars", "has 14 characters; give 15 to 200")] // NIST SP 800-63B-4, 3.1.1.2: a single factor has at least 15
    [InlineData("               x               ", "has 1 characters")]
    [InlineData("aaaaaaaaaaaaaaaaaaaa", "only 1 different characters")]
    [InlineData("abcdefabcdefabcdef", "over and over")]
    [InlineData("123456789012345678", "neighbours")]
    [InlineData("abcdefghijklmnopqrst", "neighbours")]
    [InlineData("boothwatchpassword1", "tried first")]
    [InlineData("Harbour Lane corner 1", "tried first")]
    [InlineData("Password123Welcome!", "tried first")]
    [InlineData("tab\there is a control", "control character")]
    [InlineData("winch gravel plum teapot", null)]
    [InlineData("fifteen letters", null)]
    [InlineData("mC7#xq9!Lz2&vT5", null)]
    [InlineData("K7QM-2XPA-99TB-HWLC-ZE4R", null)]
    [InlineData("дуб лампа ветер камень", null)]
    public void Strength_IsToldWithTheFix(string secret, string? says)
    {
        string? problem = SecretStrength.Problem(secret, "Harbour Lane", "corner");
        if (says is null)
        {
            Assert.Null(problem);
        }
        else
        {
            Assert.Contains(says, problem, StringComparison.Ordinal);
            Assert.Contains("four unrelated words", problem, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Command_WithASecretOnStandardInput_KeepsItsHash_ForItsOwnerAlone()
    {
        await WriteConfig();
        CommandResult result = await CommandRun.With(["access", "set-secret", "--config", Config], "winch gravel plum teapot\n");
        Assert.Equal((0, ""), (result.ExitCode, result.Out));
        Assert.Contains(SecretFile, result.Error, StringComparison.Ordinal);
        Assert.True(SecretHash.Parse(await File.ReadAllTextAsync(SecretFile))!.Matches("winch gravel plum teapot"));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(SecretFile));
    }

    [Fact]
    public async Task Command_WithAFile_ReadsItsFirstLine()
    {
        await WriteConfig();
        string file = Path.Combine(_folder, "typed");
        await File.WriteAllTextAsync(file, "winch gravel plum teapot\nanother line\n");
        Assert.Equal(0, (await CommandRun.With(["access", "set-secret", "--config", Config, "--file", file])).ExitCode);
        Assert.True(SecretHash.Parse(await File.ReadAllTextAsync(SecretFile))!.Matches("winch gravel plum teapot"));
        CommandResult missing = await CommandRun.With(["access", "set-secret", "--config", Config, "--file", file + "x"]);
        Assert.Equal(1, missing.ExitCode);
        Assert.Contains(file + "x", missing.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Command_Generate_PrintsAStrongSecretOnce()
    {
        await WriteConfig();
        CommandResult result = await CommandRun.With(["access", "set-secret", "--config", Config, "--generate"]);
        Assert.Equal(0, result.ExitCode);
        Assert.Matches("^([A-Z2-9]{4}-){4}[A-Z2-9]{4}\n$", result.Out);
        Assert.True(SecretHash.Parse(await File.ReadAllTextAsync(SecretFile))!.Matches(result.Out));
    }

    [Theory]
    [InlineData("too short\n", "has 9 characters")]
    [InlineData("", "no secret was given")]
    public async Task Command_WithAWeakSecret_ChangesNothing_AndReturns2(string typed, string says)
    {
        await WriteConfig();
        CommandResult result = await CommandRun.With(["access", "set-secret", "--config", Config], typed);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(says, result.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(SecretFile));
    }

    [Fact]
    public void Settings_Wrong_AreAllNamedWithTheFix()
    {
        ValidateOptionsResult result = new AccessOptionsValidator().Validate(null, new AccessOptions
        {
            Hosts = ["booth.example", "http://booth.example"],
            Proxies = ["192.0.2.10", "192.0.2.0/28", "2001:db8::/64", "0.0.0.0/0", "proxy"],
            SessionIdleH = 0,
            SessionLongestDays = double.NaN,
        });
        Assert.Equal(
            [
                "access:hosts:1 is \"http://booth.example\"; give a name without scheme and port, for example booth.example",
                "access:proxies:3 is \"0.0.0.0/0\", which is everybody; give the address of the proxy, for example 192.0.2.10",
                "access:proxies:4 is \"proxy\"; give an address or a network, for example 192.0.2.10 or 192.0.2.0/28",
                "access:sessionIdleH is 0; give hours from 0.25 to 720, for example 72",
                "access:sessionLongestDays is NaN; give days from 1 to 366, for example 90",
            ],
            result.Failures);
    }

    private Task WriteConfig() => File.WriteAllTextAsync(Config, $$"""{ "series": { "folder": "{{Path.Combine(_folder, "readings")}}" } }""");
}
