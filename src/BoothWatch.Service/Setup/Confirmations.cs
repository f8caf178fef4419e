using System.Collections.Immutable;
using System.Text.Json;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Setup;

/// <summary>
/// What a person has looked at and found right, beside the journal in <c>setup.json</c>. A confirmation holds for exactly what was
/// confirmed: with another pin or another lacquer the step is open again.
/// </summary>
/// <param name="location">Where the journal lies.</param>
/// <param name="time">The clock.</param>
internal sealed class Confirmations(JournalLocation location, TimeProvider time)
{
    private readonly Lock _one = new();
    private readonly string _path = Path.Combine(Path.GetDirectoryName(location.Path)!, "setup.json");
    private ImmutableDictionary<string, Confirmation>? _held;

    /// <summary>One confirmation.</summary>
    /// <param name="What">What it was that was right.</param>
    /// <param name="Time">When.</param>
    internal sealed record Confirmation(string What, DateTimeOffset Time);

    /// <summary>When this was confirmed as it is now; null when it was not.</summary>
    public DateTimeOffset? Of(string id, string what) => Held().GetValueOrDefault(id) is { } held && held.What == what ? held.Time : null;

    /// <summary>Keeps a confirmation.</summary>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public void Confirm(string id, string what)
    {
        lock (_one)
        {
            ImmutableDictionary<string, Confirmation> held = Held().SetItem(id, new Confirmation(what, time.GetUtcNow()));
            WholeFile.Replace(_path, stream => JsonSerializer.Serialize(stream, held, PageJson.Options));
            _held = held;
        }
    }

    // A file that cannot be read confirms nothing: the steps are open, and the next confirmation writes it anew.
    private ImmutableDictionary<string, Confirmation> Held()
    {
        lock (_one)
        {
            try
            {
                return _held ??= File.Exists(_path)
                    ? JsonSerializer.Deserialize<ImmutableDictionary<string, Confirmation>>(File.ReadAllBytes(_path), PageJson.Options) ?? []
                    : [];
            }
            catch (Exception unreadable) when (unreadable is JsonException or IOException or UnauthorizedAccessException)
            {
                return _held = [];
            }
        }
    }
}
