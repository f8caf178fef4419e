using System.Text.Json;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>What the running program tells of itself at /api/health and /metrics, with a database that is not there.</summary>
public sealed class FiguresTests
{
    [Fact]
    public async Task Program_WithADatabaseThatIsNotThere_SaysSoEverywhereAndGoesOn()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-figures-");
        try
        {
            var influx = new { url = $"http://127.0.0.1:{Outputs.Influx.VictoriaMetrics.FreePort()}", everyS = 0.1, longestRetryS = 0.2 };
            await using BoothProcess booth = await BoothProcess.StartAsync(folder.FullName, influx);

            await booth.UntilAsync("/api/now", now => now.GetProperty("air").ValueKind == JsonValueKind.Object);
            JsonElement health = await booth.UntilAsync("/api/health", answer =>
                BoothProcess.OutputOf(answer, "influx") is var shipping
                && shipping.GetProperty("failures").GetInt64() >= 3 && shipping.GetProperty("backlogAgeS").ValueKind == JsonValueKind.Number);

            Assert.False(health.GetProperty("working").GetBoolean());
            JsonElement influxHealth = BoothProcess.OutputOf(health, "influx");
            Assert.True(influxHealth.GetProperty("backlog").GetInt64() > 0);
            Assert.Contains("cannot be reached", influxHealth.GetProperty("lastError").GetString(), StringComparison.Ordinal);
            Assert.True(BoothProcess.OutputOf(health, "light").GetProperty("working").GetBoolean());
            Assert.True(BoothProcess.OutputOf(health, "series").GetProperty("working").GetBoolean());
            Assert.Contains("cannot be reached", await booth.TextAsync("/"), StringComparison.Ordinal);

            // Names after https://prometheus.io/docs/practices/naming/, text after the Prometheus exposition format.
            string figures = await booth.TextAsync("/metrics");
            Assert.Matches("""(?m)^boothwatch_output_working\{.*output="influx".*\} 0$""", figures);
            Assert.Matches("""(?m)^boothwatch_output_working\{.*output="series".*\} 1$""", figures);
            Assert.Matches("""(?m)^boothwatch_output_backlog\{.*booth="corner".*output="influx".*\} [1-9]""", figures);
            Assert.Matches("""(?m)^boothwatch_output_backlog_age_seconds\{.*output="influx".*\} [0-9]""", figures);
            Assert.Matches("""(?m)^boothwatch_output_failures_total\{.*output="influx".*\} [1-9]""", figures);
            Assert.Matches("""(?m)^boothwatch_air_temperature_celsius\{.*shop="Harbour Lane".*\} [0-9.]+$""", figures);
            Assert.Matches("""(?m)^boothwatch_air_humidity_percent\{""", figures);
            Assert.Matches("""(?m)^boothwatch_air_dew_point_celsius\{""", figures);
            Assert.Matches("""(?m)^boothwatch_verdict\{.*verdict="wait".*\} [01]$""", figures);
            Assert.Matches("""(?m)^boothwatch_tick_duration_seconds_count""", figures);

            // A scraper that asks for OpenMetrics gets it: its media type, and its end mark.
            (string mediaType, string openMetrics) = await booth.TextAsAsync("/metrics", "application/openmetrics-text; version=1.0.0");
            Assert.Equal("application/openmetrics-text", mediaType);
            Assert.EndsWith("# EOF\n", openMetrics, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
