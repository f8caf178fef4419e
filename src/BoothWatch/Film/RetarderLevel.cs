namespace BoothWatch.Film;

/// <summary>Chooses from a ladder of retarder levels.</summary>
public static class RetarderLevel
{
    /// <summary>The least level that serves, by bisection: more retarder never lowers the margin, which a test verifies for the shipped materials.</summary>
    /// <param name="levels">Number of levels, least first.</param>
    /// <param name="serves">Whether the level at an index serves.</param>
    /// <returns>The index of the least level that serves; null where none does.</returns>
    public static int? Recommend(int levels, Func<int, bool> serves)
    {
        ArgumentNullException.ThrowIfNull(serves);
        if (levels == 0 || !serves(levels - 1))
        {
            return null;
        }

        int low = -1;
        int high = levels - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = serves(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }
}
