namespace BoothWatch.Service.Tests.Outages;

/// <summary>
/// A test that needs a file system of its own to fill. Skips with a clear word where none may be mounted; with CI=true it runs
/// all the same, and fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SmallDiskFactAttribute : FactAttribute
{
    public SmallDiskFactAttribute() => Skip = SmallDisk.SkipReason;
}
