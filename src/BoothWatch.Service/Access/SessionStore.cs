using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>
/// The sessions: random tokens of which only hashes are kept, so that the file signs nobody in. They outlive a restart, and end
/// when they are idle or old, when somebody signs out, and all of them when the secret changes.
/// </summary>
/// <remarks>Their times are of the wall clock, the only one that goes on through a restart.</remarks>
internal sealed partial class SessionStore(
    AccessFolder folder, SharedSecret secret, IOptions<AccessOptions> options, TimeProvider time, ILogger<SessionStore> logger)
{
    /// <summary>Most sessions at once; one more ends the one that was not used for longest.</summary>
    public const int Most = 200;

    // How much of the idle time a crash may forget: the price of not writing to a memory card at every request.
    private static readonly TimeSpan WriteUsedEvery = TimeSpan.FromMinutes(10);
    private const int TokenBytes = 32;

    private readonly Lock _gate = new();
    private Dictionary<string, Session>? _sessions;
    private DateTimeOffset _written;

    /// <summary>Begins a session.</summary>
    /// <returns>The token for its cookie.</returns>
    public string Begin(string stamp)
    {
        string token = Convert.ToHexString(RandomNumberGenerator.GetBytes(TokenBytes));
        DateTimeOffset now = time.GetUtcNow();
        lock (_gate)
        {
            Dictionary<string, Session> sessions = Sessions;
            foreach (Session over in sessions.Values.Where(session => !Holds(session, now)).ToArray())
            {
                sessions.Remove(over.Id);
            }

            if (sessions.Count >= Most)
            {
                sessions.Remove(sessions.Values.MinBy(session => session.Used)!.Id);
            }

            Session begun = new(IdOf(token), now, now, stamp);
            sessions[begun.Id] = begun;
            Write(now);
        }

        return token;
    }

    /// <summary>The session of a token, which counts as used now; null when there is none that holds.</summary>
    public Session? Use(string? token)
    {
        if (token is not { Length: TokenBytes * 2 })
        {
            return null;
        }

        DateTimeOffset now = time.GetUtcNow();
        lock (_gate)
        {
            if (!Sessions.TryGetValue(IdOf(token), out Session? session))
            {
                return null;
            }

            if (!Holds(session, now))
            {
                return null;
            }

            Sessions[session.Id] = session = session with { Used = now };
            if ((now - _written).Duration() >= WriteUsedEvery)
            {
                Write(now);
            }

            return session;
        }
    }

    /// <summary>Ends the session of a token.</summary>
    public void End(string? token)
    {
        lock (_gate)
        {
            if (token is { Length: TokenBytes * 2 } && Sessions.Remove(IdOf(token)))
            {
                Write(time.GetUtcNow());
            }
        }
    }

    /// <summary>When a session ends at the latest.</summary>
    public DateTimeOffset EndOf(Session session) => session.Began.AddDays(options.Value.SessionLongestDays);

    private Dictionary<string, Session> Sessions => _sessions ??= Read();

    private bool Holds(Session session, DateTimeOffset now) =>
        session.Stamp == secret.State.Stamp
        && now < EndOf(session)
        && now - session.Used < TimeSpan.FromHours(options.Value.SessionIdleH);

    private static string IdOf(string token) => Convert.ToHexString(SHA256.HashData(Encoding.ASCII.GetBytes(token)));

    private Dictionary<string, Session> Read()
    {
        try
        {
            return File.Exists(folder.SessionsFile)
                ? (JsonSerializer.Deserialize<Session[]>(File.ReadAllText(folder.SessionsFile)) ?? []).ToDictionary(session => session.Id)
                : [];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or JsonException or ArgumentException)
        {
            LogUnreadable(folder.SessionsFile, problem.Message);
            return [];
        }
    }

    private void Write(DateTimeOffset now)
    {
        _written = now;
        try
        {
            folder.Write(folder.SessionsFile, JsonSerializer.Serialize(Sessions.Values));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            LogUnwritten(folder.SessionsFile, problem.Message);
        }
    }

    [LoggerMessage(1, LogLevel.Warning, "The sessions in {File} cannot be read, so everybody signs in again: {Problem}")]
    private partial void LogUnreadable(string file, string problem);

    [LoggerMessage(2, LogLevel.Warning, "The sessions cannot be written to {File} and end with this run: {Problem}")]
    private partial void LogUnwritten(string file, string problem);
}
