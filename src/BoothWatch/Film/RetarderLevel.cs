namespace BoothWatch.Film;

/// <summary>Chooses from a ladder of retarder levels.</summary>
public static class RetarderLevel
{
    /// <summary>
    /// The least level that serves. The first is tried first; beyond it by bisection, for more retarder never lowers the margin of a mix that
    /// needs one. A test verifies that for the shipped materials.
    /// </summary>
    /// <param name="levels">Number of levels, least first.</param>
    /// <param name="serves">Whether the level at an index serves.</param>
    /// <returns>The index of the least level that serves; null where none does.</returns>
    public static int? Recommend(int levels, Func<int, bool> serves)
    {
        ArgumentNullException.ThrowIfNull(serves);
        if (levels == 0)
        {
            return null;
        }

        if (serves(0))
        {
            return 0;
        }

        if (!serves(levels - 1))
        {
            return null;
        }

        int low = 0;
        int high = levels - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = serves(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }
}
