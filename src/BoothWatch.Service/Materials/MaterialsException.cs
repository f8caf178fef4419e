namespace BoothWatch.Service.Materials;

/// <summary>The materials cannot be used; says everything that is wrong at once.</summary>
public sealed class MaterialsException : Exception
{
    /// <summary>Creates the exception.</summary>
    public MaterialsException()
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong.</param>
    public MaterialsException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="innerException">The cause.</param>
    public MaterialsException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Creates the exception from all errors found.</summary>
    /// <param name="errors">One line an error: file, key, value, fix.</param>
    public MaterialsException(IReadOnlyList<string> errors)
        : base(string.Join(Environment.NewLine, errors)) => Errors = errors;

    /// <summary>One line an error: file, key, value, fix.</summary>
    public IReadOnlyList<string> Errors { get; } = [];
}
