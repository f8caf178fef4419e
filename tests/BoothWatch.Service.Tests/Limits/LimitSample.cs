using System.Text.Json;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Limits;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Limits;

/// <summary>Coats with outcomes in a running service.</summary>
public static class LimitSample
{
    /// <summary>Enters coats of past days.</summary>
    public static void Enter(JobHost host, int count, double marginC, CoatOutcome outcome)
    {
        JobStore store = host.Services.GetRequiredService<JobStore>();
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        for (int i = 1; i <= count; i++)
        {
            CoatDetails details = TestJob.Coat(0) with { Start = now.AddDays(-i) };
            Job job = store.Start(TestJob.Details, details.Start, EntrySource.Page);
            job = store.MarkCoat(job.Id, details, TestJob.Moment(marginC), details.Start, EntrySource.Page);
            store.Append(job.Id, new CoatStopped(job.LastCoat!.Id, details.Start.AddMinutes(5)), now, EntrySource.Page);
            store.Append(job.Id, new OutcomeMarked(job.LastCoat!.Id, outcome, ""), now, EntrySource.Page);
        }
    }

    /// <summary>The limit as JSON, as soon as so many coats count.</summary>
    public static async Task<JsonElement> Known(JobHost host, int coats)
    {
        LimitKeeper keeper = host.Services.GetRequiredService<LimitKeeper>();
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(120));
        while (keeper.State.Evidence?.Coats.Count != coats)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, late.Token);
        }

        return await host.Get("/api/limit");
    }
}
