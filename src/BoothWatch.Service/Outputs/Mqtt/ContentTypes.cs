namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>MIME types of what is published.</summary>
internal static class ContentTypes
{
    public const string Text = "text/plain";
    public const string Json = "application/json";
}
