namespace BoothWatch.Service.Access;

/// <summary>A signed-in browser or script.</summary>
/// <param name="Id">SHA-256 of its token, in hexadecimal: the token itself is only in the cookie.</param>
/// <param name="Began">When it was signed in, UTC.</param>
/// <param name="Used">When it was last used, UTC; written to the disk now and then only.</param>
/// <param name="Stamp">The secret that it began under.</param>
internal sealed record Session(string Id, DateTimeOffset Began, DateTimeOffset Used, string Stamp);
