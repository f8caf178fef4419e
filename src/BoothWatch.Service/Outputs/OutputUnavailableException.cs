namespace BoothWatch.Service.Outputs;

/// <summary>
/// An output cannot reach what it writes to, which is to be expected now and then. The message says all, in words with the fix where
/// there is one, so the log shows no stack with it.
/// </summary>
/// <param name="message">What failed, where, and what to do.</param>
/// <param name="cause">The error below.</param>
public abstract class OutputUnavailableException(string message, Exception? cause) : Exception(message, cause);
