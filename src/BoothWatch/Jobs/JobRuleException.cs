namespace BoothWatch.Jobs;

/// <summary>A change does not fit the job; the message says what to do instead.</summary>
public sealed class JobRuleException : Exception
{
    /// <summary>A change that does not fit.</summary>
    /// <param name="field">The field at fault, for example <c>stop</c>.</param>
    /// <param name="message">What is wrong and what to do.</param>
    public JobRuleException(string field, string message)
        : base(message) => Field = field;

    /// <summary>The field at fault.</summary>
    public string Field { get; }
}
