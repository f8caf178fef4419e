namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Ids of alerts and messages: unguessable enough to be unique, and in order of time.</summary>
internal static class AlertIds
{
    public static string New(DateTimeOffset now) => Guid.CreateVersion7(now).ToString("N");
}
