namespace BoothWatch.Film;

/// <summary>The drying solver gave up. Whoever asked has no answer and must not spray on an old one.</summary>
public class DryingFailedException : Exception
{
    /// <summary>Creates the exception.</summary>
    public DryingFailedException()
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">Which solver, where, and why.</param>
    public DryingFailedException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">Which solver, where, and why.</param>
    /// <param name="innerException">The cause.</param>
    public DryingFailedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
