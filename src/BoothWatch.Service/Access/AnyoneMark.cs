namespace BoothWatch.Service.Access;

/// <summary>On an endpoint that whoever reaches the page may ask: what the sign-in itself needs, and nothing that tells of the booth.</summary>
internal sealed record AnyoneMark;
