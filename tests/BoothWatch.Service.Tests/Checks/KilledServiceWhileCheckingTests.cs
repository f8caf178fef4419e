using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Commands;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>The whole service, as a user runs it, killed with SIGKILL as soon as it has said that the sensor may go into the jar.</summary>
public sealed class KilledServiceWhileCheckingTests
{
    private const string Secret = "a secret of this test alone";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    [Fact]
    public async Task Service_KilledAfterACheckWasBegun_UsesNoReadingOfTheSensorAfterItsRestart()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-checked-");
        try
        {
            JobHost.SetSecret(AccessFolder.Of(new ConfigurationBuilder().AddInMemoryCollection([new("series:folder", folder.FullName)]).Build()), Secret);
            long before;
            using (BuiltProgram service = new(folder.FullName, Page(out HttpClient client), "run"))
            using (client)
            {
                await Until(client, service, now => now.GetProperty("air").ValueKind == JsonValueKind.Object);
                Assert.Equal(HttpStatusCode.OK, await Post(client, "/api/sign-in", $$"""{ "secret": "{{Secret}}" }"""));
                Assert.Equal(HttpStatusCode.OK, await Post(client, "/api/checks/boothAir/begin", "{}"));
                service.Signal("KILL");
                await service.EndAsync();
                before = Ask(folder, "SELECT ifnull(max(id), 0) FROM reading");
            }

            using (BuiltProgram service = new(folder.FullName, Page(out HttpClient client), "run"))
            using (client)
            {
                JsonElement first = await Until(client, service, now => now.GetProperty("time").ValueKind == JsonValueKind.String);
                Assert.Equal("wait", first.GetProperty("verdict").GetString());
                await Task.Delay(TimeSpan.FromSeconds(4), TimeProvider.System);
                JsonElement later = await Until(client, service, _ => true);
                Assert.Equal("wait", later.GetProperty("verdict").GetString());
                Assert.Contains("being checked against a salt point", later.GetProperty("reasons")[0].GetProperty("finding").GetString(), StringComparison.Ordinal);
                service.Signal("KILL");
                await service.EndAsync();
            }

            // Every row since the restart, the very first one too: temperature and humidity of the booth being checked.
            Assert.InRange(Ask(folder, $"SELECT count(*) FROM reading WHERE id > {before}"), 2, long.MaxValue);
            Assert.Equal(0, Ask(folder, $"SELECT count(*) FROM reading WHERE id > {before} AND (quality NOT LIKE 'KK%' OR verdict <> 0)"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Uri Page(out HttpClient client)
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        Uri page = new($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
        client = new HttpClient { BaseAddress = page };
        return page;
    }

    private static long Ask(DirectoryInfo folder, string sql)
    {
        using SqliteConnection connection = new($"Data Source={Path.Combine(folder.FullName, JournalLocation.DemoFileName)};Pooling=False");
        connection.Open();
        return JournalFolder.Ask<long>(connection, sql);
    }

    private static async Task<HttpStatusCode> Post(HttpClient client, string address, string json)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, address) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        using HttpResponseMessage answer = await client.SendAsync(request);
        return answer.StatusCode;
    }

    private static async Task<JsonElement> Until(HttpClient client, BuiltProgram service, Func<JsonElement, bool> holds)
    {
        using CancellationTokenSource patience = new(Patience);
        while (true)
        {
            if (service.HasEnded)
            {
                Assert.Fail($"the service ended by itself: {await service.EndAsync()}");
            }

            try
            {
                JsonElement now = JsonDocument.Parse(await client.GetStringAsync(new Uri("/api/now", UriKind.Relative), patience.Token)).RootElement;
                if (holds(now))
                {
                    return now;
                }
            }
            catch (HttpRequestException)
            {
                // The page is not up yet.
            }

            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, patience.Token);
        }
    }
}
