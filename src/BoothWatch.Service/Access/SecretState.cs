namespace BoothWatch.Service.Access;

/// <summary>What is known of the shared secret now.</summary>
/// <param name="Hash">Its hash; null when none is set, or it cannot be read.</param>
/// <param name="Trouble">Why it cannot be read, with the fix; null when it can, or when none is set.</param>
internal sealed record SecretState(SecretHash? Hash, string? Trouble = null)
{
    /// <summary>No secret is set.</summary>
    public static readonly SecretState None = new(null, null);

    /// <summary>Whether there is none.</summary>
    public bool IsNone => Hash is null && Trouble is null;

    /// <summary>What a session must have begun under to hold; null while the secret cannot be read: then no session holds.</summary>
    public string? Stamp => Trouble is not null ? null : Hash?.Stamp ?? "none";
}
