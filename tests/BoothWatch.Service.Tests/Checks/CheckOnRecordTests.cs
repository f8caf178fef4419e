using BoothWatch.Checks;
using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Commands.Record;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Records;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>The check of a sensor in the record of a job: from the running service and from the command beside it.</summary>
public sealed class CheckOnRecordTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Command_OnAJournalWithChecks_TellsThem()
    {
        JournalLocation demo = new(Path.Combine(_folder.Folder, JournalLocation.DemoFileName), IsDemo: true);
        using Journal journal = new(demo, TimeSpan.FromSeconds(10), _folder.Time, NullLogger<Journal>.Instance);
        JobStore jobs = new(journal, demo);
        Job job = jobs.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        jobs.MarkCoat(job.Id, TestJob.Coat(30), TestJob.Moment(0), TestJob.Day, EntrySource.Page);
        Enter(new CheckStore(journal, demo), TestJob.Day.AddDays(-2), 0.8);
        Enter(new CheckStore(journal, demo), TestJob.Day.AddDays(2), 1.1);

        ConfigurationFile file = new(null, new ConfigurationBuilder().AddInMemoryCollection([new("series:folder", _folder.Folder)]).Build(), []);
        using ServiceProvider services = RecordServices.Build(file);
        RecordSensor[] sensors = [.. services.GetRequiredService<RecordMaker>().Of(job.Id)!.Record.Sensors];
        SensorCheck check = sensors.Single(sensor => sensor.Name == "boothAir").LastCheck!;
        Assert.Equal(TestJob.Day.AddDays(-2), check.At);
        Assert.StartsWith("+0.8 % ± 1.1 % (k = 2) over sodium chloride, within the tolerance of ± 3.6 %; after the first coat, on ", check.Finding, StringComparison.Ordinal);
        Assert.EndsWith(": +1.1 % ± 1.1 % (k = 2) over sodium chloride, within the tolerance of ± 3.6 %", check.Finding, StringComparison.Ordinal);
        Assert.Null(sensors.Single(sensor => sensor.Name == "intakeAir").LastCheck);
    }

    [Fact]
    public async Task Service_AfterACheck_HasItInTheRecord()
    {
        await using JobHost host = await JobHost.Start();
        Enter(host.Services.GetRequiredService<CheckStore>(), DateTimeOffset.UnixEpoch.AddYears(55), -0.6);
        (_, System.Text.Json.JsonElement job) = await host.Post("/api/jobs", """{ "piece": "stool" }""");
        string record = await host.Text($"/api/jobs/{job.GetProperty("id").GetInt64()}/record.json");
        Assert.Contains("−0.6 % ± 1.1 % (k = 2) over sodium chloride, within the tolerance of ± 3.6 %", record, StringComparison.Ordinal);
    }

    private static void Enter(CheckStore store, DateTimeOffset at, double offPct)
    {
        CheckEntry begun = store.Add(null, "boothAir", at, CheckStep.Begun, new CheckFields());
        store.Add(begun.CheckId, "boothAir", at, CheckStep.Result, new CheckFields { Result = new CheckResult("sodium-chloride", 25, 75.3, 75.3 + offPct, 1.1, 3.6) });
        store.Add(begun.CheckId, "boothAir", at, CheckStep.Back, new CheckFields());
        store.Add(begun.CheckId, "boothAir", at, CheckStep.Ended, new CheckFields());
    }
}
