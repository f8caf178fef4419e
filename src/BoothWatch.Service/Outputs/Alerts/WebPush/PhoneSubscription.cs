namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>A browser that wants messages.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Endpoint">Where its push service takes messages (RFC 8030).</param>
/// <param name="P256dh">Its public key, an uncompressed point of P-256 in base64url (RFC 8291).</param>
/// <param name="Auth">Its authentication secret, 16 bytes in base64url (RFC 8291).</param>
/// <param name="Name">What people call it.</param>
/// <param name="Since">When it subscribed, UTC.</param>
internal sealed record PhoneSubscription(long Id, string Endpoint, string P256dh, string Auth, string Name, DateTimeOffset Since);
