using System.Globalization;
using System.Net;
using InfluxDB.Client;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Core.Exceptions;

namespace BoothWatch.Service.Outputs.Influx;

/// <summary>
/// Writes through the InfluxDB 2.x client, by the call whose failure is seen at once: the batching writer of the client
/// reports a missing bucket as an event and drops the points.
/// </summary>
public sealed class InfluxWriter : IPointWriter, IDisposable
{
    private readonly InfluxOptions _options;
    private readonly TimeProvider _time;
    private InfluxDBClient? _client;

    /// <summary>A writer for the configured server. Connects at the first write.</summary>
    public InfluxWriter(InfluxOptions options, TimeProvider time) => (_options, _time) = (options, time);

    /// <inheritdoc/>
    public async Task<WriteAnswer> WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellationToken)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(_options.TimeoutS), _time);
        using var attempt = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellationToken);
        try
        {
            _client ??= Connect();
            await _client.GetWriteApiAsync()
                .WriteRecordsAsync([.. lines], WritePrecision.Ms, cancellationToken: attempt.Token)
                .WaitAsync(attempt.Token);
            return WriteAnswer.Accepted;
        }
        catch (Exception e) when (!cancellationToken.IsCancellationRequested && limit.IsCancellationRequested)
        {
            return Later($"{_options.Url} did not answer within {_options.TimeoutS.ToString(CultureInfo.InvariantCulture)} s", e);
        }
        catch (HttpException e) when (e.Status != 0)
        {
            return AnswerTo(e);
        }
        catch (Exception e) when (e is HttpException or HttpRequestException)
        {
            return Later($"{_options.Url} cannot be reached", e);
        }
        catch (FormatException e)
        {
            // The client reads a Retry-After that is a date as a number.
            return Later($"{_options.Url} is busy", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Later($"influx:tokenFile {_options.TokenFile} cannot be read", e);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Disconnect();

    private InfluxDBClient Connect()
    {
        var settings = new InfluxDBClientOptions(_options.Url)
        {
            Org = _options.Org,
            Bucket = _options.Bucket,

            // The limit of each write rules; the client's own, on the system clock, is only the backstop.
            Timeout = TimeSpan.FromSeconds(_options.TimeoutS + 60),
        };
        if (TokenOf(_options) is { Length: > 0 } token)
        {
            settings.Token = token;
        }

        var client = new InfluxDBClient(settings);
        client.EnableGzip();
        return client;
    }

    private void Disconnect()
    {
        _client?.Dispose();
        _client = null;
    }

    private static string TokenOf(InfluxOptions options) => options.TokenFile.Length > 0
        ? System.IO.File.ReadLines(options.TokenFile).FirstOrDefault()?.Trim() ?? ""
        : options.Token.Trim();

    private static WriteAnswer Later(string what, Exception error) => new(WriteAnswerKind.TryLater, $"{what} ({Innermost(error)})");

    private static string Innermost(Exception error) => error.InnerException is { } inner ? Innermost(inner) : error.Message;

    private WriteAnswer AnswerTo(HttpException error)
    {
        string said = string.IsNullOrWhiteSpace(error.Message) ? "no reason given" : error.Message.Trim();
        var status = (HttpStatusCode)error.Status;
        if (status is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden)
        {
            // The next attempt reads the token file again.
            Disconnect();
        }

        return status switch
        {
            HttpStatusCode.BadRequest or HttpStatusCode.UnprocessableEntity or HttpStatusCode.RequestEntityTooLarge =>
                new(WriteAnswerKind.Refused, $"{error.Status}: {said}"),
            HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden =>
                new(WriteAnswerKind.TryLater, $"{_options.Url} refuses the token ({error.Status}: {said}): give one that may write to bucket {_options.Bucket}, in influx:tokenFile"),
            HttpStatusCode.NotFound =>
                new(WriteAnswerKind.TryLater, $"{_options.Url} knows no bucket {_options.Bucket} of {_options.Org} (404: {said}): create it, or correct influx:bucket, influx:org or influx:url"),
            HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable =>
                new(WriteAnswerKind.TryLater, $"{_options.Url} is busy ({error.Status}: {said})", error.RetryAfter is { } s and > 0 ? TimeSpan.FromSeconds(s) : null),
            _ => new(WriteAnswerKind.TryLater, $"{_options.Url} failed ({error.Status}: {said})"),
        };
    }
}
