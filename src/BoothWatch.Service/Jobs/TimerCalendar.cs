using System.Globalization;
using BoothWatch.Jobs;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace BoothWatch.Service.Jobs;

/// <summary>The timers of a job as a calendar after RFC 5545. An event keeps its UID while its time moves, so that a calendar that follows the feed moves it too.</summary>
internal static class TimerCalendar
{
    public const string MediaType = "text/calendar; charset=utf-8";

    public static string Write(Job job, IReadOnlyList<JobTimer> timers, string place, DateTimeOffset now)
    {
        Ical.Net.Calendar calendar = new() { ProductId = "-//BoothWatch//timers//EN", Method = "PUBLISH" };
        calendar.AddProperty("X-WR-CALNAME", $"{job.Details.Piece}: timers");
        foreach (JobTimer timer in timers)
        {
            if (timer.Due is { } due)
            {
                calendar.Events.Add(Event(job, timer, due, place, now));
            }
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalendarEvent Event(Job job, JobTimer timer, DateTimeOffset due, string place, DateTimeOffset now) => new()
    {
        Uid = string.Create(CultureInfo.InvariantCulture, $"job-{job.Id}-coat-{job.LastCoat!.Id}-{timer.Kind.ToString().ToLowerInvariant()}@boothwatch.invalid"),
        DtStamp = Time(now),
        Start = Time(due),
        Duration = Duration.FromMinutes(15),
        Summary = $"{job.Details.Piece}: {timer.What}",
        Description = timer.Why.Length > 0 ? timer.Why : "as planned",
        Location = place,
        Transparency = TransparencyType.Transparent,
        Alarms = { new Alarm { Action = AlarmAction.Display, Description = $"{job.Details.Piece}: {timer.What}", Trigger = new Trigger(Duration.FromSeconds(0)) } },
    };

    private static CalDateTime Time(DateTimeOffset time) =>
        new(new DateTime(time.UtcTicks - (time.UtcTicks % TimeSpan.TicksPerSecond), DateTimeKind.Utc), "UTC");
}
