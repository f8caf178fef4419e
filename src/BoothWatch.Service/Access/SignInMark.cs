namespace BoothWatch.Service.Access;

/// <summary>On the endpoint that takes a secret: few tries a minute.</summary>
internal sealed record SignInMark;
