namespace BoothWatch.Service.Access;

/// <summary>On an endpoint whose answer goes on for as long as somebody listens.</summary>
internal sealed record StreamMark;
