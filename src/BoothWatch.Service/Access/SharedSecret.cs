namespace BoothWatch.Service.Access;

/// <summary>The shared secret of the shop, as its hash on the disk. A change of the file is seen at the next question, without a restart.</summary>
internal sealed class SharedSecret(AccessFolder folder) : IDisposable
{
    private sealed record Seen(DateTime Written, long Length, SecretState State);

    // One at a time: a slow hash is meant to cost, but not all the processors of a small board at once.
    private readonly SemaphoreSlim _hashing = new(1);
    private volatile Seen? _seen;

    /// <summary>What holds now.</summary>
    public SecretState State
    {
        get
        {
            FileInfo file = new(folder.SecretFile);
            if (!file.Exists)
            {
                return SecretState.None;
            }

            Seen? seen = _seen;
            if (seen is null || seen.Written != file.LastWriteTimeUtc || seen.Length != file.Length || seen.State.Trouble is not null)
            {
                _seen = seen = new Seen(file.LastWriteTimeUtc, file.Length, Read(file.FullName));
            }

            return seen.State;
        }
    }

    /// <summary>Sets the secret; every session that began under the old one ends.</summary>
    /// <exception cref="IOException">The disk is full, or does not work.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public void Set(SecretHash hash) => folder.Write(folder.SecretFile, hash + "\n");

    /// <summary>Compares, off the caller's thread.</summary>
    public async Task<bool> MatchesAsync(SecretHash hash, string secret, CancellationToken cancellationToken)
    {
        await _hashing.WaitAsync(cancellationToken);
        try
        {
            return await Task.Run(() => hash.Matches(secret), cancellationToken);
        }
        finally
        {
            _hashing.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _hashing.Dispose();

    private static SecretState Read(string path)
    {
        try
        {
            return SecretHash.Parse(File.ReadAllText(path)) is { } hash
                ? new SecretState(hash)
                : new SecretState(null, $"{path} does not hold the hash of a secret; set it again with 'access set-secret'");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return new SecretState(null, $"{path} cannot be read ({problem.Message}); it must belong to the user that runs BoothWatch");
        }
    }
}
