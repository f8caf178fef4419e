namespace BoothWatch.Service.Configuration;

/// <summary>Finds the known name that a mistyped one was probably meant to be.</summary>
public static class NearestName
{
    /// <summary>The nearest of <paramref name="known"/> by edits (insert, delete, replace, swap neighbours), ignoring case; null when none is near.</summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(written);
        ArgumentNullException.ThrowIfNull(known);
        int allowed = Math.Max(2, written.Length / 3);
        return known
            .Select(name => (Name: name, Edits: Edits(Fold(written), Fold(name))))
            .Where(candidate => candidate.Edits <= allowed)
            .OrderBy(candidate => candidate.Edits)
            .ThenBy(candidate => candidate.Name, StringComparer.Ordinal)
            .Select(candidate => candidate.Name)
            .FirstOrDefault();
    }

    /// <summary><c>; did you mean X?</c>, or the known names when none is near.</summary>
    public static string Hint(string written, IEnumerable<string> known)
    {
        string[] names = [.. known];
        return Of(written, names) is { } nearest
            ? $"did you mean {nearest}?"
            : $"known: {string.Join(", ", names.Order(StringComparer.Ordinal))}";
    }

    private static string Fold(string name) => name.ToUpperInvariant();

    // Optimal string alignment distance: Levenshtein's edits plus the swap of two neighbours.
    private static int Edits(string a, string b)
    {
        int[,] distance = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            distance[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            distance[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = distance[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                int best = Math.Min(replace, 1 + Math.Min(distance[i - 1, j], distance[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    best = Math.Min(best, distance[i - 2, j - 2] + 1);
                }

                distance[i, j] = best;
            }
        }

        return distance[a.Length, b.Length];
    }
}
