using BoothWatch.Service.Outputs.Influx;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>The answers of the write call of InfluxDB 2, https://docs.influxdata.com/influxdb/v2/api/#operation/PostWrite</summary>
public sealed class InfluxWriterTests
{
    private const string Token = "not-for-any-log";

    [Fact]
    public async Task Write_ThatTheServerTakes_IsAcceptedAndCarriesTheTokenCompressed()
    {
        await using StubServer server = await StubServer.StartAsync();

        WriteAnswer answer = await WriteAsync(server);

        Assert.Equal(WriteAnswerKind.Accepted, answer.Kind);
        (string path, string authorization, string encoding) = Assert.Single(server.Requests);
        Assert.StartsWith("/api/v2/write", path, StringComparison.Ordinal);
        Assert.Contains("bucket=air", path, StringComparison.Ordinal);
        Assert.Contains("org=shop", path, StringComparison.Ordinal);
        Assert.Contains("precision=ms", path, StringComparison.Ordinal);
        Assert.Equal($"Token {Token}", authorization);
        Assert.Equal("gzip", encoding);
    }

    [Theory]
    [InlineData(400, WriteAnswerKind.Refused, "unable to parse")]
    [InlineData(413, WriteAnswerKind.Refused, "413")]
    [InlineData(422, WriteAnswerKind.Refused, "422")]
    [InlineData(401, WriteAnswerKind.TryLater, "refuses the token")]
    [InlineData(403, WriteAnswerKind.TryLater, "refuses the token")]
    [InlineData(404, WriteAnswerKind.TryLater, "knows no bucket air of shop")]
    [InlineData(429, WriteAnswerKind.TryLater, "is busy")]
    [InlineData(500, WriteAnswerKind.TryLater, "failed (500")]
    [InlineData(503, WriteAnswerKind.TryLater, "is busy")]
    public async Task Write_ThatTheServerDoesNotTake_SaysWhatItMeansForThePoints(int status, WriteAnswerKind kind, string words)
    {
        await using StubServer server = await StubServer.StartAsync();
        server.Answer = context => StubServer.Say(context, status, "unable to parse 'x'");

        WriteAnswer answer = await WriteAsync(server);

        Assert.Equal(kind, answer.Kind);
        Assert.Contains(words, answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(429, "7", 7)]
    [InlineData(503, "120", 120)]
    public async Task Write_ToABusyServer_HandsOnHowLongToWait(int status, string retryAfter, int seconds)
    {
        await using StubServer server = await StubServer.StartAsync();
        server.Answer = context => StubServer.Say(context, status, "busy", retryAfter);

        Assert.Equal(TimeSpan.FromSeconds(seconds), (await WriteAsync(server)).RetryAfter);
    }

    [Fact]
    public async Task Write_ToABusyServerThatNamesADate_IsTriedLater()
    {
        // RFC 9110 section 10.2.3 allows a date; the client of InfluxDB does not.
        await using StubServer server = await StubServer.StartAsync();
        server.Answer = context => StubServer.Say(context, 503, "busy", "Fri, 31 Dec 2027 23:59:59 GMT");

        Assert.Equal(WriteAnswerKind.TryLater, (await WriteAsync(server)).Kind);
    }

    [Fact]
    public async Task Write_ToNobody_IsTriedLater()
    {
        WriteAnswer answer = await WriteAsync($"http://127.0.0.1:{VictoriaMetrics.FreePort()}");

        Assert.Equal(WriteAnswerKind.TryLater, answer.Kind);
        Assert.Contains("cannot be reached", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_ThatIsNeverAnswered_EndsAtTheLimit()
    {
        await using StubServer server = await StubServer.StartAsync();
        var arrived = new TaskCompletionSource();
        server.Answer = async context =>
        {
            arrived.SetResult();
            await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, context.RequestAborted).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        };
        var time = new FakeTimeProvider();
        using var writer = new InfluxWriter(Options(server.Url), time);

        Task<WriteAnswer> write = writer.WriteAsync(["m f=1i 1"], CancellationToken.None);
        await arrived.Task.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.False(write.IsCompleted);
        time.Advance(TimeSpan.FromSeconds(15));
        WriteAnswer answer = await write.WaitAsync(TimeSpan.FromSeconds(60));

        Assert.Equal(WriteAnswerKind.TryLater, answer.Kind);
        Assert.Contains("did not answer within 15 s", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_WithATokenThatWasCorrectedInItsFile_IsAcceptedWithoutARestart()
    {
        await using StubServer server = await StubServer.StartAsync();
        server.Answer = context => context.Request.Headers.Authorization == "Token right"
            ? StubServer.Say(context, 204, "")
            : StubServer.Say(context, 401, "unauthorized access");
        string file = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(file, "wrong\n");
            using var writer = new InfluxWriter(new InfluxOptions { Url = server.Url, TokenFile = file }, TimeProvider.System);
            Assert.Equal(WriteAnswerKind.TryLater, (await writer.WriteAsync(["m f=1i 1"], CancellationToken.None)).Kind);

            await File.WriteAllTextAsync(file, "right\n");

            Assert.Equal(WriteAnswerKind.Accepted, (await writer.WriteAsync(["m f=1i 1"], CancellationToken.None)).Kind);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static InfluxOptions Options(string url) => new() { Url = url, Org = "shop", Bucket = "air", Token = Token };

    private static Task<WriteAnswer> WriteAsync(StubServer server) => WriteAsync(server.Url);

    private static async Task<WriteAnswer> WriteAsync(string url)
    {
        using var writer = new InfluxWriter(Options(url), TimeProvider.System);
        return await writer.WriteAsync(["m f=1i 1", "m f=2i 2"], CancellationToken.None);
    }
}
