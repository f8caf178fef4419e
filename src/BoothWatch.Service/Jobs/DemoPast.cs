using System.Collections.Immutable;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Readings;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>
/// Gives a new demo journal its invented past: the scripted shop is played on past days and the real model assesses every minute from an
/// hour before a coat to two hours after it. Real journals are never touched. Runs once, well after the start, on one slow thread.
/// </summary>
internal sealed partial class DemoPast(
    JobStore store,
    JournalLocation location,
    CoatPhysics physics,
    CoatMoments moments,
    VerdictPolicy policy,
    IOptions<JobsOptions> options,
    IOptions<CoatOptions> coat,
    TimeProvider time,
    ILogger<DemoPast> logger) : BackgroundService
{
    /// <summary>The first verdict comes first.</summary>
    public static readonly TimeSpan After = TimeSpan.FromSeconds(5);

    /// <summary>How long a demo coat is sprayed.</summary>
    private static readonly TimeSpan Spray = TimeSpan.FromMinutes(6);

    /// <summary>Standard uncertainties of the emulated parts, in the units of their quantities. Assumed, as of the usual parts.</summary>
    private static readonly (Quantity Quantity, double Uncertainty)[] Measured =
    [
        (Quantity.BoothTemperature, 0.23), (Quantity.BoothHumidity, 2.1), (Quantity.IntakeTemperature, 0.9), (Quantity.IntakeHumidity, 2.7),
        (Quantity.StationPressure, 90), (Quantity.PieceTemperature, 0.6), (Quantity.ExhaustProof, 0), (Quantity.FilterPressureDrop, 2),
    ];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!location.IsDemo || !options.Value.DemoPast)
        {
            return;
        }

        await Task.Delay(After, time, stoppingToken);
        try
        {
            if (store.IsEmpty)
            {
                await Task.Factory.StartNew(() => Create(stoppingToken), stoppingToken, TaskCreationOptions.LongRunning, TaskScheduler.Default);

                // The past is made of far more than the booth ever keeps in memory; give that back once.
                SpareMemory.GiveBack();
            }
        }
        catch (JournalException trouble)
        {
            LogFailed(trouble.Message);
        }
    }

    /// <summary>Plays the past and enters it in one transaction.</summary>
    internal void Create(CancellationToken cancellationToken)
    {
        Assessor assessor = new(policy, new BlushModel().Assess, altitudeM: 0);
        List<Assessment> minutes = [];
        List<JobImport> jobs = [];
        foreach (DemoJob job in DemoJobs.All)
        {
            List<CoatImport> coats = [];
            foreach (DemoCoat demo in job.Coats)
            {
                cancellationToken.ThrowIfCancellationRequested();
                CoatDetails details = DetailsOf(demo);
                List<Assessment> played = Play(demo, physics.PlanOf(details), assessor, cancellationToken);
                minutes.AddRange(played.Where(assessment => minutes.TrueForAll(known => known.Time != assessment.Time)));
                coats.Add(new CoatImport(details, moments.Of(details, played.First(assessment => assessment.Time >= details.Start)), demo.Outcome, demo.Note));
            }

            jobs.Add(new JobImport(
                new JobDetails(job.Piece, job.Finish, options.Value.DefaultSchedule, job.Note),
                coats[0].Details.Start.AddMinutes(-20),
                coats,
                job.Finished ? coats[^1].Details.Stop!.Value.AddDays(1) : null));
        }

        if (store.Import(jobs, EntrySource.Demo, onlyIfEmpty: true, connection => minutes.ForEach(minute => ReadingStatements.AddToMinute(connection, minute))))
        {
            LogCreated(jobs.Count, minutes.Count);
        }
    }

    private CoatDetails DetailsOf(DemoCoat demo)
    {
        CoatOptions usual = coat.Value;
        CoatHabits habits = CoatHabits.For(demo.Kind);
        DateTimeOffset start = At(demo.DaysAgo, demo.At);
        return new CoatDetails
        {
            Kind = demo.Kind,
            Mix = new CoatMix(habits.Lacquer, habits.LacquerParts, usual.Thinner, habits.ThinnerParts, usual.Retarder, demo.RetarderPct),
            WetFilmUm = demo.WetFilmUm ?? habits.WetFilmUm,
            Substrate = usual.Substrate,
            AirSpeedMPerS = usual.AirSpeedMPerS,
            Start = start,
            Stop = start + Spray,
        };
    }

    private List<Assessment> Play(DemoCoat demo, CoatPlan plan, Assessor assessor, CancellationToken cancellationToken)
    {
        ScriptTime script = new();
        ScriptedShop shop = new(script.ShopClock());
        TimeSpan first = Max(demo.At - TimeSpan.FromHours(1), ShopClock.Opening);
        TimeSpan last = Min(demo.At + TimeSpan.FromHours(2), ShopClock.Closing - TimeSpan.FromMinutes(1));
        List<Assessment> assessments = [];
        for (TimeSpan at = first; at <= last; at += TimeSpan.FromMinutes(1))
        {
            cancellationToken.ThrowIfCancellationRequested();
            script.Elapsed = at - ShopClock.Opening;
            assessments.Add(assessor.Assess(SnapshotOf(shop.Now(), At(demo.DaysAgo, at)), plan));
        }

        return assessments;
    }

    private static BoothSnapshot SnapshotOf(ShopState shop, DateTimeOffset at)
    {
        double Value(Quantity quantity) => quantity switch
        {
            Quantity.BoothTemperature => shop.BoothAir.TemperatureC,
            Quantity.BoothHumidity => shop.BoothAir.RelativeHumidityPct,
            Quantity.IntakeTemperature => shop.IntakeAir.TemperatureC,
            Quantity.IntakeHumidity => shop.IntakeAir.RelativeHumidityPct,
            Quantity.StationPressure => shop.BoothAir.PressurePa,
            Quantity.PieceTemperature => shop.PieceTemperatureC,
            Quantity.ExhaustProof => shop.FanOn ? 1 : 0,
            _ => shop.FilterPressureDropPa,
        };
        return new BoothSnapshot(at, ClockProven: true, Measured.ToImmutableDictionary(
            measured => measured.Quantity,
            measured => new Reading(measured.Quantity, "demo", Value(measured.Quantity), measured.Uncertainty, TimeSpan.Zero, ReadingQuality.Good, null)));
    }

    private DateTimeOffset At(int daysAgo, TimeSpan timeOfDay)
    {
        DateTime day = TimeZoneInfo.ConvertTime(time.GetUtcNow(), time.LocalTimeZone).Date.AddDays(-daysAgo) + timeOfDay;
        return new DateTimeOffset(day, time.LocalTimeZone.GetUtcOffset(day)).ToUniversalTime();
    }

    private static TimeSpan Max(TimeSpan a, TimeSpan b) => a > b ? a : b;

    private static TimeSpan Min(TimeSpan a, TimeSpan b) => a < b ? a : b;

    [LoggerMessage(311, LogLevel.Information, "The demo journal has an invented past now: {Jobs} jobs with {Minutes} minutes of air")]
    private partial void LogCreated(int jobs, int minutes);

    [LoggerMessage(312, LogLevel.Warning, "The demo journal got no past: {Problem}")]
    private partial void LogFailed(string problem);
}
