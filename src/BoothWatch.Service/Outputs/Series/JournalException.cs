namespace BoothWatch.Service.Outputs.Series;

/// <summary>The journal could not be read or written. The message names the file and the fix.</summary>
/// <param name="message">What failed, where, and what to do.</param>
/// <param name="innerException">The error below.</param>
public sealed class JournalException(string message, Exception? innerException = null) : OutputUnavailableException(message, innerException);
