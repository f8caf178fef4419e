namespace BoothWatch.Service.Access;

/// <summary>On an endpoint that whoever reaches the page may ask: what the sign-in needs, files that tell nothing of the booth, and changes that a token of their own guards.</summary>
internal sealed record AnyoneMark;
