namespace BoothWatch.Outlook;

/// <summary>Student's t distribution.</summary>
internal static class StudentT
{
    /// <summary>The value that a share of the distribution lies below, for shares above one half.</summary>
    /// <param name="share">Above 0.5, below 1.</param>
    /// <param name="freedom">Degrees of freedom, 2 or more; from 4 on within 0.5 % for shares up to 0.99, and 2.5 % too large with 2.</param>
    /// <remarks>
    /// The expansion in 1/ν of Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.5, about the normal quantile, which
    /// is their rational approximation 26.2.23 (error below 4.5e-4).
    /// </remarks>
    public static double Quantile(double share, int freedom)
    {
        double t = Math.Sqrt(-2 * Math.Log(1 - share));
        double z = t - ((2.515517 + (t * (0.802853 + (t * 0.010328)))) / (1 + (t * (1.432788 + (t * (0.189269 + (t * 0.001308)))))));
        double z2 = z * z;
        double v = freedom;
        return z
            + (z * (z2 + 1) / (4 * v))
            + (z * ((((5 * z2) + 16) * z2) + 3) / (96 * v * v))
            + (z * ((((((3 * z2) + 19) * z2) + 17) * z2) - 15) / (384 * v * v * v))
            + (z * ((((((((79 * z2) + 776) * z2) + 1482) * z2) - 1920) * z2) - 945) / (92160 * v * v * v * v));
    }
}
