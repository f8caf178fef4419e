namespace BoothWatch.Service.Access;

/// <summary>What reading needs from another machine.</summary>
public enum ReadingAccess
{
    /// <summary>A session, which begins with the shared secret.</summary>
    Secret,

    /// <summary>Nothing: everyone who reaches the page may read.</summary>
    Open,
}
