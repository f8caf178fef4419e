namespace BoothWatch.Service.Page;

/// <summary>The past cannot be read now. The message is for people and says what to do; it is shown on the page.</summary>
/// <param name="message">What failed, and the fix.</param>
/// <param name="innerException">The error below.</param>
public sealed class HistoryUnavailableException(string message, Exception? innerException = null) : Exception(message, innerException);
