namespace BoothWatch.Service.Access;

/// <summary>How the certificate of the page fares.</summary>
/// <param name="Good">False when somebody must do something about it.</param>
/// <param name="Words">Until when it holds, or what is wrong, in words.</param>
public sealed record CertificateFinding(bool Good, string Words);
