namespace BoothWatch.Service.Access;

/// <summary>Whether a secret is long and odd enough to be the only thing that guards the booth.</summary>
/// <remarks>
/// A single factor has at least 15 characters, is held against words that come to everybody's mind, and needs no mixture of character
/// classes (NIST SP 800-63B-4, 3.1.1.2).
/// </remarks>
internal static class SecretStrength
{
    public const int Shortest = 15;
    public const int Longest = 200;
    private const int LeastDifferent = 6;
    private const int LeastOdd = 8;
    private const string Advice = "take four unrelated words, or let 'access set-secret --generate' make one";
    private static readonly string[] Obvious =
        ["boothwatch", "password", "passphrase", "passwort", "secret", "spraybooth", "lacquer", "letmein", "welcome", "administrator", "admin", "qwertyuiop", "qwerty", "asdfghjkl", "iloveyou", "changeme"];

    /// <summary>What is wrong with it and what to do instead; null when it will do.</summary>
    /// <param name="secret">The secret.</param>
    /// <param name="shop">Words that everybody knows who knows the shop: its name, that of the booth.</param>
    public static string? Problem(string secret, params string[] shop)
    {
        string bare = secret.Trim();
        if (bare.Length is < Shortest or > Longest)
        {
            return $"the secret has {bare.Length} characters; give {Shortest} to {Longest}: {Advice}";
        }

        if (bare.Any(char.IsControl))
        {
            return $"the secret holds a control character, which no keyboard gives back; {Advice}";
        }

        string lower = bare.ToLowerInvariant();
        if (lower.Distinct().Count() < LeastDifferent)
        {
            return $"the secret has only {lower.Distinct().Count()} different characters; {Advice}";
        }

        if (Enumerable.Range(1, lower.Length / 2).Any(unit => lower == Repeat(lower[..unit], lower.Length)))
        {
            return $"the secret says one thing over and over; {Advice}";
        }

        int steps = Enumerable.Range(1, lower.Length - 1).Count(i => Math.Abs(lower[i] - lower[i - 1]) <= 1);
        if (steps * 2 > lower.Length)
        {
            return $"the secret is a row of neighbours such as 123 or abc; {Advice}";
        }

        string odd = Obvious.Concat(shop.Where(word => word.Length > 2).SelectMany(word => word.ToLowerInvariant().Split(' ').Append(word.ToLowerInvariant())))
            .OrderByDescending(word => word.Length)
            .Aggregate(lower, (rest, word) => word.Length > 2 ? rest.Replace(word, "", StringComparison.Ordinal) : rest);
        return odd.Count(char.IsLetter) < LeastOdd && odd.Distinct().Count() < LeastOdd
            ? $"the secret is made of words that are tried first; {Advice}"
            : null;
    }

    private static string Repeat(string unit, int length) => string.Concat(Enumerable.Repeat(unit, (length / unit.Length) + 1))[..length];
}
