using System.Text.Json;
using BoothWatch.Outlook;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class OutlookApiTests
{
    [Fact]
    public async Task Outlook_OfAShopWhoseDaysGrowDamper_SaysWhenItCloses()
    {
        await using JobHost host = await OutlookSample.Start(40, (back, hour) => OutlookSample.Wetter(back, hour));
        JsonElement outlook = await host.Get("/api/outlook");
        Assert.Equal("closes", outlook.GetProperty("word").GetString());
        Assert.Equal("none", outlook.GetProperty("silence").GetString());
        Assert.StartsWith("until about 1", outlook.GetProperty("mark").GetString(), StringComparison.Ordinal);
        Assert.Contains("of 10 such days", outlook.GetProperty("meaning").GetString(), StringComparison.Ordinal);
        Assert.Contains("from the last 30 days of this shop", outlook.GetProperty("basis").GetString(), StringComparison.Ordinal);
        Assert.Equal((30, 15, false), (outlook.GetProperty("days").GetInt32(), outlook.GetProperty("daysNeeded").GetInt32(), outlook.GetProperty("isInvented").GetBoolean()));
        Assert.InRange(outlook.GetProperty("middleH").GetDouble(), 2, 7);
        Assert.True(outlook.GetProperty("earlyH").GetDouble() <= outlook.GetProperty("middleH").GetDouble());
        Assert.All(outlook.GetProperty("scores").EnumerateArray().Where(score => score.GetProperty("wins").GetBoolean()), score =>
            Assert.True(score.GetProperty("crps").GetDouble() < score.GetProperty("crpsAsItIsNow").GetDouble()));
        string words = string.Join(' ', outlook.GetProperty("words").EnumerateArray().Select(word => word.GetString()));
        Assert.Contains("no verdict", words, StringComparison.Ordinal);
        Assert.Contains("the exhaust stays on", words, StringComparison.Ordinal);
        Assert.Contains("<svg", await host.Text("/outlook.svg"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "0 of the 15 days")]
    [InlineData(4, "4 of the 15 days")]
    public async Task Outlook_OfTooFewDays_IsSilentAndCountsThem(int days, string words)
    {
        await using JobHost host = await OutlookSample.Start(days, (back, hour) => OutlookSample.Wetter(back, hour));
        JsonElement outlook = await host.Get("/api/outlook");
        Assert.Equal(("silent", "too-few-days"), (outlook.GetProperty("word").GetString(), outlook.GetProperty("silence").GetString()));
        Assert.Contains(words, outlook.GetProperty("meaning").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, outlook.GetProperty("middleH").ValueKind);
        Assert.Contains("no outlook", await host.Text("/outlook.svg"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_OfDaysWithoutAHabit_IsSilent()
    {
        await using JobHost host = await OutlookSample.Start(60, (back, hour) => 10 + (back % 2 == 0 ? 1 : -1) + (0.4 * hour * (back % 2 == 0 ? 1 : -1)));
        JsonElement outlook = await host.Get("/api/outlook");
        Assert.Equal("no-better", outlook.GetProperty("silence").GetString());
        Assert.Contains("no better than", outlook.GetProperty("meaning").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_OfADemo_RestsOnInventedDays_AndSaysSo()
    {
        await using JobHost host = await JobHost.Start(("demo:dayLengthS", "32400"), ("demo:startAt", "08:30"));
        await OutlookSample.Make(host);
        JsonElement outlook = await host.Get("/api/outlook");
        Assert.Equal(("closes", true), (outlook.GetProperty("word").GetString(), outlook.GetProperty("isInvented").GetBoolean()));
        Assert.Contains("invented days of the demo shop", outlook.GetProperty("basis").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_OnFahrenheit_SpeaksIt_AndKeepsItsFiguresInCelsius()
    {
        await using JobHost host = await OutlookSample.Start(40, (back, hour) => OutlookSample.Wetter(back, hour), ("booth:temperatureUnit", "F"));
        JsonElement outlook = await host.Get("/api/outlook");
        Assert.Contains("°F", outlook.GetProperty("words")[0].GetString(), StringComparison.Ordinal);
        Assert.InRange(outlook.GetProperty("marginC").GetDouble(), 4, 10);
    }

    [Fact]
    public async Task Outlook_SwitchedOff_SaysSo()
    {
        await using JobHost host = await JobHost.Start(("outlook:enabled", "false"));
        Assert.Equal("switched-off", (await host.Get("/api/outlook")).GetProperty("silence").GetString());
    }

    [Fact]
    public async Task Outlook_OfAJournalThatCannotBeRead_IsSilentAndSaysWhy()
    {
        await using JobHost host = await OutlookSample.Start(0, (_, _) => null);
        string path = host.Services.GetRequiredService<JournalLocation>().Path;
        using (Microsoft.Data.Sqlite.SqliteConnection connection = new($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
            command.CommandText = "ALTER TABLE minute RENAME COLUMN dew_point_c_mean TO lost";
            command.ExecuteNonQuery();
        }

        // Days that were read are kept; a keeper that has just started reads them.
        OutlookKeeper keeper = ActivatorUtilities.CreateInstance<OutlookKeeper>(host.Services);
        keeper.Renew(CancellationToken.None);
        Assert.Equal(OutlookSilence.NoRecord, keeper.State.Outlook.Silence);
        string said = host.Services.GetRequiredService<OutlookWords>().Meaning(keeper.State);
        Assert.Contains("the journal cannot be read", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("width=10")]
    [InlineData("theme=pink")]
    public async Task Chart_OfAWrongQuestion_IsRefused(string query)
    {
        await using JobHost host = await JobHost.Start(("outlook:enabled", "false"));
        Assert.Equal(400, await host.Status("/outlook.svg?" + query));
    }
}
