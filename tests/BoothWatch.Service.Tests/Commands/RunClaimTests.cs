using BoothWatch.Service.Commands;

namespace BoothWatch.Service.Tests.Commands;

public sealed class RunClaimTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Take_WhileHeld_IsRefused_AndFreeAfterwards()
    {
        string folder = Path.Combine(_folder, "new");
        using (RunClaim held = RunClaim.Take(folder))
        {
            using RunClaim second = RunClaim.Take(folder);
            Assert.Equal((null, null), (held.Refusal, held.Doubt));
            Assert.Contains(folder, second.Refusal, StringComparison.Ordinal);
            Assert.Contains("series:folder", second.Refusal, StringComparison.Ordinal);
        }

        using RunClaim after = RunClaim.Take(folder);
        Assert.Null(after.Refusal);
    }

    [Fact]
    public void Take_WhereNothingCanBeWritten_IsADoubtAndNoRefusal()
    {
        string file = Path.Combine(_folder, "file");
        File.WriteAllText(file, "");

        using RunClaim claim = RunClaim.Take(Path.Combine(file, "below"));

        Assert.Null(claim.Refusal);
        Assert.NotNull(claim.Doubt);
    }
}
