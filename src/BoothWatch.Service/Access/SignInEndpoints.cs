using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>Signs in and out, and says who is.</summary>
internal sealed partial class SignInEndpoints(
    AccessGate gate, Callers callers, SharedSecret secret, StartCode code, SessionStore sessions, IOptions<AccessOptions> options, ILogger<SignInEndpoints> logger)
{
    private const long LongestBody = 2048;
    private const string Example = """{"secret": "..."}""";
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false, MaxDepth = 4 };

    /// <summary>Who asks, and what that allows.</summary>
    public SessionAnswer Session(HttpContext context)
    {
        bool isLocal = callers.IsLocal(context);
        return Answer(gate.UseSession(context, isLocal), isLocal);
    }

    /// <summary>Begins a session for the secret, or on this machine for the start code while there is no secret.</summary>
    public async Task<IResult> SignIn(HttpContext context, CancellationToken cancellationToken)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = LongestBody;
        }

        if (await ReadAsync(context.Request, cancellationToken) is not { } given)
        {
            return Refuse(StatusCodes.Status400BadRequest, "The body is wrong", $"give a JSON object with the field secret, for example {Example}");
        }

        bool isLocal = callers.IsLocal(context);
        SecretState state = secret.State;
        if (state.Trouble is { } trouble)
        {
            LogTrouble(trouble);
            return Refuse(StatusCodes.Status503ServiceUnavailable, "The secret cannot be read", "nobody can sign in now; the log of BoothWatch says why");
        }

        if (state.IsNone && !isLocal)
        {
            return Refuse(StatusCodes.Status403Forbidden, "No secret is set", "set one on the machine of the booth with 'access set-secret'; until then nothing is changed from another machine");
        }

        string from = Callers.Key(context);
        bool isRight = state.Hash is { } hash ? await secret.MatchesAsync(hash, given, cancellationToken) : code.Take(given);
        if (!isRight)
        {
            LogWrong(from);
            context.Response.Headers.WWWAuthenticate = $"BoothWatch page=\"{AccessGate.SignInPage}\"";
            return Refuse(StatusCodes.Status401Unauthorized, "Wrong", state.IsNone
                ? "that is not the start code that holds now; the log of BoothWatch shows it at the start, and a new one when it was used"
                : "that is not the secret");
        }

        sessions.End(SessionCookie.Read(context.Request));
        string token = sessions.Begin(state.Stamp!);
        SessionCookie.Write(context, token, TimeSpan.FromDays(options.Value.SessionLongestDays));
        LogSignedIn(from);
        if (state.IsNone)
        {
            LogNextCode($"{context.Request.Scheme}://{context.Request.Host}{AccessGate.SignInPage}#{code.Current}");
        }

        return TypedResults.Ok(Answer(sessions.Use(token), isLocal));
    }

    /// <summary>Ends the session, here and for good.</summary>
    public Ok<SessionAnswer> SignOut(HttpContext context)
    {
        sessions.End(SessionCookie.Read(context.Request));
        SessionCookie.Remove(context);
        return TypedResults.Ok(Answer(null, callers.IsLocal(context)));
    }

    private static async Task<string?> ReadAsync(HttpRequest request, CancellationToken cancellationToken)
    {
        try
        {
            using JsonDocument body = await JsonDocument.ParseAsync(request.Body, Strict, cancellationToken);
            return body.RootElement is { ValueKind: JsonValueKind.Object } given && given.TryGetProperty("secret", out JsonElement value)
                && value is { ValueKind: JsonValueKind.String } ? value.GetString() : null;
        }
        catch (Exception problem) when (problem is JsonException or BadHttpRequestException or InvalidOperationException)
        {
            return null;
        }
    }

    private SessionAnswer Answer(Session? session, bool isLocal) => new(
        session is not null,
        isLocal || session is not null || options.Value.Reading == ReadingAccess.Open,
        !secret.State.IsNone ? "secret" : isLocal ? "start-code" : "nothing",
        session is null ? null : sessions.EndOf(session).UtcDateTime);

    private static ProblemHttpResult Refuse(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);

    [LoggerMessage(1, LogLevel.Information, "Signed in from {Address}")]
    private partial void LogSignedIn(string address);

    [LoggerMessage(2, LogLevel.Warning, "Wrong secret from {Address}")]
    private partial void LogWrong(string address);

    [LoggerMessage(3, LogLevel.Information, "To sign in one more browser of this machine, open {Link} (good once)")]
    private partial void LogNextCode(string link);

    [LoggerMessage(4, LogLevel.Error, "Nobody can sign in: {Trouble}")]
    private partial void LogTrouble(string trouble);
}
